import { againstLimit } from '../../src/engine/against-limit.js';
import type { Quantity } from '../../src/quantity/types.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import type { Detail, Family, Layer } from '../../src/model/types.js';

const MATERIAL: Source = {
  basis: 'code',
  citation: 'IECC C402.5, 0.004 cfm/ft2 at 75 Pa for materials',
  provenance: 'seen at second hand',
  url: 'https://www.wconline.com/articles/88180-straight-green-continuous-air-barriersupping-the-ante',
};
const METHOD: Source = {
  basis: 'standard',
  citation: 'ASTM E2178, air permeance of building materials',
  provenance: 'from memory, confirm',
};
const DEEMED: Source = {
  basis: 'code',
  citation: 'IECC C402.5.1.3, materials deemed to comply',
  provenance: 'from memory, confirm',
};
const IN_MM = 25.4;

/** Materials taken as airtight from a thickness up, mm: all words must stand in the name. */
const DEEMED_MATERIALS: readonly { readonly words: RegExp; readonly leastMm: number }[] = [
  { words: /plywood/i, leastMm: IN_MM * 0.375 },
  { words: /\bosb\b|oriented strand board/i, leastMm: IN_MM * 0.375 },
  { words: /extruded polystyrene/i, leastMm: IN_MM * 0.5 },
  { words: /foil-faced (polyiso\b|polyisocyanurate)/i, leastMm: IN_MM * 0.5 },
  { words: /closed-cell spray foam/i, leastMm: IN_MM * 1.5 },
  { words: /open-cell spray foam/i, leastMm: IN_MM * 4.5 },
  { words: /gypsum (board|wall ?board|sheathing)/i, leastMm: IN_MM * 0.5 },
  { words: /cement board/i, leastMm: IN_MM * 0.5 },
  { words: /gypsum plaster|cement parge/i, leastMm: IN_MM * 0.625 },
  { words: /(cast|precast|cast-in-place) concrete/i, leastMm: 0 },
  { words: /fully grouted (block|concrete masonry)/i, leastMm: 0 },
  { words: /sheet (steel|aluminum)/i, leastMm: 0 },
];
const MEMBRANES: ReadonlySet<Family> = new Set<Family>([
  'fluid-applied membrane',
  'self-adhered membrane',
  'mechanically fastened sheet',
]);

/** Layers claimed as air barrier, and the field membrane unless its controls leave air out. */
function airLayers(detail: Detail): Layer[] {
  const field = new Set(
    detail.work.flatMap((w) =>
      w.action === 'apply' && w.layer !== undefined && w.places.some((p) => p.value.startsWith('field'))
        ? [w.layer]
        : [],
    ),
  );
  return detail.layers.filter((l) =>
    l.controls.length > 0 ? l.controls.some((c) => c.value === 'air') : MEMBRANES.has(l.family) && field.has(l),
  );
}

/** L/(s m2). 0.004 cfm/ft2 is 0.0203 L/(s m2): 1 cfm/ft2 = 0.3048 / 60 m/s, exactly. */
const PRINTED = { si: 0.02, us: (0.004 * 0.3048 * 1000) / 60 };

function mostText(system: Quantity['system'], setLPerSM2: number): string {
  if (setLPerSM2 !== PRINTED.si) return `${setLPerSM2} L/(s m2)`;
  return system === 'US' ? '0.004 cfm/ft2' : '0.02 L/(s m2)';
}

/** Materials of the air barrier are airtight by test, or on the list of those taken as airtight. */
export default defineRule({
  id: 'air/material',
  title: 'Air barrier material',
  summary: 'Each material of the air barrier passes no more air than the code allows.',
  level: 'error',
  reads: ['wall.controls', 'product.airPermeance', 'product.airPermeanceMethod'],
  sources: [MATERIAL, METHOD, DEEMED],
  parameters: {
    permeance: {
      type: 'airLeakage',
      default: '0.02 L/(s m2)',
      meaning: 'greatest air permeance of a material at 75 Pa',
      source: MATERIAL,
    },
  },
  *review({ detail, limit, number }) {
    // A drawing of layers alone, for a vapor study, is not yet an air barrier submittal.
    if (detail.work.length === 0) return;
    for (const layer of airLayers(detail)) {
      const subject = `air barrier material "${layer.id}"`;
      const at = layer.productId?.at ?? layer.at;
      const found = layer.product?.airPermeance;
      if (found === undefined) {
        const deemed =
          layer.material === undefined
            ? undefined
            : DEEMED_MATERIALS.find((d) => d.words.test(layer.material?.value ?? ''));
        if (deemed !== undefined && (deemed.leastMm === 0 || (layer.thicknessMm?.value ?? 0) >= deemed.leastMm - 0.1)) {
          yield {
            kind: 'pass',
            message: `The air barrier layer "${layer.id}" is of ${layer.material?.value ?? ''}${layer.thicknessMm === undefined ? '' : `, ${layer.thicknessMm.text}`}, a material taken as airtight.`,
            at,
            subject,
            provided: layer.material?.value ?? '',
            sources: [DEEMED],
          };
        } else {
          const field = layer.product === undefined ? 'wall.product' : 'product.airPermeance';
          yield {
            kind: 'open',
            message: `The air permeance of the air barrier layer "${layer.id}" is not declared${layer.product === undefined ? '; name its product, or give the layer a "thickness" when the code lists the material as airtight' : `; declare "airPermeance" in product "${layer.product.id}"`}.`,
            at,
            subject,
            missing: [field],
            sources: [MATERIAL, DEEMED],
          };
        }
        continue;
      }
      const set = number('permeance');
      // The code prints one limit in two systems that differ in the third digit; each is held as it is printed.
      const most = found.system === 'US' && set === PRINTED.si ? PRINTED.us : set;
      const outcome = againstLimit({
        subject,
        at,
        dimension: 'airLeakage',
        provided: found.upper ?? found.value,
        like: found,
        comparison: 'at most',
        limit: limit({
          property: 'air permeance',
          subject: 'field membrane',
          product: layer.product,
          comparison: 'at most',
          offered: [{ value: most, text: mostText(found.system, set), source: MATERIAL }],
        }),
        sentence: (p) => `The air barrier layer "${layer.id}" has an air permeance of ${p} at 75 Pa`,
        correct: (required) => `Use a material of ${required}.`,
        missing: ['product.airPermeance'],
        related: [{ message: 'as its data sheet declares', at: found.at }],
      });
      yield outcome;
      const method = layer.product?.airPermeanceMethod;
      if (method === undefined) {
        yield {
          kind: 'open',
          message: `The air permeance of "${layer.id}" names no test method; declare "airPermeanceMethod" in product "${layer.product?.id ?? ''}".`,
          at,
          subject: `test of ${subject}`,
          required: 'ASTM E2178',
          missing: ['product.airPermeanceMethod'],
          sources: [METHOD],
        };
      } else {
        const base = {
          at,
          subject: `test of ${subject}`,
          required: 'ASTM E2178',
          provided: method.value,
          sources: [METHOD],
        };
        yield /E ?2178/i.test(method.value)
          ? { kind: 'pass', message: `The air permeance of "${layer.id}" was found by ${method.value}.`, ...base }
          : {
              kind: 'fail',
              message: `The air permeance of "${layer.id}" was found by ${method.value}, not by ASTM E2178, the test of materials.`,
              correct: 'Submit a report by ASTM E2178.',
              related: [{ message: 'the method declared', at: method.at }],
              ...base,
            };
      }
    }
  },
});
