/**
 * What a scalar without quotes means, as a value and as the name of an entry: the core schema of YAML 1.2, less the numbers that trap people.
 *
 * `010`, `0x10`, `5E3`, `.inf` and twenty-digit numbers are legal YAML and seldom what the author of a detail
 * meant; they are refused instead of being read as some number. Dates stay text, as in the core schema.
 *
 * @see YAML 1.2.2 section 10.3.2 (tag resolution of the core schema)
 */

/** A value as read, or the reason why it is refused. */
export type PlainValue = { readonly value: string | number | boolean | null } | { readonly refused: string };

const CONSTANTS: ReadonlyMap<string, PlainValue> = new Map<string, PlainValue>([
  ...['', '~', 'null', 'Null', 'NULL'].map((word) => [word, { value: null }] as const),
  ...['true', 'True', 'TRUE'].map((word) => [word, { value: true }] as const),
  ...['false', 'False', 'FALSE'].map((word) => [word, { value: false }] as const),
]);

const DECIMAL = /^[-+]?(?:\.\d+|\d+(?:\.\d*)?)$/;
const LEADING_ZERO = /^[-+]?0\d/;
const EXPONENT = /^[-+]?(?:\.\d+|\d+(?:\.\d*)?)[eE][-+]?\d+$/;
const OTHER_BASE = /^0(?:o[0-7]+|x[0-9a-fA-F]+)$/;
const NOT_FINITE = /^(?:[-+]?\.(?:inf|Inf|INF)|\.nan|\.NaN|\.NAN)$/;

/** Digits that a double keeps without loss whatever they are (IEEE 754 binary64, DBL_DIG). */
const EXACT_DIGITS = 15;

/**
 * The value of a plain scalar.
 *
 * @param source text of the scalar, lines folded
 * @returns null, a truth value, a finite number or the text itself; or the reason for refusing it
 */
export function plainValue(source: string): PlainValue {
  if (!mayBeSpecial(source)) return { value: source };
  const constant = CONSTANTS.get(source);
  if (constant) return constant;
  if (DECIMAL.test(source)) {
    if (LEADING_ZERO.test(source)) return { refused: `${source} begins with a zero, which reads in two ways` };
    if (digitsOf(source) > EXACT_DIGITS) return { refused: `${source} has more digits than a number can keep` };
    return { value: Number(source) };
  }
  if (EXPONENT.test(source)) return { refused: `${source} is read as a number with an exponent` };
  if (OTHER_BASE.test(source)) return { refused: `${source} is read as a number that is not decimal` };
  if (NOT_FINITE.test(source)) return { refused: `${source} is not a finite number` };
  return { value: source };
}

/** Nearly all scalars are words; one look at the first character spares them the patterns. */
function mayBeSpecial(source: string): boolean {
  const first = source.charCodeAt(0);
  if (source.length === 0) return true;
  if (first >= 48 && first <= 57) return true; // 0-9
  return '+-.~ntfNTF'.includes(source.charAt(0));
}

function digitsOf(source: string): number {
  return source.replace(/^[-+]?0*\.?0*/, '').replace('.', '').length;
}

/** A usable name, or why it is not one. After `wrong-value` the rest of the map can be read. */
export type EntryName =
  | { readonly name: string }
  | { readonly code: 'wrong-value' | 'malformed-yaml' | 'unsafe-content'; readonly message: string };

/**
 * Checks the name of an entry: it must read as text and be harmless.
 *
 * @param name text of the key
 * @param isPlain written without quotes
 * @param hasValue a colon follows
 */
export function entryName(name: string, isPlain: boolean, hasValue: boolean): EntryName {
  if (name === '__proto__')
    return { code: 'unsafe-content', message: 'An entry named __proto__ is not read; choose another name.' };
  if (name === '<<') return { code: 'unsafe-content', message: 'Merge keys (<<) are not read; write the entries out.' };
  if (!isPlain) return { name };
  if (name === '') return { code: 'wrong-value', message: 'An entry has no name before its colon; write one.' };
  const plain = plainValue(name);
  if (!('value' in plain) || typeof plain.value !== 'string') {
    return { code: 'wrong-value', message: `The name ${name} does not read as a text; put it in quotes: "${name}".` };
  }
  // In `{ width:48 in }` the whole is a name without a value.
  const [, left, right] = hasValue ? [] : (/^([^:]+):(\S.*)$/.exec(name) ?? []);
  if (left === undefined || right === undefined) return { name };
  return { code: 'malformed-yaml', message: `The colon needs a space after it; write "${left}: ${right}".` };
}
