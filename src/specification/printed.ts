/** Values as a document writes them: the figures of the section with the one spelling of the unit that all parts know. */
import { isProblem, parseQuantity } from '../quantity/parse.js';
import { BASE_UNITS } from '../quantity/types.js';
import type { Dimension } from '../quantity/types.js';
import type { Found } from './quantities.js';
import type { ReadValue } from './types.js';
import type { ReadUnit } from './units.js';

/** A quantity as text and in the base unit of its kind. */
export function readValue(found: Found, unit: ReadUnit | undefined): ReadValue {
  const { number, upper, others, unitText, nominal } = found;
  const spelling = unit?.spelling ?? unitText;
  const figures =
    upper !== undefined
      ? `${number.text} to ${upper.text}`
      : others !== undefined
        ? [number, ...others].map((one) => one.text).join(', ')
        : number.tolerance
          ? `plus or minus ${number.text}`
          : number.text;
  const text = (spelling === 'R' ? `R-${figures}` : `${figures} ${spelling}`).trim();
  if (unit === undefined) return { text };
  return {
    text,
    kind: unit.kind,
    base: unit.toBase(number.value),
    ...(upper !== undefined && { upperBase: unit.toBase(upper.value) }),
    ...(nominal !== undefined && { nominalBase: unit.toBase(nominal.value) }),
  };
}

/** Every number of a choice left open, as a value of its own. */
export function offeredValues(found: Found, unit: ReadUnit | undefined): readonly ReadValue[] {
  const { choices } = found.number;
  if (choices === undefined) return [readValue(found, unit)];
  return choices.map((value) => ({
    text: `${value} ${unit?.spelling ?? found.unitText}`.trim(),
    ...(unit !== undefined && { kind: unit.kind, base: unit.toBase(value) }),
  }));
}

/** Whether the quantity room reads the text as a value of this kind, as the check of a document will. */
export function isQuantity(text: string, dimension: string): boolean {
  return dimension in BASE_UNITS && !isProblem(parseQuantity(text, dimension as Dimension));
}
