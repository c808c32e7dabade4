/**
 * One value in two units, as data sheets print it: `15 mil (0.38 mm)`, `1/4 in (6 mm) to 1 in (25 mm)`.
 *
 * The value outside the parentheses is the one that counts; what stands in them is held against it.
 */
import { formatQuantity } from './format.js';
import { halfStepOf } from './half-step.js';
import { problem } from './problems.js';
import type { Quantity, QuantityProblem } from './types.js';

/** A text taken apart: what stands outside the parentheses, and what stands in each of them. */
export interface Dual {
  readonly main: string;
  readonly others: readonly string[];
}

/**
 * How far two printed values may lie apart, as a share of the larger. Common practice, no source: nominal sizes are
 * rounded to whole millimeters or tens, as 12 mm for 1/2 in (5.5 % less) and 20 mm for 3/4 in (5 % more).
 */
const NOMINAL_SHARE = 0.06;
/** Degrees have no share; 40 degF is printed as 4 or 5 degC. */
const NOMINAL_DEGREES = 1;

const CLOSE: Readonly<Record<string, string>> = { '(': ')', '[': ']' };

/** Index after the bracket that closes the one at `at`; -1 when none does. */
function afterClosing(text: string, at: number): number {
  const [open, close] = [text[at] as string, CLOSE[text[at] as string]];
  let depth = 0;
  for (let i = at; i < text.length; i++) {
    if (text[i] === open) depth++;
    if (text[i] === close && --depth === 0) return i + 1;
  }
  return -1;
}

/**
 * Takes second values out of a text. A parenthesis is one only after a space, so that the parentheses of a unit stay
 * with it (`0.02 L/(s m2) (0.004 cfm/ft2)`).
 *
 * @param plain in plain characters
 * @returns `undefined` when there are none, or more than the two ends of a range can have
 */
export function takeDual(plain: string): Dual | undefined {
  let main = '';
  const others: string[] = [];
  for (let i = 0; i < plain.length; i++) {
    const end = plain[i] === ' ' && plain[i + 1] !== undefined && (plain[i + 1] as string) in CLOSE ? i + 1 : -1;
    const after = end < 0 ? -1 : afterClosing(plain, end);
    if (after < 0) {
      main += plain[i] ?? '';
      continue;
    }
    others.push(plain.slice(end + 1, after - 1).trim());
    i = after - 1;
  }
  return others.length === 0 || others.length > 2 || others.some((o) => !/\d/.test(o)) ? undefined : { main, others };
}

function agree(a: number, b: number, from: Quantity, other: Quantity): boolean {
  const apart = Math.abs(a - b);
  const nominal =
    from.dimension === 'temperature' ? NOMINAL_DEGREES : NOMINAL_SHARE * Math.max(Math.abs(a), Math.abs(b));
  const steps = [halfStepOf(from), halfStepOf(other)].filter((s) => s !== undefined);
  return apart <= Math.max(nominal, Math.min(...(steps.length > 0 ? steps : [0]))) * (1 + 1e-9);
}

/** The two ends of a quantity; equal when it is one value. */
const ends = (q: Quantity): readonly [number, number] => [q.value, q.upper ?? q.value];

/**
 * Puts a value and its second values together.
 *
 * @param text all of it as the author wrote it
 * @param main the value outside the parentheses
 * @param others what stands in them: one value or range, or one value for each end of a range
 * @returns the main value with the whole text, or what is wrong with the pair
 */
export function joinDual(text: string, main: Quantity, others: readonly Quantity[]): Quantity | QuantityProblem {
  const wrong = (why: string): QuantityProblem => problem('two values', text, main.dimension, why);
  const [first, second] = others;
  if (first === undefined) return { ...main, text };
  const isRange = main.bound === 'between';
  if (others.some((o) => o.bound !== 'exactly' && (second !== undefined || o.bound !== main.bound)))
    return wrong('the bounds inside and outside the parentheses differ; write the same bound, or leave it out inside');
  if (isRange !== (second !== undefined || first.bound === 'between'))
    return wrong('a range and a single value stand side by side; write the range in both units');
  const [low, high] = ends(main);
  const pairs: readonly (readonly [number, number, Quantity])[] = [
    [low, first.value, first],
    [high, second?.value ?? ends(first)[1], second ?? first],
  ];
  for (const [a, b, other] of pairs) {
    if (agree(a, b, main, other)) continue;
    const like = { unit: other.unit };
    const [is, not] = [formatQuantity(a, main.dimension, like), formatQuantity(b, main.dimension, like)];
    const shown = formatQuantity(a, main.dimension, main);
    return wrong(`the two values differ: ${shown} is ${is}, not ${not}; correct the one that is wrong`);
  }
  return { ...main, text };
}
