import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { frameOf } from '../../src/vapor/frame.js';
import { continuousInsulation } from '../../src/vapor/insulation.js';
import { formatQuantity } from '../../src/quantity/format.js';
import { OUTSIDE_CAUTION } from '../../src/moisture/outside-caution.js';
import { fieldOfLayer } from '../../src/model/named-field.js';

const DOCUMENTS: Source = {
  basis: 'specification',
  citation: 'the requirements of the project',
  provenance: 'project document',
};

/** The continuous insulation drawn has the R-value that the specification asks for. */
export default defineRule({
  id: 'moisture/insulation',
  title: 'Specified insulation',
  summary: 'The continuous insulation outside the frame has the thermal resistance that the specification asks for.',
  level: 'error',
  reads: [
    'wall.rValue',
    'wall.thickness',
    'wall.material',
    'wall.continuous',
    'product.rValue',
    'requirements.thermal resistance',
  ],
  sources: [DOCUMENTS],
  caution: `Only the number asked for is checked, not whether it suits the wall. Local code and licensed practice govern. ${OUTSIDE_CAUTION}`,
  *review({ detail, limit }) {
    const frame = frameOf(detail);
    const asked = limit({ property: 'thermal resistance', comparison: 'at least' });
    if (frame === undefined || asked === undefined) return;
    const { layers, unknown, knownM2KPerW, assumptions } = continuousInsulation(detail, frame);
    const subject = 'continuous insulation';
    const [first] = unknown;
    const short = knownM2KPerW < asked.value * (1 - 1e-6);
    if (first !== undefined && short) {
      const missing = unknown.map((i) => fieldOfLayer(i.layer, 'rValue'));
      yield {
        kind: 'open',
        at: first.layer.at,
        subject,
        required: `at least ${asked.text}`,
        provided: formatQuantity(knownM2KPerW, 'thermalResistance', layers[0]?.stated),
        sources: [asked.source],
        missing,
        message: `At least ${asked.text} of continuous insulation is required (${asked.source.citation}), and ${unknown.map((i) => `"${i.layer.id}"`).join(', ')} states neither an R-value nor a known material and thickness; state ${missing.join(', ')}.`,
      };
      return;
    }
    const main = layers[0];
    const outcome = againstLimit({
      subject,
      at: main?.stated?.at ?? main?.layer.at ?? frame.at,
      dimension: 'thermalResistance',
      comparison: 'at least',
      like: layers.map((i) => i.stated).find((q) => q?.dimension === 'thermalResistance'),
      provided: knownM2KPerW,
      limit: asked,
      ...(assumptions.length === 0 ? {} : { remark: `(${assumptions.join('; ')})` }),
      sentence: (provided) => `Continuous insulation outside "${frame.id}" is ${provided}`,
      correct: (required) => `Make the continuous insulation ${required}.`,
      missing: [],
    });
    // What rests on a generic R-value is a warning at most.
    yield outcome.kind === 'fail' && assumptions.length > 0 ? { ...outcome, level: 'warning' } : outcome;
  },
});
