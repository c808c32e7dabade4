/** Quantities that belong together: the ends of a range, a size with its tolerance, a list that shares one unit. */
import type { ReadNumber } from './numbers.js';
import type { Found } from './quantities.js';

/** No section lists more values before their unit. */
const LONGEST_LIST = 12;
/** "Minus 40 to plus 82", "-30 to +70". */
const PLUS = String.raw`(?:\s(?:plus\s|\+))?`;
const RANGE = new RegExp(String.raw`^\s?(?:to|through|thru|-|up to)${PLUS}\s?$`, 'i');
const BETWEEN = new RegExp(String.raw`^\s?(?:and|to)${PLUS}\s?$`, 'i');
/** What is graded by plain numbers. */
const GRADED = /\b(?:shore [ad]|hardness|gloss|index|rating|coefficient|factor|class)\b[^.;\d]{0,30}$/i;
const SHARED = /^(?:\s?(?:,|and|or|\/|, and|, or|by|x|and\/or)\s?)$/i;

/** What stands between two limits of one size. */
const NEXT_LIMIT =
  /^\s?,?\s?(?:(?:and|but|nor|or)\s)?(?:(?:no|not|nor)\s)?(?:(?:more|less|greater|fewer|longer|shorter|thicker|thinner|wider|higher|lower) than|at most|at least|over|under|exceeding)\s$/i;

/** Puts ranges together, and gives a bare number the unit of the one it is listed with. */
export function joined(text: string, found: readonly Found[]): readonly Found[] {
  const result: Found[] = [];
  for (let at = 0; at < found.length; at++) {
    let one = found[at];
    if (one === undefined) continue;
    const next = found[at + 1];
    if (next !== undefined && one.number.choices === undefined && !(one.unknownUnit || next.unknownUnit)) {
      const joint = text.slice(one.end, next.start);
      const before = text.slice(Math.max(0, one.start - 24), one.start);
      const isBetween = /\bbetween\s+(?:\w+\s+)?$/i.test(before) && BETWEEN.test(joint);
      // "(10 mm and 16 mm)" beside a range is the same range.
      const last = result.at(-1);
      const isTwin =
        last?.upper !== undefined &&
        /^\s*[([]\s*$/.test(text.slice(last.end, one.start)) &&
        /^\s?and\s?$/i.test(joint) &&
        /^\s*[)\]]/.test(text.slice(next.end));
      const fits = one.units.length === 0 || shares(one, next);
      if ((RANGE.test(joint) || isBetween || isTwin) && next.units.length > 0 && fits && !next.number.tolerance) {
        one = { ...next, start: one.start, number: one.number, upper: next.number, attributive: next.attributive };
        at++;
      } else if (isBareRange(text, one, next)) {
        one = { ...next, start: one.start, number: one.number, upper: next.number };
        at++;
      } else if (isBothWays(text, one, next)) {
        one = { ...one, end: next.end, number: { ...one.number, tolerance: true } };
        at++;
      } else if (
        next.number.tolerance &&
        /^\s?,?\s?$/.test(joint) &&
        one.units.length > 0 &&
        (next.units.length === 0 || shares(one, next))
      ) {
        one = spread(one, next);
        at++;
      } else if (one.units.length === 0) {
        const list = listed(text, found, at);
        if (list !== undefined) {
          one = list.found;
          at = list.last;
        }
      }
    }
    result.push(withOther(text, one, result.at(-1), found[at + 1]));
  }
  return result;
}

/** "At least 6 and no more than 8 inches", "2 coats, no more than 4": one unit for both limits. */
function withOther(text: string, one: Found, previous: Found | undefined, next: Found | undefined): Found {
  if (one.units.length > 0 || one.unknownUnit || one.number.choices !== undefined) return one;
  const isBefore = next !== undefined && next.units.length > 0 && NEXT_LIMIT.test(text.slice(one.end, next.start));
  const isBehind =
    previous !== undefined &&
    previous.units.length > 0 &&
    NEXT_LIMIT.test(text.slice(previous.end, one.start)) &&
    /^[\s,.;)]*$|^\s?[,;)]/.test(text.slice(one.end));
  const other = isBefore ? next : isBehind ? previous : undefined;
  return other === undefined ? one : { ...one, units: other.units, unitText: other.unitText };
}

/** "Shore A 20 to 40": a range of what has no unit. */
function isBareRange(text: string, one: Found, next: Found): boolean {
  return (
    one.units.length === 0 &&
    next.units.length === 0 &&
    RANGE.test(text.slice(one.end, next.start)) &&
    GRADED.test(text.slice(Math.max(0, one.start - 60), one.start))
  );
}

/** "Plus 25 percent and minus 25 percent": the same to both sides. */
function isBothWays(text: string, one: Found, next: Found): boolean {
  return (
    /\bplus\s*$/i.test(text.slice(Math.max(0, one.start - 6), one.start)) &&
    /^\s?(?:,|and|, and|\/)\s?$/i.test(text.slice(one.end, next.start)) &&
    next.number.value === -one.number.value &&
    shares(one, next)
  );
}

function shares(one: Found, other: Found): boolean {
  return one.units.some(({ kind, system }) => other.units.some((unit) => unit.kind === kind && unit.system === system));
}

/** `12 mm plus or minus 3 mm` as the range it allows. */
function spread(one: Found, by: Found): Found {
  const unit = one.units[0];
  const other = by.units[0] ?? unit;
  const factor = unit === undefined || other === undefined ? 1 : other.toBase(1) / (unit.toBase(1) || 1);
  const step = by.number.value * factor;
  const end = (value: number): ReadNumber => ({ ...one.number, value, text: String(Number(value.toPrecision(6))) });
  return {
    ...one,
    end: by.end,
    nominal: one.number,
    number: end(one.number.value - step),
    upper: end(one.number.value + step),
  };
}

/** `5, 50, and 95 percent`: bare numbers up to the one that has the unit of all. */
function listed(
  text: string,
  found: readonly Found[],
  at: number,
): { readonly found: Found; readonly last: number } | undefined {
  const first = found[at];
  if (first === undefined) return undefined;
  const others: ReadNumber[] = [];
  let alternatives = false;
  for (let i = at + 1; i < Math.min(found.length, at + LONGEST_LIST); i++) {
    const next = found[i];
    const before = found[i - 1];
    if (next === undefined || before === undefined || !SHARED.test(text.slice(before.end, next.start)))
      return undefined;
    alternatives ||= /\bor\b|\//i.test(text.slice(before.end, next.start));
    others.push(next.number);
    if (next.units.length > 0)
      return { found: { ...next, start: first.start, number: first.number, others, alternatives }, last: i };
    if (next.unknownUnit) return undefined;
  }
  return undefined;
}
