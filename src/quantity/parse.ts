/**
 * From the text of an author to a quantity.
 *
 * The rule for hyphens: a whole number, a hyphen and a proper fraction without spaces are one mixed number
 * (`5-1/2 in`); a foot, a hyphen and inches are one length (`4'-6"`); every other hyphen makes a range (`5-6 in`,
 * `1/4-1/2 in`, `5-1/2-6 in`). Dashes count as hyphens. `to` always makes a range.
 */
import { takeBound } from './bounds.js';
import { plainCharacters } from './characters.js';
import { joinDual, takeDual } from './dual.js';
import { readMovement } from './movement.js';
import type { Sides } from './movement.js';
import { MAX_LENGTH, noUnit, problem, quoted } from './problems.js';
import { findUnit } from './spelling.js';
import { readTerm } from './terms.js';
import type { Source, Term } from './terms.js';
import type { Bound, Dimension, Quantity, QuantityProblem } from './types.js';
import { toBase } from './units.js';
import type { Unit } from './units.js';

/** Lowest and highest value in the base unit; a dimension not named reaches from 0 up. */
const LIMITS: Readonly<Partial<Record<Dimension, { least: number; most: number; why: string }>>> = {
  temperature: { least: -273.15, most: Infinity, why: 'this is below absolute zero' },
  slope: { least: -Infinity, most: Infinity, why: '' },
  fraction: { least: 0, most: 1, why: 'a fraction lies between 0 % and 100 %' },
};

/** Distinct texts kept per dimension; a library repeats the same few hundred. */
const REMEMBERED = 512;
const memory = new Map<Dimension, Map<string, Quantity | QuantityProblem>>();

/** Whether the result of {@link parseQuantity} is a problem. */
export function isProblem(result: Quantity | QuantityProblem): result is QuantityProblem {
  return 'problem' in result;
}

/**
 * Reads a quantity: a number with a unit of `dimension`, US or SI, as a decimal, fraction, mixed number, range or
 * bound. The same value in a second unit may follow in parentheses; the two have to agree. A bare number is accepted
 * only for a fraction between 0 and 1.
 * @param text any text; at most 60 characters are read as a quantity
 * @returns the quantity in the base unit of the dimension, or what is wrong with the text; never throws. The result
 *   is frozen, because the same text gives the same object.
 * @see units.ts for the source of each constant
 */
export function parseQuantity(text: string, dimension: Dimension): Quantity | QuantityProblem {
  let known = memory.get(dimension);
  if (known === undefined) memory.set(dimension, (known = new Map<string, Quantity | QuantityProblem>()));
  const before = known.get(text);
  if (before !== undefined) return before;
  if (text.length > MAX_LENGTH) return Object.freeze(read(text, dimension));
  // A copy, because a slice of a document would keep the whole document in memory as long as the key lives.
  const key = Buffer.from(text, 'utf16le').toString('utf16le');
  const result = Object.freeze(read(key, dimension));
  if (known.size >= REMEMBERED) known.clear();
  known.set(key, result);
  return result;
}

function read(written: string, dimension: Dimension): Quantity | QuantityProblem {
  const whole = readOne(written, dimension);
  // The parentheses of a unit are read with it, so only what cannot be read as one value may be two.
  if (!isProblem(whole) || written.length > MAX_LENGTH) return whole;
  const dual = takeDual(plainCharacters(written.trim()));
  if (dual === undefined) return whole;
  const main = readOne(dual.main, dimension);
  if (isProblem(main)) return main;
  const others: Quantity[] = [];
  for (const text of dual.others) {
    const other = readOne(text, dimension);
    if (isProblem(other)) return other;
    others.push(other);
  }
  return joinDual(written.trim().replace(/\s+/g, ' '), main, others);
}

function readOne(written: string, dimension: Dimension): Quantity | QuantityProblem {
  const trimmed = written.trim();
  if (trimmed === '') return problem('not a number', trimmed, dimension, 'nothing is written');
  if (trimmed.length > MAX_LENGTH) {
    return problem(
      'not a number',
      trimmed,
      dimension,
      `a quantity has at most ${MAX_LENGTH} characters, this has ${trimmed.length}`,
    );
  }
  const text = trimmed.replace(/\s+/g, ' ');
  const { bound, rest, twice } = takeBound(plainCharacters(text), dimension);
  if (twice)
    return problem(
      'not a number',
      text,
      dimension,
      'two bounds are written; for a range write the two values with "to"',
    );
  if (rest.startsWith('<') || rest.startsWith('>')) {
    return problem('not a number', text, dimension, 'a bound includes its value here; write >= or <=');
  }
  if (dimension === 'slope' && /^(?:level|flat)$/i.test(rest))
    return readAll({ plain: '0 %', text, dimension }, bound, false);
  if (dimension === 'movement') {
    const movement = readMovement(rest, text);
    if (typeof movement === 'string') return readAll({ plain: movement, text, dimension }, bound, false);
    return 'problem' in movement ? movement : twoSided(movement, text, bound);
  }
  const between = /^between /i.test(rest);
  return readAll({ plain: between ? rest.slice('between '.length) : rest, text, dimension }, bound, between);
}

/** One term, or two with a hyphen or `to` between them. */
function readAll(source: Source, bound: Bound, between: boolean): Quantity | QuantityProblem {
  const { plain, text, dimension } = source;
  const first = readTerm(source, 0);
  if ('problem' in first) return first;
  const rest = plain.slice(first.end);
  if (rest === '' && !between) return finish(source, bound, first, first.unit, undefined);

  const joint = (between ? /^ (?:and|to) /i : /^(?: ?- ?| to )/i).exec(rest)?.[0];
  if (joint === undefined) {
    const why = between
      ? '"between" needs two values with "and"'
      : `${quoted(rest.trim())} is left over after the first value`;
    return problem('not a number', text, dimension, why);
  }
  if (bound !== 'exactly') {
    return problem(
      'not a number',
      text,
      dimension,
      'a range cannot also be a bound; write one value or leave out the bound',
    );
  }
  const second = readTerm(source, first.end + joint.length);
  if ('problem' in second) return second;
  if (second.end < plain.length) {
    return problem(
      'not a number',
      text,
      dimension,
      `${quoted(plain.slice(second.end).trim())} is left over after the second value`,
    );
  }
  const unit = first.unit ?? second.unit;
  if (second.unit === undefined && first.unit !== undefined && first.prefixed !== true) return noUnit(text, dimension);
  return finish(source, 'between', first, unit, second);
}

/** The value of a term in the base unit, given the unit of the range if it has none itself. */
function baseOf(term: Term, unit: Unit): number {
  // Adding 0 turns a negative zero into zero, which prints and compares as people expect.
  return (term.base ?? toBase(term.x, term.unit ?? unit)) + 0;
}

function outOfRange({ text, dimension }: Source, term: Term, unit: Unit, base: number): QuantityProblem | undefined {
  const limits = LIMITS[dimension] ?? { least: 0, most: Infinity, why: 'the value cannot be negative' };
  if (!Number.isFinite(base)) return problem('not a number', text, dimension, 'the number is too large');
  if ((term.unit ?? unit).tangent && Math.abs(term.x) >= 90) {
    return problem('out of range', text, dimension, 'a slope in degrees lies between -90 and 90');
  }
  return base < limits.least || base > limits.most ? problem('out of range', text, dimension, limits.why) : undefined;
}

function finish(
  source: Source,
  bound: Bound,
  first: Term,
  given: Unit | undefined,
  second: Term | undefined,
): Quantity | QuantityProblem {
  const { text, dimension } = source;
  // Only a fraction may be bare: 0.55 is then the share itself, not 0.55 %.
  const bare = given === undefined && dimension === 'fraction' && first.x <= 1 && (second?.x ?? 0) <= 1;
  const unit = bare ? findUnit('%', dimension) : given;
  if (unit === undefined) return noUnit(text, dimension);
  const value = bare ? first.x : baseOf(first, unit);
  const fault = outOfRange(source, first, unit, value);
  if (fault !== undefined) return fault;
  const result = { dimension, text, value, bound, unit: unit.spelling, system: unit.system };
  if (second === undefined) return result;

  const upper = bare ? second.x : baseOf(second, unit);
  const upperFault = outOfRange(source, second, unit, upper);
  if (upperFault !== undefined) return upperFault;
  if (value > upper) {
    return problem(
      'empty range',
      text,
      dimension,
      'the first value of the range is larger than the second; put the smaller one first',
    );
  }
  return { ...result, upper };
}

function twoSided(sides: Sides, text: string, bound: Bound): Quantity {
  const value = Math.min(sides.extension, sides.compression);
  return { dimension: 'movement', text, value, sides, bound, unit: '%', system: 'either' };
}
