/** Which of the parser's complaints to tell, and where the thing it complains about began. */

/** The lexer's word for "the next lexeme is a scalar without quotes". */
export const SCALAR_FOLLOWS = '\x1f';
/** Start of a document and end of a broken flow collection have a lexeme but no text. */
const WITHOUT_TEXT: ReadonlySet<string> = new Set([SCALAR_FOLLOWS, '\x02', '\x18']);

/** A complaint of the parser; `pos` in offsets of the text. */
export interface Fault {
  readonly code: string;
  readonly message: string;
  readonly pos: readonly [number, number];
}

/** The first fault in the text; of several at one place the one that names the cause. The others follow from it. */
export function firstFault<F extends Fault>(faults: readonly F[]): F | undefined {
  const rank = ({ code }: F): number => (code === 'MULTILINE_IMPLICIT_KEY' ? 0 : 1);
  return [...faults].sort((a, b) => a.pos[0] - b.pos[0] || rank(a) - rank(b))[0];
}

/**
 * For a bracket or quote that is never closed: where it was opened. The parser says only where it missed the end.
 *
 * @param lexemes of the text from its beginning
 * @returns offset of the bracket or quote; undefined for faults of other kinds
 */
export function openedAt(lexemes: Iterable<string>, fault: Fault): number | undefined {
  const isBracket = / end with a [\]}]$/.test(fault.message);
  if (!isBracket && !/^Missing closing ["']quote$/.test(fault.message)) return undefined;
  const brackets: number[] = [];
  let quoted: number | undefined;
  let offset = 0;
  let isScalarText = false;
  for (const lexeme of lexemes) {
    if (offset >= fault.pos[0]) break;
    if (!isScalarText) {
      if (lexeme.startsWith('"') || lexeme.startsWith("'")) quoted = offset;
      else if (lexeme === '[' || lexeme === '{') brackets.push(offset);
      else if (lexeme === ']' || lexeme === '}') brackets.pop();
    }
    isScalarText = lexeme === SCALAR_FOLLOWS;
    if (!WITHOUT_TEXT.has(lexeme)) offset += lexeme.length;
  }
  return isBracket ? brackets.at(-1) : quoted;
}
