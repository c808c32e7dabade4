/**
 * Numbers as the trade writes them: `5`, `1,000`, `0.375`, `3/8`, `5-1/2`, `5 1/2`, `1e-3`.
 *
 * Read character by character, each looked at a bounded number of times, so no text can make it slow.
 */

/** A number found in a text, and the index after it; or what is wrong with it. */
export type NumberRead = { readonly value: number; readonly end: number } | { readonly fault: string };

export function isDigit(character: string | undefined): boolean {
  return character !== undefined && character >= '0' && character <= '9';
}

/** Whether an unsigned number starts here: a digit, or a point with a digit after it. */
export function startsNumber(text: string, at: number): boolean {
  return isDigit(text[at]) || (text[at] === '.' && isDigit(text[at + 1]));
}

function skipDigits(text: string, at: number): number {
  while (isDigit(text[at])) at++;
  return at;
}

/** Index after the exponent that starts at `at`, or `at` when there is none. */
function skipExponent(text: string, at: number): number {
  if (text[at] !== 'e' && text[at] !== 'E') return at;
  const digits = text[at + 1] === '-' || text[at + 1] === '+' ? at + 2 : at + 1;
  return isDigit(text[digits]) ? skipDigits(text, digits) : at;
}

/** `3/8` at `at`: the fraction, or nothing when what stands there is not one. */
function readFraction(text: string, at: number): { over: number; under: number; end: number } | undefined {
  const stroke = skipDigits(text, at);
  if (stroke === at || text[stroke] !== '/' || !isDigit(text[stroke + 1])) return undefined;
  const end = skipDigits(text, stroke + 1);
  return { over: Number(text.slice(at, stroke)), under: Number(text.slice(stroke + 1, end)), end };
}

function finished(text: string, value: number, end: number): NumberRead {
  if (!Number.isFinite(value)) return { fault: 'the number is too large, or is divided by zero' };
  const next = text[end];
  if (next === ',') return { fault: 'a comma only separates thousands (1,000); write a decimal with a point' };
  if (next === '.' || next === '/') return { fault: 'the number has a stray point or stroke' };
  return { value, end };
}

/**
 * Reads the unsigned number that starts at `at`.
 *
 * A whole number joined by a hyphen (no spaces) or a space to a proper fraction is a mixed number: `5-1/2` is five
 * and a half. `0-1/2` could also be the range 0 to 1/2 and is refused.
 * @returns the value and the index after it, or the fault found
 */
export function readNumber(text: string, at: number): NumberRead {
  const alone = readFraction(text, at);
  if (alone !== undefined) return finished(text, alone.over / alone.under, alone.end);

  let end = skipDigits(text, at);
  let digits = text.slice(at, end);
  const plain = end > at;
  if (text[end] === ',' && plain) {
    if (digits.length > 3 || digits.startsWith('0')) return finished(text, 0, end);
    while (text[end] === ',' && skipDigits(text, end + 1) === end + 4) {
      digits += text.slice(end + 1, end + 4);
      end += 4;
    }
  }
  const whole = end;
  if (text[end] === '.' && isDigit(text[end + 1])) end = skipDigits(text, end + 1);
  end = skipExponent(text, end);
  if (end > whole) return finished(text, Number(digits + text.slice(whole, end)), end);

  const joint = text[whole];
  if (plain && (joint === '-' || joint === ' ')) {
    const part = readFraction(text, whole + 1);
    if (part !== undefined && part.over < part.under) {
      if (joint === '-' && Number(digits) === 0) {
        return {
          fault: 'this is either the fraction or a range from 0; write the fraction alone, or the range with "to"',
        };
      }
      return finished(text, Number(digits) + part.over / part.under, part.end);
    }
  }
  return finished(text, Number(digits), whole);
}
