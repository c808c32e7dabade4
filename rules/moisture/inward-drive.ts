import { heldForRain } from '../../src/engine/rain-storage.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { zoneTextOfProject } from '../../src/climate/project-place.js';
import { systemOf } from '../../src/model/unit-system.js';
import { PAST_VENTED_CAVITY, RESERVOIRS } from '../../src/moisture/data/inward.js';
import { OUTSIDE_CAUTION } from '../../src/moisture/outside-caution.js';
import { AMOUNT_RULES } from '../../src/moisture/limits.js';
import { permeanceFromSdNg } from '../../src/moisture/resistance.js';
import {
  reservoirWall,
  sunnyReadings,
  tightestInside,
  type ReservoirWall,
} from '../../src/moisture/wall/behind-cladding.js';
import { sunnyYear, type SunnyYear } from '../../src/moisture/inward-day.js';
import type { Layer } from '../../src/model/types.js';
import { typicalLayers } from '../../src/moisture/wall/judge.js';
import { notesOf, placeTold, whereTold, wholeYearOf } from '../../src/moisture/wall/told.js';
import { monthNames, permeanceText, waterText } from '../../src/moisture/words.js';
import { interiorLimit } from '../../src/vapor/conditions-met.js';
import { frameOf } from '../../src/vapor/frame.js';
import { interiorSide } from '../../src/vapor/interior-side.js';

const MODEL: Source = {
  basis: 'practice',
  citation: 'sunny days on soaked cladding, followed by this program',
  provenance: 'common practice, no source',
};
/** Where rooms are cooled for most of the year. */
const WARM = /^\s*(?:[1-3][ABC]?|4[AB])\s*$/i;

/** Sun on wet cladding drives vapor inward; a tight layer on the room side stops it where nobody looks. */
export default defineRule({
  id: 'moisture/inward-drive',
  title: 'Solar-driven inward vapor',
  summary:
    'Behind a cladding that stores rain, the layer on the room side lets through what the sun drives in, or a vented cavity carries it off.',
  level: 'warning',
  reads: [
    'wall.material',
    'wall.product',
    'wall.finish',
    'wall.permeance',
    'wall.vented',
    'product.permeance',
    'product.responsive',
    'project.place',
    'project.indoor',
  ],
  sources: [MODEL, RESERVOIRS.source],
  caution: `A model of the project with assumed sun, rain and cavity: it ranks walls and forecasts nothing. Local code and licensed practice govern. ${OUTSIDE_CAUTION}`,
  parameters: {
    most: {
      type: 'fraction',
      default: '100 %',
      meaning:
        'how much may gather over a season of sunny days after rain, as a share of 0.5 kg/m2 (1.6 oz/ft2), the amount borne beside layers that do not absorb',
      source: MODEL,
    },
  },
  *review({ detail, number }) {
    const frame = frameOf(detail);
    const year = frame === undefined ? undefined : wholeYearOf(detail);
    if (frame === undefined || year === undefined) return;
    const side = interiorSide(detail, frame);
    const found = reservoirWall(detail, year.read);
    if (found === undefined || side.kind !== 'retarder') return;
    const { retarder } = side;
    // Paint and responsive films let the room take what comes.
    if (retarder.vaporClass === 'III') return;
    const { cladding, wall } = found;
    const subject = 'vapor driven inward';
    const sources = [MODEL];
    const related = [{ message: `"${cladding.id}" stores rain`, at: cladding.at }];
    const name = `"${retarder.layer.id}" (class ${retarder.vaporClass}, ${retarder.words})`;
    if (retarder.responsive) {
      yield heldForRain(detail, {
        kind: 'pass',
        at: retarder.at,
        subject,
        sources,
        related,
        message: `Behind "${cladding.id}", the responsive layer ${name} opens up when vapor is driven inward.`,
      });
      return;
    }
    const mostKgPerM2 = number('most') * AMOUNT.mostKgPerM2;
    const readings = sunnyReadings(found, year.air);
    const [typical] = readings;
    if (typical === undefined) return;
    const system = systemOf(detail);
    const tooMuch = readings.filter((r) => r.seasonKgPerM2 > mostKgPerM2);
    const worst = [...readings].sort((a, b) => b.seasonKgPerM2 - a.seasonKgPerM2)[0] ?? typical;
    const notes = notesOf(year, worst.leftOut, worst.assumptions);
    const required = `at most ${waterText(mostKgPerM2, system)} over a season of sunny days after rain`;
    const provided = waterText(typical.seasonKgPerM2, system);
    const common = { at: retarder.at, subject, sources, related, required, notes };
    const ofDay = (r: typeof typical): string =>
      r.worst === undefined
        ? 'sun on the soaked cladding makes no water in the wall in any month'
        : `a day of sun on the soaked cladding makes ${waterText(r.worst.sunnyKgPerM2, system)} of water ${placeTold(r.worst.plane)}, and ${waterText(r.worst.leftKgPerM2, system)} lies there the next morning${r.gathersIn.length === 0 ? '' : ` (${monthNames(r.gathersIn)})`}`;
    if (tooMuch.length === 0) {
      yield heldForRain(detail, {
        kind: 'pass',
        ...common,
        provided,
        message: `Behind "${cladding.id}" with ${name} inside, ${whereTold(year)}, ${ofDay(typical)}.`,
      });
      return;
    }
    if (tooMuch.length < readings.length) {
      const missing = hangsOn(found, readings, mostKgPerM2, retarder.layer);
      yield {
        kind: 'open',
        ...common,
        missing,
        message: `Whether vapor driven inward through "${cladding.id}" gathers at ${name} depends on ${missing.join(', ')}: ${ofDay(worst)} in the worst reading.`,
      };
      return;
    }
    const finish = `${retarder.layer.id} finish`;
    const varied = wall.layers.some((l) => l.id === finish) ? finish : retarder.layer.id;
    const halfway = typicalLayers(wall, year.air);
    const tightest = tightestInside(halfway, varied, year.air, found.vented[0] === true, mostKgPerM2);
    const cavity =
      found.vented.includes(false) && sunnyYear(halfway, year.air, true).seasonKgPerM2 <= mostKgPerM2
        ? `a vented cavity behind "${cladding.id}" (taken to let ${PAST_VENTED_CAVITY.value * 100} % past)`
        : undefined;
    const code = interiorLimit(detail);
    // A more permeable layer is no way out where the code asks for class II at least.
    const mayBeOpen = code === undefined;
    const ways = [
      ...(tightest === undefined
        ? [mayBeOpen ? 'a responsive or more permeable layer inside' : 'a responsive layer inside']
        : !mayBeOpen && permeanceFromSdNg(tightest) > (code?.mostNgPerPaSM2 ?? 0)
          ? ['a responsive layer inside']
          : [
              `a responsive layer inside, or one of at least ${permeanceText(permeanceFromSdNg(tightest), system, 'up')}`,
            ]),
      ...(cavity === undefined ? [] : [cavity]),
    ];
    const warm = WARM.test(zoneTextOfProject(detail.project) ?? '');
    yield {
      kind: 'fail',
      ...common,
      provided: `${provided}, were each day of ${monthNames(typical.gathersIn)} such a day`,
      message: `Behind "${cladding.id}", ${name} stops vapor that the sun drives inward: ${whereTold(year)}, ${ofDay(typical)}.`,
      correct: `Use ${ways.join(', or ')}.`,
      // Where the heating season is the longer one, the same layer has its use in winter.
      ...(warm ? {} : { level: 'note' as const }),
    };
  },
});

const AMOUNT = {
  mostKgPerM2: AMOUNT_RULES.find((r) => r.family === 'DIN 4108-3' && r.beside === 'non-absorbing')?.mostKgPerM2 ?? 0.5,
};

/** Fields that would settle it: the venting where it alone turns the answer, else the figures that no document gives. */
function hangsOn(
  { unsaidVenting, vented, wall }: ReservoirWall,
  readings: readonly SunnyYear[],
  mostKgPerM2: number,
  retarder: Layer,
): string[] {
  const halfway = readings.slice(0, vented.length).map((r) => r.seasonKgPerM2 > mostKgPerM2);
  if (unsaidVenting !== undefined && new Set(halfway).size > 1) return [unsaidVenting];
  const generic = wall.layers.filter((l) => l.generic && l.dry.leastM < l.dry.mostM && l.layer !== retarder);
  return [...new Set([...(unsaidVenting === undefined ? [] : [unsaidVenting]), ...generic.map((l) => l.field)])];
}
