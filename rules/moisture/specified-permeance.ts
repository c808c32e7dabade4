import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Limit, LimitQuery } from '../../src/engine/limits.js';
import type { Outcome, Source } from '../../src/engine/result.js';
import type { Layer, Measured } from '../../src/model/types.js';
import { PROCEDURES, type Cup } from '../../src/products/cups.js';
import { formatQuantity } from '../../src/quantity/format.js';
import { fieldOfLayer } from '../../src/model/named-field.js';

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
      for (const comparison of ['at least', 'at most'] as const)
        for (const cup of ['dry', 'wet', 'not named'] as const) {
          const asked = limit({
            property: 'permeance',
            subject: 'field membrane',
            product: layer.product,
            comparison,
            cup,
          });
          if (asked !== undefined) yield held(layer, asked, comparison, cup);
        }
    }
  },
});

type AskedCup = NonNullable<LimitQuery['cup']>;

/** A permeance that may be compared, and the cup it was measured with where that is known. */
interface Compared {
  readonly permeance: Measured;
  readonly cup?: Cup;
}

/** The declared permeance that answers a requirement. */
function comparedWith(layer: Layer, cup: AskedCup): Compared | undefined {
  const { permeance, product } = layer;
  const [dry, wet] = [product?.permeanceDry, product?.permeanceWet];
  if (cup === 'dry') return dry && { permeance: dry, cup };
  if (cup === 'wet') return wet && { permeance: wet, cup };
  // No procedure is asked: the permeance of the layer as drawn, else the dry cup, which is the lower of the two.
  if (permeance !== undefined) return { permeance };
  if (dry !== undefined) return { permeance: dry, cup: 'dry' };
  return wet && { permeance: wet, cup: 'wet' };
}

/** One layer held against what is asked by one procedure. */
function held(layer: Layer, asked: Limit, comparison: 'at least' | 'at most', cup: AskedCup): Outcome {
  const by = cup === 'not named' ? '' : `, ${cup} cup`;
  const subject = `permeance of ${layer.id}, ${comparison}${by}`;
  const found = comparedWith(layer, cup);
  if (found === undefined) {
    const field =
      cup === 'not named' && layer.productId === undefined
        ? fieldOfLayer(layer, 'permeance')
        : `product.permeance.${cup === 'wet' ? 'wet' : 'dry'}`;
    const lacks =
      cup === 'not named' ? 'no permeance' : `no permeance measured with the ${cup} cup (ASTM E96 ${PROCEDURES[cup]})`;
    return {
      kind: 'open',
      at: layer.productId?.at ?? layer.at,
      subject,
      required: `${comparison} ${asked.text}`,
      sources: [asked.source],
      missing: [field],
      message: `"${layer.id}" declares ${lacks}, and ${comparison} ${asked.text} is required (${asked.source.citation}); state ${field}.`,
    };
  }
  const { permeance } = found;
  const others = ([layer.product?.permeanceDry, layer.product?.permeanceWet] as const).flatMap((other, i) =>
    other === undefined || other === permeance
      ? []
      : [
          {
            message: `${formatQuantity(other.value, 'permeance', other)} in the ${i === 0 ? 'dry' : 'wet'} cup`,
            at: other.at,
          },
        ],
  );
  const outcome = againstLimit({
    subject,
    at: layer.permeance === permeance ? permeance.at : (layer.productId?.at ?? layer.at),
    dimension: 'permeance',
    comparison,
    like: permeance,
    // Of a range the end that the limit could refuse.
    provided: comparison === 'at least' ? permeance.value : (permeance.upper ?? permeance.value),
    limit: asked,
    ...(found.cup === undefined ? {} : { remark: `in the ${found.cup} cup` }),
    sentence: (provided) => `"${layer.id}" has a permeance of ${provided}`,
    correct: (required) =>
      `Name a membrane of ${required}${by === '' ? '' : ` in the ${cup} cup`}, tested at the film installed, or have the requirement changed.`,
    missing: [],
    related: [{ message: `declared: ${permeance.text}`, at: permeance.at }, ...others],
  });
  return cup === 'not named' && found.cup !== undefined
    ? {
        ...outcome,
        message: `${outcome.message} The requirement names no procedure of ASTM E96; the ${found.cup} cup was taken.`,
      }
    : outcome;
}
