import { heldForRain } from '../../src/engine/rain-storage.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Outcome, Source } from '../../src/engine/result.js';
import { showsWholeWall } from '../../src/model/drawn.js';
import { systemOf, type UnitSystem } from '../../src/model/unit-system.js';
import { curesOf } from '../../src/moisture/wall/cures-told.js';
import { OUTSIDE_CAUTION } from '../../src/moisture/outside-caution.js';
import type { JudgedYear } from '../../src/moisture/wall/judge.js';
import { wallYearOf } from '../../src/moisture/wall/of-detail.js';
import { layerAt, limitTold, notesOf, outcomeTold, whereTold } from '../../src/moisture/wall/told.js';
import { monthName, waterText } from '../../src/moisture/words.js';

const METHOD: Source = {
  basis: 'standard',
  citation: 'ISO 13788:2012, monthly condensation and drying',
  provenance: 'from memory, confirm',
};
const AMOUNTS: Source = {
  basis: 'standard',
  citation: 'DIN 4108-3, amounts of condensate',
  provenance: 'seen at second hand',
};
const SUBJECT = 'condensation in the wall';
const SOLVED =
  'Each change proposed is the least that passes, to the safe side of a tenth of an R or two digits of a permeance; the wall was followed through the year again with it, in every reading of the drawing.';

/** The wall, followed month by month: what condenses is little and dries within the year. */
export default defineRule({
  id: 'moisture/condensation',
  title: 'Condensation in the wall',
  summary:
    'Followed through a year at its place, the wall stays dry inside or dries what condenses, within the limits of its materials.',
  level: 'warning',
  reads: [
    'wall.material',
    'wall.product',
    'wall.thickness',
    'wall.finish',
    'wall.permeance',
    'wall.rValue',
    'wall.vented',
    'wall.framing',
    'product.permeance',
    'product.rValue',
    'project.place',
    'project.indoor',
  ],
  sources: [METHOD, AMOUNTS],
  caution: `An estimate by diffusion alone: air leaks, rain and storage are left out. Local code and licensed practice govern. ${OUTSIDE_CAUTION}`,
  *review({ detail }) {
    if (!showsWholeWall(detail)) return;
    const year = wallYearOf(detail);
    if (year.kind === 'not followed') {
      yield {
        kind: 'open',
        at: year.at,
        subject: SUBJECT,
        sources: [METHOD],
        missing: year.missing,
        message: `The wall cannot be followed through a year: ${year.reason}. State ${year.missing.join(', ')}.`,
      };
      return;
    }
    const { judgement } = year;
    const { typical } = judgement;
    const system = systemOf(detail);
    const common = { ...facts(typical, system), notes: notesOf(year, typical.year.leftOut) };
    const found = outcomeTold(typical, system);
    switch (judgement.kind) {
      case 'accepted':
        yield heldForRain(detail, { kind: 'pass', ...common, message: `Followed ${whereTold(year)}, ${found}.` });
        return;
      case 'undecided':
        yield heldForRain(detail, {
          kind: 'open',
          ...common,
          missing: judgement.hangsOn,
          message: `Whether the wall stays sound ${whereTold(year)} depends on ${judgement.hangsOn.join(', ')}: with figures halfway between their bounds, ${found}.`,
        });
        return;
      case 'refused':
        yield {
          kind: 'fail',
          ...common,
          message: `Followed ${whereTold(year)}, ${found} (${(typical.worst?.limit?.rule.source ?? METHOD).citation}).`,
          correct: curesOf(detail, year, system).text,
          notes: notesOf(year, typical.year.leftOut, [SOLVED]),
        };
    }
  },
});

function facts(
  { worst, wall }: JudgedYear,
  system: UnitSystem,
): Pick<Outcome, 'at' | 'subject' | 'sources' | 'required' | 'provided'> {
  const { at } = layerAt(wall, worst?.plane);
  if (worst === undefined)
    return { at, subject: SUBJECT, sources: [METHOD], required: 'no more than dries within a year', provided: 'none' };
  return {
    at,
    subject: SUBJECT,
    sources: [worst.limit?.rule.source ?? AMOUNTS, METHOD],
    required: `at most ${limitTold(worst, system)}, dry within a year`,
    provided: `${waterText(worst.kgPerM2, system)} by ${monthName(worst.month)}`,
  };
}
