/** Amounts of water on an area, as text in the reader's units. */
import type { UnitSystem } from '../model/unit-system.js';

/** A pound is 0.45359237 kg and a foot 0.3048 m, exactly (international yard and pound agreement of 1959). */
const KG_PER_M2_OF_LB_PER_FT2 = 0.45359237 / 0.3048 ** 2;
/** Less is rounding of the method, kg/m2. */
const LEAST_KG_PER_M2 = 0.001;

const two = (value: number): string => String(Number(value.toPrecision(2)));

/** `0.086 lb/ft2 (0.42 kg/m2)`, or `0.42 kg/m2`. */
export function amountText(kgPerM2: number, system: UnitSystem): string {
  const least = kgPerM2 < LEAST_KG_PER_M2;
  const si = least ? `less than ${LEAST_KG_PER_M2} kg/m2` : `${two(kgPerM2)} kg/m2`;
  if (system === 'SI' || least) return si;
  return `${two(kgPerM2 / KG_PER_M2_OF_LB_PER_FT2)} lb/ft2 (${si})`;
}
