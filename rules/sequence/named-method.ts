import { defineRule } from '../../src/engine/rule.js';
import type { Outcome, Source } from '../../src/engine/result.js';
import { isFluid } from '../../src/model/families.js';
import { barrierWorks, flashingAt, JAMB_PLACES, unitSet, type Spot } from '../../src/model/order.js';
import type { Detail, Opening, Work } from '../../src/model/types.js';

type Method = 'A' | 'A1' | 'B' | 'B1';
type Part = 'barrier' | 'sill flashing' | 'jamb flashing' | 'unit' | 'head flashing' | 'head flap';

/** The steps of the four methods, each before the next. */
const STEPS: Record<Method, readonly Part[]> = {
  A: ['sill flashing', 'unit', 'jamb flashing', 'head flashing', 'barrier'],
  A1: ['barrier', 'sill flashing', 'unit', 'jamb flashing', 'head flashing', 'head flap'],
  B: ['sill flashing', 'jamb flashing', 'unit', 'head flashing', 'barrier'],
  B1: ['barrier', 'sill flashing', 'jamb flashing', 'unit', 'head flashing', 'head flap'],
};

const MEMORY: Source = {
  basis: 'standard',
  citation: 'ASTM E2112, flanged units, methods A, A1, B and B1',
  provenance: 'from memory, confirm',
};
const FAMILIES: Source = {
  basis: 'standard',
  citation: 'ASTM E2112: jamb flashing over the flange in A and A1, behind it in B and B1',
  provenance: 'seen at second hand',
  url: 'https://www.jlconline.com/how-to/exteriors/installing-flanged-windows-two-strategies-compared-part-2_o',
};

interface Step {
  readonly work: Work;
  readonly rank: number;
}

/** The works that play each part at one opening. Where some pieces line the opening and others lap over the flange, the method speaks of the latter in A and A1 and of the former in B and B1. */
function partsAt(detail: Detail, opening: Opening, method: Method): Record<Part, readonly Step[]> {
  const set = unitSet(detail, opening);
  const isAfter = (s: Spot): boolean => set !== undefined && s.work.step > set.step;
  const orAll = (chosen: Spot[], all: Spot[]): Spot[] => (chosen.length > 0 ? chosen : all);
  const jambs = flashingAt(detail, opening, [...JAMB_PLACES, 'flange jambs']);
  const heads = flashingAt(detail, opening, ['head', 'flange head']);
  const isOver = method === 'A' || method === 'A1';
  return {
    // What stands below the sill may go up first in every method: the sill flashing laps over it or is lifted.
    barrier: barrierWorks(detail)
      .filter((w) => w.places.some((p) => p.value !== 'field below sill'))
      .map((work) => ({ work, rank: work.step })),
    'sill flashing': flashingAt(detail, opening, ['sill']),
    'jamb flashing': orAll(
      jambs.filter((s) => isAfter(s) === isOver),
      jambs,
    ),
    unit: set === undefined ? [] : [{ work: set, rank: set.step }],
    'head flashing': orAll(heads.filter(isAfter), heads),
    'head flap': detail.work
      .filter((w) => w.action === 'close' && w.openings.includes(opening))
      .map((work) => ({ work, rank: work.step })),
  };
}

const isOrdered = (a: Step, b: Step): boolean =>
  a.rank < b.rank || (a.work === b.work && a.work.action === 'apply' && isFluid(a.work.family));

/** The order of work is the one of the installation method that the detail names. */
export default defineRule({
  id: 'sequence/named-method',
  title: 'Order of the named method',
  summary:
    'Barrier, sill, jamb and head flashing and unit follow in the order of the flange method that the detail names.',
  level: 'warning',
  reads: ['method', 'work.place', 'work.set', 'work.close', 'openings.unit.mounting'],
  sources: [MEMORY, FAMILIES],
  *review({ detail }) {
    const { method } = detail;
    if (method === undefined || detail.work.length === 0) return;
    for (const opening of detail.openings) {
      const base = { subject: `method ${method.value} at ${opening.id}` };
      if (opening.unit?.mounting?.value === 'recessed') {
        yield {
          kind: 'fail',
          ...base,
          at: method.at,
          message: `Method ${method.value} is for units with a mounting flange; the unit in "${opening.id}" is recessed.`,
          required: 'mounting: flange',
          provided: 'mounting: recessed',
          correct: 'Leave out "method", or correct the mounting of the unit.',
          sources: [MEMORY],
          related: [{ message: 'recessed unit', at: opening.unit.mounting.at }],
        };
        continue;
      }
      const parts = partsAt(detail, opening, method.value);
      const faults: Outcome[] = [];
      let compared = 0;
      // Parts that no work plays are left out, so that their neighbors are still compared.
      const present = STEPS[method.value].filter((part) => parts[part].length > 0);
      for (const [i, after] of present.entries()) {
        const before = present[i - 1];
        if (before === undefined) continue;
        compared += 1;
        const pair = parts[before]
          .flatMap((a) => parts[after].map((b) => ({ a, b })))
          .find(({ a, b }) => !isOrdered(a, b));
        if (pair === undefined) continue;
        const { a, b } = pair;
        const isJambAndUnit = [before, after].includes('jamb flashing') && [before, after].includes('unit');
        faults.push({
          kind: 'fail',
          ...base,
          at: a.work.at,
          sources: isJambAndUnit ? [FAMILIES, MEMORY] : [MEMORY],
          message: `Method ${method.value} puts the ${before} before the ${after}; at "${opening.id}", "${a.work.id}" (${before}) comes ${a.work === b.work ? 'in one step with' : 'after'} "${b.work.id}" (${after}).`,
          required: `${before} before ${after}`,
          provided: `${after} "${b.work.id}" first`,
          correct: `Put "${a.work.id}" before "${b.work.id}", or name the method that the work follows.`,
          related: [
            { message: `method ${method.value} is named here`, at: method.at },
            ...(a.work === b.work ? [] : [{ message: `"${b.work.id}" is done first`, at: b.work.at }]),
          ],
        });
      }
      const head = parts['head flashing'].at(-1)?.work;
      // A head flashing slipped under a sheet without a closing step is reported by `head-flap-last`.
      const isTucked = head?.action === 'apply' && head.tuckedUnder.length > 0;
      const hasSheet = parts.barrier.some((b) => b.work.action === 'apply' && !isFluid(b.work.family));
      if (method.value.endsWith('1') && hasSheet && parts['head flap'].length === 0 && !isTucked) {
        faults.push({
          kind: 'fail',
          ...base,
          at: method.at,
          sources: [MEMORY],
          message: `Method ${method.value} ends with the flap of the barrier lapped down over the head flashing; no step does so at "${opening.id}".`,
          required: '"close: head flap" as the last step',
          provided: 'no such step',
          correct: `Slip the head flashing under the barrier ("tuckedUnder") and add "{ close: head flap, of: ${opening.id} }" after it.`,
        });
      }
      yield* faults;
      if (faults.length === 0 && compared > 0) {
        yield {
          kind: 'pass',
          ...base,
          at: method.at,
          message: `The work at "${opening.id}" follows the order of method ${method.value}.`,
          sources: this.sources,
        };
      }
    }
  },
});
