import { heldForRain } from '../../src/engine/rain-storage.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { systemOf } from '../../src/model/unit-system.js';
import { balanceOf } from '../../src/moisture/wall/balance.js';
import { OUTSIDE_CAUTION } from '../../src/moisture/outside-caution.js';
import { askedOfInsulation } from '../../src/moisture/wall/asked-of-insulation.js';
import { insulationSpot } from '../../src/moisture/wall/cure.js';
import { coldSide } from '../../src/moisture/wall/judge.js';
import { notesOf, whereTold, wholeYearOf } from '../../src/moisture/wall/told.js';
import { percent, resistanceText } from '../../src/moisture/words.js';
import { conditionsAt } from '../../src/vapor/class-three.js';
import { frameOf } from '../../src/vapor/frame.js';
import { jurisdiction } from '../../src/vapor/permitted.js';

const COMPUTED: Source = {
  basis: 'physics',
  citation: 'least share that passes the followed year',
  provenance: 'computed',
};
const PRACTICE: Source = {
  basis: 'practice',
  citation: 'common practice: the share of the insulation outside of the sheathing decides how warm it is',
  provenance: 'common practice, no source',
};
/** Cavity fill with which the code's table was presumably set, US R; the table itself prints none. */
const TABLE_CAVITY = { r2x4: 13, r2x6: 20 } as const;

/** Enough of the insulation lies outside of the sheathing. */
export default defineRule({
  id: 'moisture/insulation-ratio',
  title: 'Ratio of exterior insulation',
  summary:
    'Of the thermal resistance of a wall with continuous insulation, enough lies outside of the frame to keep its sheathing warm.',
  level: 'note',
  reads: [
    'wall.material',
    'wall.thickness',
    'wall.rValue',
    'wall.continuous',
    'wall.framing',
    'project.place',
    'project.indoor',
  ],
  sources: [COMPUTED, PRACTICE],
  caution: `A share that passes here may still be less than the code asks for. Local code and licensed practice govern. ${OUTSIDE_CAUTION}`,
  *review({ detail }) {
    const frame = frameOf(detail);
    const year = frame === undefined ? undefined : wholeYearOf(detail);
    if (frame === undefined || year === undefined || year.judgement.kind === 'undecided') return;
    const { judgement, read, air } = year;
    const spot = insulationSpot(detail, read.walls);
    const insulation = read.walls[0].layers[spot.index];
    if (spot.changes === undefined || insulation === undefined || coldSide(air) === 'inside') return;
    const { outsideM2KW, totalM2KW } = balanceOf(judgement.typical.wall, judgement.typical.layers, frame);
    const system = systemOf(detail);
    const asked = askedOfInsulation(detail, year, system);
    const cure = asked.byYear;
    const shareWith = (rM2KW: number): number =>
      (outsideM2KW - insulation.rM2KW + rM2KW) / (totalM2KW - insulation.rM2KW + rM2KW);
    const share = shareWith(insulation.rM2KW);
    const place = jurisdiction(detail.project);
    const row = place.kind === 'known' ? conditionsAt(place) : undefined;
    const byCode =
      row === undefined || place.kind !== 'known'
        ? ''
        : ` The class III table of ${place.codeText} comes to ${percent(row.r2x6 / (row.r2x6 + TABLE_CAVITY.r2x6))} with R-${TABLE_CAVITY.r2x6} in 2x6 framing and ${percent(row.r2x4 / (row.r2x4 + TABLE_CAVITY.r2x4))} with R-${TABLE_CAVITY.r2x4} in 2x4 (computed; ${row.source.provenance}).`;
    const needs =
      cure.kind !== 'found'
        ? undefined
        : cure.value === 0
          ? 'none'
          : `at least ${percent(shareWith(cure.value))} (${resistanceText(cure.value, system)} of "${insulation.id}")`;
    const common = {
      at: insulation.layer.thermalResistance?.at ?? insulation.layer.at,
      subject: 'share of insulation outside',
      sources: [COMPUTED, PRACTICE],
      provided: percent(share),
      ...(needs === undefined ? {} : { required: needs }),
      notes: notesOf(year, judgement.typical.year.leftOut),
    };
    const found = `${percent(share)} of the thermal resistance of the wall lies outside of "${frame.id}"`;
    const need =
      needs === undefined
        ? `no share with up to ${resistanceText(cure.kind === 'found' ? cure.value : cure.most, system)} of "${insulation.id}" keeps the monthly estimate within its limits`
        : cure.kind === 'found' && cure.value === 0
          ? `no insulation is needed there for the monthly estimate to stay within its limits (air leaks and rain left out)`
          : `the monthly estimate stays within its limits with ${needs}`;
    if (judgement.kind === 'accepted') {
      yield heldForRain(detail, { kind: 'pass', ...common, message: `${found}; ${whereTold(year)} ${need}.${byCode}` });
      return;
    }
    yield {
      kind: 'fail',
      ...common,
      message: `${found}; ${whereTold(year)} ${need}.${byCode}`,
      correct:
        cure.kind === 'found'
          ? `Make "${insulation.id}" at least ${asked.text ?? resistanceText(cure.value, system)}${asked.words}, or move insulation from the frame to the outside.`
          : `Use insulation that lets vapor through outside, or a tighter layer inside.`,
    };
  },
});
