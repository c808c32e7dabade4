import { heldForRain } from '../../src/engine/rain-storage.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { systemOf, type UnitSystem } from '../../src/model/unit-system.js';
import { CAUTION, leftOutBy } from '../../src/moisture/left-out.js';
import { FACTOR_LIMITS, SURFACE_LIMITS } from '../../src/moisture/limits.js';
import { temperatureFactor, yearOfSurface } from '../../src/moisture/surface.js';
import { SURFACE_RESISTANCES } from '../../src/moisture/data/surfaces.js';
import { layerAt, notesOf, wholeYearOf, whereTold } from '../../src/moisture/wall/told.js';
import { monthName, monthNames, percent, resistanceText } from '../../src/moisture/words.js';
import { formatQuantity } from '../../src/quantity/format.js';

const MOULD: Source = SURFACE_LIMITS.mould.source;
const FLOOR = FACTOR_LIMITS['UK dwellings'];

/** The inside face stays warm enough that the air against it is no home for mold. */
export default defineRule({
  id: 'moisture/interior-surface',
  title: 'Humidity at the interior surface',
  summary:
    'Between its studs, the inside face of the wall stays warm enough that the air against it is at most 80 % humid.',
  level: 'warning',
  reads: [
    'wall.material',
    'wall.product',
    'wall.thickness',
    'wall.rValue',
    'wall.vented',
    'project.place',
    'project.indoor',
  ],
  sources: [MOULD, FLOOR.source],
  caution:
    'For the wall between its studs, at mean weather: corners, studs, sills and the air behind furniture are colder. Local code and licensed practice govern.',
  *review({ detail }) {
    const year = wholeYearOf(detail);
    if (year === undefined) return;
    const { read, air } = year;
    const wall = read.walls.reduce((a, b) => (resistance(b) < resistance(a) ? b : a));
    const surfaces = { ...SURFACE_RESISTANCES.mould, outsideM2KW: wall.surfaces.outsideM2KW };
    const factor = temperatureFactor(resistance(wall), surfaces);
    const { months, limit, critical } = yearOfSurface(factor, air);
    const system = systemOf(detail);
    // When it is warmer outside, a damp face is the room's doing, not the wall's.
    const heated = months.filter((m) => m.neededFactor !== undefined);
    const damp = heated.filter((m) => m.humidity > limit.mostHumidity);
    const worst = heated.find((m) => m.month === critical?.month);
    const subject = 'inside face of the wall';
    const notes = notesOf(year, [...leftOutBy('surface'), CAUTION]);
    const { at } = layerAt(wall);
    const required = `at most ${percent(limit.mostHumidity)} relative humidity at the face`;
    if (critical === undefined || worst === undefined) {
      yield heldForRain(detail, {
        kind: 'pass',
        at,
        subject,
        required,
        sources: [MOULD],
        notes,
        message: `The room is not warmer than the outdoor air in any month ${whereTold(year)}, so the wall does not chill its inside face.`,
      });
      return;
    }
    const face = `${percent(worst.humidity)} humid in ${monthName(worst.month)}, the face at ${temperatureText(worst.temperatureC, system)}`;
    const common = { at, subject, required, notes, sources: [MOULD], provided: `air at the face ${face}` };
    const factors = `Its temperature factor is ${factor.toFixed(2)}; the month needs ${critical.neededFactor.toFixed(2)}`;
    if (critical.neededFactor >= 1) {
      yield {
        kind: 'review',
        ...common,
        message: `The room air itself is more than ${percent(limit.mostHumidity)} humid in ${monthNames(damp.map((m) => m.month))}, so no wall keeps its face dry: look at the indoor humidity that the project declares.`,
      };
      return;
    }
    if (damp.length === 0) {
      yield heldForRain(detail, {
        kind: 'pass',
        ...common,
        message: `${sentence(whereTold(year))}, the air at the inside face is ${face}, the month that asks most of the wall. ${factors}. Studs, corners and sills are colder: have their factor shown to be at least ${FLOOR.leastFactor} (${FLOOR.source.citation}, ${FLOOR.source.provenance}).`,
      });
      return;
    }
    const least = neededResistance(critical.neededFactor, surfaces);
    yield {
      kind: 'fail',
      ...common,
      message: `${sentence(whereTold(year))}, the air at the inside face is ${face}: more than ${percent(limit.mostHumidity)} in ${monthNames(damp.map((m) => m.month))}, where mold grows. ${factors}. Studs, corners and sills are colder still.`,
      correct: `Insulate the wall to at least ${resistanceText(least, system)} in all (now ${resistanceText(resistance(wall), system)}), outside of the framing if it can be, or keep the room drier.`,
    };
  },
});

const resistance = (wall: { readonly layers: readonly { readonly rM2KW: number }[] }): number =>
  wall.layers.reduce((sum, l) => sum + l.rM2KW, 0);

/** Resistance of a wall that has a temperature factor: factor = (R + outside) / (inside + R + outside). */
function neededResistance(
  factor: number,
  { insideM2KW, outsideM2KW }: { insideM2KW: number; outsideM2KW: number },
): number {
  // A hundredth of an R to the safe side, so that what is printed passes.
  return Math.max(0, (factor * insideM2KW) / (1 - factor) - outsideM2KW) + 0.002;
}

const temperatureText = (celsius: number, system: UnitSystem): string =>
  formatQuantity(celsius, 'temperature', { system });
const sentence = (words: string): string => `${words[0]?.toUpperCase() ?? ''}${words.slice(1)}`;
