import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { showsWholeWall } from '../../src/model/drawn.js';
import type { Control, Family, Layer } from '../../src/model/types.js';

const PRACTICE: Source = {
  basis: 'practice',
  citation: 'control layers, after a regional masonry systems guide',
  provenance: 'seen at second hand',
};

/** What a layer of each family could do; whether it is the control layer, the author has to say. */
const ABLE: Record<'water' | 'air' | 'thermal', readonly Family[]> = {
  water: [
    'fluid-applied membrane',
    'self-adhered membrane',
    'mechanically fastened sheet',
    'building paper',
    'insulating sheathing',
    'metal flashing',
  ],
  air: [
    'fluid-applied membrane',
    'self-adhered membrane',
    'mechanically fastened sheet',
    'sheathing',
    'insulating sheathing',
    'spray foam',
    'vapor retarder',
    'interior board',
    'concrete',
    'masonry',
  ],
  thermal: ['batt insulation', 'board insulation', 'insulating sheathing', 'spray foam'],
};

type Controlled = 'water' | 'air' | 'thermal';
/** Built for nothing else. Paper and sheets keep water off; whether they are the air barrier too is a choice. */
const BUILT_FOR: Record<Exclude<Controlled, 'thermal'>, readonly Family[]> = {
  water: ['fluid-applied membrane', 'self-adhered membrane', 'mechanically fastened sheet', 'building paper'],
  air: ['fluid-applied membrane', 'self-adhered membrane'],
};

function couldPlay(layer: Layer, control: Controlled): boolean {
  if (layer.controls.length > 0) return layer.controls.some((c) => c.value === (control satisfies Control));
  return ABLE[control].includes(layer.family) || (control === 'thermal' && layer.thermalResistance !== undefined);
}

/** Declared for the control, by the layer or by its product, or a membrane that is built for it. */
function plays(layer: Layer, control: Controlled): boolean {
  if (control === 'thermal' || layer.controls.length > 0) return couldPlay(layer, control);
  return BUILT_FOR[control].includes(layer.family) || (control === 'air' && layer.product?.airPermeance !== undefined);
}

/** Each wall has a layer for water, for air and for heat. */
export default defineRule({
  id: 'air/control-layers',
  title: 'Control layers',
  summary: 'The wall has at least one layer that controls water, one that controls air and one that controls heat.',
  level: 'warning',
  reads: ['wall.controls', 'wall.material', 'wall.product'],
  sources: [PRACTICE],
  *review({ detail }) {
    // A drawing of layers alone, for a vapor study, may leave out what the study does not need.
    if (detail.layers.length === 0 || detail.work.length === 0) return;
    for (const control of ['water', 'air', 'thermal'] as const) {
      const base = {
        at: { document: detail.at.document, path: ['wall'], part: 'key' as const },
        subject: `${control} control of the wall`,
        required: `a layer for ${control} control`,
        sources: [PRACTICE],
      };
      const layers = detail.layers.filter((l) => plays(l, control));
      const able = detail.layers.filter((l) => couldPlay(l, control));
      if (layers.length > 0) {
        const names = layers.map((l) => `"${l.id}"`).join(', ');
        yield {
          kind: 'pass',
          message: `${control === 'thermal' ? 'Heat' : control === 'air' ? 'Air' : 'Water'} is controlled by ${names}.`,
          provided: names,
          ...base,
        };
      } else if (able.length > 0) {
        const names = able.map((l) => `"${l.id}"`).join(', ');
        yield {
          kind: 'open',
          message: `No layer is declared to control ${control}; ${names} could. Name the ${control} control layer with "controls: [${control}]", or by a product that is one.`,
          provided: `not declared (${names})`,
          missing: ['wall.controls'],
          ...base,
        };
      } else if (!showsWholeWall(detail)) {
        yield {
          kind: 'open',
          message: `None of the layers shown controls ${control === 'thermal' ? 'heat' : control}, and the drawing does not show the whole wall; list all layers, or name the layer with "controls: [${control}]".`,
          missing: ['wall'],
          ...base,
        };
      } else {
        yield {
          kind: 'fail',
          message: `No layer of the wall controls ${control === 'thermal' ? 'heat' : control}.`,
          provided: 'none',
          correct: `Add the layer, or say which of the layers does it ("controls: [${control}]").`,
          ...base,
        };
      }
    }
  },
});
