import { heldForRain } from '../../src/engine/rain-storage.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Outcome, Source } from '../../src/engine/result.js';
import type { Apply, Detail, Layer } from '../../src/model/types.js';
import { systemOf, type UnitSystem } from '../../src/model/unit-system.js';
import { CAUTION, leftOutBy } from '../../src/moisture/left-out.js';
import { DRYING_RESERVE } from '../../src/moisture/limits.js';
import { sdFromPermeanceM } from '../../src/moisture/resistance.js';
import { genericFields, reserves, tightOutside, withStrip } from '../../src/moisture/wall/balance.js';
import type { WallYear } from '../../src/moisture/wall/of-detail.js';
import type { Wall } from '../../src/moisture/wall/wall.js';
import { notesOf, whereTold, wholeYearOf } from '../../src/moisture/wall/told.js';
import { waterText } from '../../src/moisture/words.js';
import { formatQuantity } from '../../src/quantity/format.js';
import { permToNg } from '../../src/vapor/classes.js';
import { sensitiveBetween } from '../../src/vapor/double-barrier.js';
import { frameOf } from '../../src/vapor/frame.js';
import { interiorSide } from '../../src/vapor/interior-side.js';

const RESERVE: Source = DRYING_RESERVE.source;
const PRACTICE: Source = { basis: 'practice', citation: 'common practice', provenance: 'common practice, no source' };
const WET =
  'The inner face of the low-permeance layer is taken to be wet all year, as from a leak; counted is the vapor that leaves the wall in the months in which it dries, less what condenses in the year.';

/** Behind a tight layer outside a wall dries to the room alone: the inside must let it. */
export default defineRule({
  id: 'moisture/field-barrier',
  title: 'Drying behind a low-permeance exterior layer',
  summary: 'Behind a membrane or insulation of class I or II outside the frame, the wall can dry a leak to the room.',
  level: 'warning',
  reads: [
    'wall.material',
    'wall.product',
    'wall.permeance',
    'wall.finish',
    'wall.rValue',
    'product.permeance',
    'product.responsive',
    'work.ontoWall',
    'project.place',
    'project.indoor',
  ],
  sources: [RESERVE, PRACTICE],
  caution: 'An estimate of diffusion: it is no leave to let water in. Local code and licensed practice govern.',
  parameters: {
    strip: {
      type: 'length',
      default: '12 in',
      meaning: 'flashing that reaches farther onto the wall than this is looked at like a field membrane',
      source: PRACTICE,
    },
  },
  *review({ detail, number }) {
    const frame = frameOf(detail);
    const year = frame === undefined ? undefined : wholeYearOf(detail);
    if (frame === undefined || year === undefined) return;
    const [wall] = year.read.walls;
    const system = systemOf(detail);
    const tight = tightOutside(wall, frame);
    if (tight !== undefined) {
      // Class I on both sides of wood or gypsum is the finding of vapor/double-barrier.
      if (tight.vaporClass === 'I' && isShutIn(detail, frame, tight.layer)) return;
      yield heldForRain(
        detail,
        held(
          { year, wall, system, wetBehind: tight.layer.id, peakKgPerM2: year.judgement.typical.year.peakKgPerM2 },
          `Behind "${tight.layer.id}" (class ${tight.vaporClass}, ${tight.words})`,
          { at: tight.layer.at, subject: `drying behind ${tight.layer.id}` },
        ),
      );
      return;
    }
    for (const work of detail.work) {
      const strip = work.action === 'apply' ? wideTightStrip(work, number('strip')) : undefined;
      if (work.action !== 'apply' || strip === undefined) continue;
      const { wall: covered, id } = withStrip(wall, detail, frame, strip.sdM);
      yield heldForRain(
        detail,
        held(
          { year, wall: covered, system, wetBehind: id, peakKgPerM2: 0 },
          `Flashing "${work.id}" (${strip.permeance.text}) reaches ${formatQuantity(strip.ontoWallMm.value, 'length', strip.ontoWallMm)} onto the wall; behind it`,
          { at: strip.ontoWallMm.at, subject: `drying behind ${work.id}`, level: 'note' },
        ),
      );
    }
  },
});

function isShutIn(detail: Detail, frame: Layer, outer: Layer): boolean {
  const side = interiorSide(detail, frame);
  return (
    side.kind === 'retarder' &&
    side.retarder.vaporClass === 'I' &&
    !side.retarder.responsive &&
    sensitiveBetween(detail, side.retarder.layer, outer) !== undefined
  );
}

/** Flashing of an opening that is of class I or II and wide. */
function wideTightStrip(
  work: Apply,
  stripMm: number,
): { sdM: number; permeance: { text: string }; ontoWallMm: NonNullable<Apply['ontoWallMm']> } | undefined {
  const permeance = work.product?.permeanceDry;
  const { ontoWallMm } = work;
  if (work.layer !== undefined || permeance === undefined || ontoWallMm === undefined) return undefined;
  const isTight = permeance.value > 0 && (permeance.upper ?? permeance.value) <= permToNg(1) * (1 + 1e-9);
  if (!isTight || ontoWallMm.value <= stripMm + 0.1) return undefined;
  return { sdM: sdFromPermeanceM(permeance.value), permeance, ontoWallMm };
}

interface Asked {
  readonly year: WallYear;
  readonly wall: Wall;
  readonly system: UnitSystem;
  readonly wetBehind: string;
  /** Condenses in the year and must dry beside the leak. */
  readonly peakKgPerM2: number;
}

function held(
  { year, wall, system, wetBehind, peakKgPerM2 }: Asked,
  sentence: string,
  place: Pick<Outcome, 'at' | 'subject' | 'level'>,
): Outcome {
  const least = DRYING_RESERVE.timberKgPerM2;
  const all = reserves(wall, year.air, wetBehind);
  const amounts = all.map((r) => Math.max(0, r.kgPerM2 - peakKgPerM2));
  const [halfway = 0] = amounts;
  const toRoom = all[0] === undefined || !(all[0].kgPerM2 > 0) ? 0 : all[0].toInsideKgPerM2 / all[0].kgPerM2;
  const { level, ...at } = place;
  const common = {
    ...at,
    sources: [RESERVE, PRACTICE],
    required: `at least ${waterText(least, system)} a year`,
    provided: `${waterText(halfway, system)} a year`,
    notes: notesOf(year, [...leftOutBy('monthly'), CAUTION], [WET]),
  };
  const message = `${sentence} the wall could dry ${waterText(halfway, system)} a year, ${Math.round(toRoom * 100)} % of it to the room, ${whereTold(year)}`;
  if (amounts.every((kg) => kg >= least)) return { kind: 'pass', ...common, message: `${message}.` };
  const missing = genericFields(wall);
  if (amounts.some((kg) => kg >= least) && missing.length > 0)
    return {
      kind: 'open',
      ...common,
      missing,
      message: `${message}, with figures halfway; whether that is at least ${waterText(least, system)} depends on ${missing.join(', ')}.`,
    };
  return {
    kind: 'fail',
    ...common,
    message: `${message}; at least ${waterText(least, system)} is expected of a wall that may leak (${RESERVE.citation}).`,
    correct:
      'Let the room side pass more vapor (paint, or a responsive film, with enough insulation outside), or use a permeable layer outside.',
    ...(level === undefined ? {} : { level }),
  };
}
