import { defineRule } from '../../src/engine/rule.js';
import type { Outcome, Source } from '../../src/engine/result.js';
import { FAMILIES, type Stated } from '../../src/model/types.js';

const HABIT: Source = {
  basis: 'practice',
  citation: 'a material is called by its generic name',
  provenance: 'common practice, no source',
};

/** A material that is called by no known name takes part in no check; the author should know. */
export default defineRule({
  id: 'submittal/material-known',
  title: 'Names of materials',
  summary: 'Each layer and each work is of a material whose generic name says what it is.',
  level: 'note',
  reads: ['wall.material', 'wall.family', 'work.material', 'work.family'],
  sources: [HABIT],
  *review({ detail }) {
    const tell = (what: string, id: string, material: Stated<string>): Outcome => ({
      kind: 'fail',
      message: `The ${what} "${id}" is of "${material.value}", which says neither what it does nor what it is; it is left out of the checks.`,
      at: material.at,
      subject: `material of ${id}`,
      required: 'a generic name, or a family',
      provided: material.value,
      correct: `Use the generic name of the material, or add "family", one of: ${FAMILIES.filter((f) => f !== 'other').join(', ')}.`,
      sources: [HABIT],
    });
    let known = 0;
    for (const layer of detail.layers) {
      if (layer.material === undefined || layer.product !== undefined) continue;
      if (layer.family === 'other') yield tell('layer', layer.id, layer.material);
      else known += 1;
    }
    for (const work of detail.work) {
      if (work.action !== 'apply' || work.material === undefined) continue;
      if (work.family === 'other') yield tell('work', work.id, work.material);
      else known += 1;
    }
    if (known > 0) {
      yield {
        kind: 'pass',
        message: `${known} ${known === 1 ? 'material is' : 'materials are'} called by a known name.`,
        at: detail.at,
        subject: 'materials',
        sources: [HABIT],
      };
    }
  },
});
