import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { formatQuantity } from '../../src/quantity/format.js';
import { panOf } from '../../src/water/at-opening.js';
import { riseMm } from '../../src/water/head.js';
import { testPressureOf } from '../../src/water/test-pressure.js';

const ACCESS: Source = {
  basis: 'code',
  citation: 'ICC A117.1, 404.2.5, thresholds',
  provenance: 'from memory, confirm',
};
const HEAD: Source = {
  basis: 'physics',
  citation: 'water column at the water test pressure, h = p / (rho g)',
  provenance: 'computed',
};
const CONFLICT: Source = {
  basis: 'practice',
  citation: 'common practice: the detail says how low threshold and head of water go together',
  provenance: 'common practice, no source',
};

/** At an accessible opening a low threshold and the head of water clash; the detail says how that is resolved. */
export default defineRule({
  id: 'sill/threshold',
  title: 'Accessible threshold',
  summary: 'An accessible opening has a low threshold, and the detail says what keeps the water out.',
  level: 'warning',
  reads: [
    'openings.accessible',
    'openings.threshold',
    'openings.panAlternative',
    'openings.overhang',
    'work.backDam',
    'work.slope',
  ],
  sources: [ACCESS, CONFLICT, HEAD],
  parameters: {
    threshold: {
      type: 'length',
      default: '1/2 in',
      meaning: 'greatest height of an accessible threshold',
      source: ACCESS,
    },
  },
  caution: 'Accessibility and egress are matters of law; the local code and the authority having jurisdiction govern.',
  *review({ detail, number }) {
    if (detail.work.length === 0) return;
    for (const opening of detail.openings) {
      if (opening.accessible?.value !== true) continue;
      const threshold = opening.thresholdMm;
      if (threshold === undefined) {
        yield {
          kind: 'open',
          message: `The opening "${opening.id}" is accessible, but the height of its threshold is not declared; declare "threshold".`,
          at: opening.at,
          subject: `threshold of ${opening.id}`,
          missing: ['openings.threshold'],
          sources: [ACCESS],
        };
        continue;
      }
      yield againstLimit({
        subject: `threshold of ${opening.id}`,
        at: threshold.at,
        dimension: 'length',
        provided: threshold.value,
        like: threshold,
        comparison: 'at most',
        limit: {
          value: number('threshold'),
          text: formatQuantity(number('threshold'), 'length', threshold),
          source: ACCESS,
          others: [],
        },
        sentence: (p) => `The threshold of the accessible opening "${opening.id}" is ${p} high`,
        correct: (required) => `Lower the threshold to ${required}.`,
        missing: ['openings.threshold'],
      });
      const pan = panOf(detail, opening);
      const tested = testPressureOf(opening, detail.project);
      const subject = `water at the threshold of ${opening.id}`;
      const strategy = opening.panAlternative?.value ?? (opening.overhang === undefined ? undefined : 'overhang');
      if (tested === undefined) {
        if (strategy === undefined)
          yield {
            kind: 'open',
            message: `Whether the low threshold of "${opening.id}" holds the water out cannot be told: the water test pressure is not declared. Declare "waterTest", or "class" and "grade", of the unit, or the way the water is kept out ("panAlternative").`,
            at: opening.unit?.at ?? opening.at,
            subject,
            missing: ['openings.unit.waterTest', 'openings.panAlternative'],
            sources: [CONFLICT],
          };
        continue;
      }
      // No dam can stand higher than the threshold that people roll over.
      const climbMm = Math.max(0, riseMm(pan?.slope?.value ?? 0, opening.unit?.frameDepthMm?.value ?? 0));
      const availableMm = threshold.value + climbMm;
      const mm = (value: number): string => formatQuantity(value, 'length', threshold);
      const found = `Water can stand ${mm(tested.headMm)} high at "${opening.id}" (${tested.from}), and threshold and slope hold ${mm(availableMm)}`;
      const base = {
        subject,
        required: `${mm(tested.headMm)}, or another way to keep water out`,
        sources: [CONFLICT, HEAD],
      };
      if (availableMm >= tested.headMm)
        yield { kind: 'pass', message: `${found}.`, at: threshold.at, provided: mm(availableMm), ...base };
      else if (strategy !== undefined)
        yield {
          kind: 'pass',
          message: `${found}; the detail names what makes up for it: ${strategy}.`,
          at: opening.panAlternative?.at ?? opening.overhang?.at ?? opening.at,
          provided: strategy,
          ...base,
        };
      else
        yield {
          kind: 'fail',
          message: `${found}; the detail does not say what makes up for it.`,
          at: threshold.at,
          provided: mm(availableMm),
          correct:
            'Name a recessed pan, trough drain, canopy or other means under "panAlternative", or give the "overhang".',
          ...base,
        };
    }
  },
});
