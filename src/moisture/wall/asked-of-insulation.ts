/** How much insulation outside a correction may name: enough for the year, and for the code beside paint alone. */
import { insulationSpot, leastInsulation, passesInsulated, type Cure } from './cure.js';
import type { WallYear } from './of-detail.js';
import { resistanceText } from '../words.js';
import { insulationForClassThree } from '../../vapor/conditions-met.js';
import { usRToSi } from '../../vapor/classes.js';
import { frameOf } from '../../vapor/frame.js';
import { continuousInsulation } from '../../vapor/insulation.js';
import { interiorSide } from '../../vapor/interior-side.js';
import type { Detail } from '../../model/types.js';
import type { UnitSystem } from '../../model/unit-system.js';

export interface AskedOfInsulation {
  /** What the year alone asks for. */
  readonly byYear: Cure;
  /** m2 K/W of the layer at the spot that meets both, and the same as text; absent where nothing within reach does. */
  readonly m2KPerW?: number;
  readonly text?: string;
  /** Why, where the two differ: ` (R-7.8 for the followed year, R-11.25 by IBC ... with a class III retarder)`. */
  readonly words: string;
}

/** Least resistance of the layer at the spot by the class III table, m2 K/W; 0 where the table asks for none. */
function byCode(
  detail: Detail,
  spotM2KPerW: number,
  system: UnitSystem,
): { m2KPerW: number; text: string; citation: string } {
  const none = { m2KPerW: 0, text: '', citation: '' };
  const frame = frameOf(detail);
  const asked = insulationForClassThree(detail);
  if (frame === undefined || asked === undefined) return none;
  const side = interiorSide(detail, frame);
  if (side.kind === 'retarder' && side.retarder.vaporClass !== 'III') return none;
  const others = continuousInsulation(detail, frame).knownM2KPerW - spotM2KPerW;
  const m2KPerW = Math.max(0, usRToSi(asked.usR) - others);
  // What the table prints is told as printed.
  const text = system === 'US' && !(others > 0) ? `R-${asked.usR}` : resistanceText(m2KPerW, system);
  return { m2KPerW, text, citation: asked.source.citation };
}

/**
 * The resistance to name in a correction of the insulation outside: the stricter of year and code, followed again.
 *
 * @see leastInsulation, insulationForClassThree
 */
export function askedOfInsulation(detail: Detail, { read, air }: WallYear, system: UnitSystem): AskedOfInsulation {
  const spot = insulationSpot(detail, read.walls);
  const byYear = leastInsulation(read, air, spot);
  if (byYear.kind !== 'found') return { byYear, words: '' };
  const now = spot.changes === undefined ? 0 : (read.walls[0].layers[spot.index]?.rM2KW ?? 0);
  const code = byCode(detail, now, system);
  if (code.m2KPerW <= byYear.value * (1 + 1e-6))
    return { byYear, m2KPerW: byYear.value, text: resistanceText(byYear.value, system), words: '' };
  const words = ` (${resistanceText(byYear.value, system)} for the year alone, ${code.text} by ${code.citation} with class III inside)`;
  return passesInsulated(read, air, spot, code.m2KPerW)
    ? { byYear, m2KPerW: code.m2KPerW, text: code.text, words }
    : { byYear, words: '' };
}
