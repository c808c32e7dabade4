/**
 * The ways a sealant's movement capability is written: `25 %`, `+/-25 %`, `class 25`, and with two sides,
 * `+100/-50 %` or `class 100/50` (extension first).
 */
import { problem } from './problems.js';
import type { QuantityProblem } from './types.js';

export interface Sides {
  readonly extension: number;
  readonly compression: number;
}

// Each part starts with a character the one before cannot take, so the match never backtracks far.
const TWO_SIDES = /^([+-]?)(\d+(?:\.\d+)?) ?%? ?\/ ?([+-]?)(\d+(?:\.\d+)?) ?%$/;

/**
 * Rewrites a movement in plain characters to a percentage that parse.ts reads, or takes its two sides.
 * @param plain the text without the words of a bound
 * @param text the text as the author wrote it, for messages
 * @returns the percentage as text, the two sides as shares of the joint width, or the problem found
 * @see ASTM C920: the class is the movement in percent of the joint width (from memory, confirm)
 */
export function readMovement(plain: string, text: string): string | Sides | QuantityProblem {
  const percent = /^class /i.test(plain) ? `${plain.slice('class '.length)} %` : plain;
  if (percent.startsWith('+/-')) return percent.slice('+/-'.length).trim();
  const found = TWO_SIDES.exec(percent);
  if (found === null) return percent;
  const [, firstSign = '', first = '', secondSign = '', second = ''] = found;
  const signs = firstSign + secondSign;
  if (signs !== '' && signs !== '+-' && signs !== '-+') {
    return problem('not a number', text, 'movement', 'the two sides need opposite signs; write +100/-50 %');
  }
  const [extension, compression] = signs === '-+' ? [second, first] : [first, second];
  return { extension: Number(extension) / 100, compression: Number(compression) / 100 };
}
