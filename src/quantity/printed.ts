/** How finely a value was printed: `15 mil` stands for anything that rounds to 15. */
import { plainCharacters } from './characters.js';
import { takeDual } from './dual.js';
import { halfStepOf } from './half-step.js';
import type { Quantity } from './types.js';

/**
 * Half of the last digit printed, in the base unit. Of a value in two units the first counts.
 *
 * @returns 0 for fractions, which are meant exactly
 */
export function printedHalfStep(quantity: Quantity): number {
  const plain = plainCharacters(quantity.text);
  return halfStepOf({ ...quantity, text: takeDual(plain)?.main ?? plain }) ?? 0;
}
