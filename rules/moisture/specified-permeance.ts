import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { fieldOfLayer } from '../../src/model/named-field.js';
import type { Layer } from '../../src/model/types.js';
import { formatQuantity } from '../../src/quantity/format.js';

const DOCUMENTS: Source = {
  basis: 'specification',
  citation: 'the requirements of the project',
  provenance: 'project document',
};
const FIELD: ReadonlySet<Layer['family']> = new Set<Layer['family']>([
  'fluid-applied membrane',
  'self-adhered membrane',
  'mechanically fastened sheet',
  'building paper',
]);

/** The field membrane lets through as much vapor, or as little, as the specification asks. */
export default defineRule({
  id: 'moisture/specified-permeance',
  title: 'Specified permeance',
  summary: 'The field membrane has the water vapor permeance that the specification asks for.',
  level: 'error',
  reads: ['wall.product', 'wall.permeance', 'product.permeance', 'requirements.permeance'],
  sources: [DOCUMENTS],
  caution:
    'Only the number asked for is checked, not whether a wall with it dries. Local code and licensed practice govern.',
  *review({ detail, limit }) {
    for (const layer of detail.layers) {
      if (!FIELD.has(layer.family)) continue;
      for (const comparison of ['at least', 'at most'] as const) {
        const asked = limit({ property: 'permeance', subject: 'field membrane', product: layer.product, comparison });
        if (asked === undefined) continue;
        const subject = `permeance of ${layer.id}, ${comparison}`;
        const dry = layer.permeance ?? layer.product?.permeanceDry;
        const wet = layer.product?.permeanceWet;
        const declared = dry ?? wet;
        if (declared === undefined) {
          const field = layer.productId === undefined ? fieldOfLayer(layer, 'permeance') : 'product.permeance.dry';
          yield {
            kind: 'open',
            at: layer.productId?.at ?? layer.at,
            subject,
            required: `${comparison} ${asked.text}`,
            sources: [asked.source],
            missing: [field],
            message: `"${layer.id}" declares no permeance, and ${comparison} ${asked.text} is required (${asked.source.citation}); state ${field}.`,
          };
          continue;
        }
        const cup = layer.permeance !== undefined ? '' : dry === undefined ? ' in the wet cup' : ' in the dry cup';
        const other =
          dry !== undefined && wet !== undefined && layer.permeance === undefined
            ? [
                {
                  message: `${formatQuantity(wet.value, 'permeance', wet)} in the wet cup (ASTM E96 procedure B)`,
                  at: wet.at,
                },
              ]
            : [];
        yield againstLimit({
          subject,
          at: layer.permeance?.at ?? layer.productId?.at ?? layer.at,
          dimension: 'permeance',
          comparison,
          like: declared,
          // Of a range the end that the limit could refuse.
          provided: comparison === 'at least' ? declared.value : (declared.upper ?? declared.value),
          limit: asked,
          remark: cup.trim(),
          sentence: (provided) => `"${layer.id}" passes ${provided}`,
          correct: (required) =>
            `Name a membrane of ${required}, tested at the film installed, or have the requirement changed.`,
          missing: [],
          related: [{ message: `declared: ${declared.text}`, at: declared.at }, ...other],
        });
      }
    }
  },
});
