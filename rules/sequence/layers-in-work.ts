import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import type { Family, Layer } from '../../src/model/types.js';

const HABIT: Source = {
  basis: 'practice',
  citation: 'each layer that covers the barrier has its place in the order of work',
  provenance: 'common practice, no source',
};

/** Layers that hide the barrier or its interior seal once they are on. */
const HIDING: ReadonlySet<Family> = new Set<Family>([
  'interior board',
  'board insulation',
  'insulating sheathing',
  'cladding',
]);

/** Layers that hide earlier work are steps of the order of work, so that hold points can come before them. */
export default defineRule({
  id: 'sequence/layers-in-work',
  title: 'Covering layers in the order of work',
  summary: 'Every layer that covers the barrier, inside or outside, is a step in the order of work.',
  level: 'note',
  reads: ['wall', 'work.layer', 'work.place'],
  sources: [HABIT],
  *review({ detail }) {
    const put = new Set<Layer>(
      detail.work.flatMap((w) => (w.action === 'apply' && w.layer !== undefined ? [w.layer] : [])),
    );
    const hiding = detail.layers.filter((l) => HIDING.has(l.family));
    // A detail that shows the flashing alone says nothing about the rest of the wall; one that shows some of it should show all.
    if (!hiding.some((l) => put.has(l))) return;
    for (const layer of hiding) {
      const name = layer.material?.value ?? layer.productId?.value ?? layer.id;
      const subject = `layer ${layer.id}`;
      const step = detail.work.find((w) => w.action === 'apply' && w.layer === layer);
      if (step !== undefined)
        yield {
          kind: 'pass',
          message: `The layer "${layer.id}" (${name}) is put on by "${step.id}".`,
          at: step.at,
          subject,
          sources: [HABIT],
        };
      else {
        const place = layer.family === 'interior board' ? 'interior face' : 'field';
        yield {
          kind: 'fail',
          message: `The layer "${layer.id}" (${name}) covers earlier work, but no step puts it on.`,
          at: layer.at,
          subject,
          required: 'a step for each covering layer',
          provided: 'no step',
          correct: `Add "{ place: ${place}, layer: ${layer.id} }" where it comes in the order of work.`,
          sources: [HABIT],
        };
      }
    }
  },
});
