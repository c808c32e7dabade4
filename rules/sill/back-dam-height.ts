import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { formatQuantity } from '../../src/quantity/format.js';
import { panOf } from '../../src/water/at-opening.js';
import { riseMm, WATER_TEST } from '../../src/water/head.js';
import { testPressureOf } from '../../src/water/test-pressure.js';

const HEAD: Source = {
  basis: 'physics',
  citation: 'water column at the water test pressure, h = p / (rho g)',
  provenance: 'computed',
  url: 'https://obc.hyperlinked.ca/volume-2/appendix-a/explanatory-b/b-9.27.3.8.(5)-appx',
};
const FREEBOARD: Source = {
  basis: 'practice',
  citation: 'common practice: freeboard above the head of water',
  provenance: 'common practice, no source',
};

/** The next size that a person would bend, no smaller: eighths of an inch, or whole millimeters. */
function nextSizeMm(valueMm: number, system: 'US' | 'SI' | 'either'): number {
  const stepMm = system === 'SI' ? 1 : 25.4 / 8;
  return Math.ceil(valueMm / stepMm - 1e-6) * stepMm;
}

/** The back dam stands above the column of water that the water test pressure holds up. */
export default defineRule({
  id: 'sill/back-dam-height',
  title: 'Back dam height',
  summary: 'The back dam is higher than the water that the water test pressure of the unit holds up.',
  level: 'error',
  reads: [
    'work.backDam',
    'work.slope',
    'openings.unit.waterTest',
    'openings.unit.class',
    'openings.unit.grade',
    'openings.unit.frameDepth',
    'project.wind.designPressure',
  ],
  sources: [HEAD, WATER_TEST.source, FREEBOARD],
  parameters: {
    freeboard: {
      type: 'length',
      default: '1/4 in',
      meaning: 'height of the back dam above the head of water',
      source: FREEBOARD,
    },
  },
  *review({ detail, limit, number }) {
    for (const opening of detail.openings) {
      const pan = panOf(detail, opening);
      if (pan === undefined) continue;
      const dam = pan.backDamMm;
      const subject = `back dam of ${opening.id}`;
      const tested = testPressureOf(opening, detail.project);
      const like = dam ?? ({ system: tested?.stated.system ?? 'US' } as const);
      const mm = (value: number): string => formatQuantity(value, 'length', like);
      const atLeast = (value: number): string => formatQuantity(value, 'length', { ...like, toward: 'up' });
      if (dam === undefined) {
        const head = tested === undefined ? '' : `, and water can stand ${mm(tested.headMm)} high (${tested.from})`;
        yield {
          kind: 'open',
          message: `The pan "${pan.id}" of "${opening.id}" does not say how high its back dam is${head}; declare "backDam".`,
          at: pan.at,
          subject,
          missing: ['work.backDam'],
          sources: [HEAD],
        };
        continue;
      }
      const inDocuments = limit({
        property: 'back dam height',
        subject: 'sill pan',
        product: pan.product,
        comparison: 'at least',
      });
      const depth = opening.unit?.frameDepthMm;
      // Water must climb the slope below the frame before it meets the dam.
      const climbMm = pan.slope === undefined || depth === undefined ? 0 : riseMm(pan.slope.value, depth.value);
      const neededMm = tested === undefined ? undefined : Math.max(0, tested.headMm - climbMm);
      if (tested === undefined || neededMm === undefined) {
        yield {
          kind: 'open',
          message: `The back dam of "${opening.id}" is ${dam.text}, but the water test pressure it has to stand is not declared; declare "waterTest", or "class" and "grade", of the unit.`,
          at: opening.unit?.at ?? opening.at,
          subject,
          provided: dam.text,
          missing: ['openings.unit.waterTest', 'openings.unit.class', 'openings.unit.grade'],
          sources: [HEAD, WATER_TEST.source],
        };
        if (inDocuments === undefined) continue;
      }
      const head =
        tested === undefined
          ? ''
          : `; water stands ${mm(tested.headMm)} high (${tested.from})${climbMm === 0 ? '' : `, of which the slope below the frame takes ${mm(climbMm)}`}`;
      const slopeMm =
        pan.slope !== undefined && depth === undefined ? riseMm(pan.slope.value, opening.depthMm?.value ?? 0) : 0;
      if (
        neededMm !== undefined &&
        dam.value < neededMm &&
        dam.value + slopeMm >= neededMm &&
        (inDocuments === undefined || dam.value >= inDocuments.value)
      ) {
        yield {
          kind: 'open',
          message: `The back dam of "${opening.id}" is ${dam.text}${head}; the slope may make up for the rest, but the depth of the frame is not declared. Declare "frameDepth".`,
          at: opening.unit?.at ?? opening.at,
          subject,
          required: `at least ${atLeast(neededMm)} without the slope`,
          provided: dam.text,
          missing: ['openings.unit.frameDepth'],
          sources: [HEAD],
        };
        continue;
      }
      const freeboard = limit({
        property: 'freeboard',
        subject: 'sill pan',
        product: pan.product,
        comparison: 'at least',
        offered: [{ value: number('freeboard'), text: mm(number('freeboard')), source: FREEBOARD }],
      });
      const passesMm = Math.max((neededMm ?? 0) + (freeboard?.value ?? 0), inDocuments?.value ?? 0);
      const passes = mm(nextSizeMm(passesMm, like.system));
      const outcome = againstLimit({
        subject,
        at: dam.at,
        dimension: 'length',
        provided: dam.value,
        like: dam,
        comparison: 'at least',
        limit:
          neededMm === undefined
            ? inDocuments
            : limit({
                property: 'back dam height',
                subject: 'sill pan',
                product: pan.product,
                comparison: 'at least',
                offered: [{ value: neededMm, text: atLeast(neededMm), source: HEAD }],
              }),
        sentence: (p) => `The back dam of "${opening.id}" is ${p} high${head}`,
        correct: (required) =>
          neededMm === undefined
            ? `Raise the back dam of "${pan.id}" to ${required}.`
            : `Raise the back dam of "${pan.id}" to at least ${passes} (the water with ${mm(freeboard?.value ?? 0)} of freeboard), or slope the pan more.`,
        missing: ['openings.unit.waterTest'],
        ...(tested === undefined
          ? {}
          : { related: [{ message: 'the pressure it has to stand', at: tested.stated.at }] }),
      });
      yield tested?.byShare === true
        ? { ...outcome, sources: [...(outcome.sources ?? []), WATER_TEST.source] }
        : outcome;

      if (outcome.kind !== 'pass' || neededMm === undefined) continue;
      yield againstLimit({
        subject: `freeboard of the back dam of ${opening.id}`,
        at: dam.at,
        dimension: 'length',
        provided: dam.value - neededMm,
        like: dam,
        comparison: 'at least',
        limit: freeboard,
        sentence: (p) => `The back dam of "${opening.id}" stands ${p} above the water it has to hold${head}`,
        correct: (required) => `Raise the back dam of "${pan.id}" to at least ${passes}: freeboard ${required}.`,
        missing: ['openings.unit.waterTest'],
      });
    }
  },
});
