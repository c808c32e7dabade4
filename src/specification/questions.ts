/** What in a statement has to be asked: everything that can be read in more than one way, or in none. */
import { measuredBy, measuredIn, methodFits } from './methods.js';
import type { Measured } from './methods.js';
import { placed } from './placing.js';
import type { Statement } from './statements.js';
import type { Question } from './types.js';

const OPEN =
  /\](?:\s*)\[|\[\s*_{2,}\s*\]|\[[^\]]*$|^[^[]*\]|\[(?!\.+\])[^[\]]{2,}\]|<\s*(?:insert|enter|specify|fill in)\b[^<>]{0,80}>/i;
const SHOWN = 140;
/** A stretch as a message shows it: without the point it ends with, and with its bracket closed. */
export function shownText(text: string, start: number, end: number): string {
  const words = text.slice(start, end).replace(/[\s.,;(]+$/, '');
  return words.includes('(') && !words.includes(')') ? `${words})` : words;
}

function short(text: string): string {
  return text.length <= SHOWN ? text : `${text.slice(0, SHOWN - 3)}...`;
}

/** Questions that concern the statement as a whole: brackets, methods, characters that got lost. */
export function questionsAbout(statement: Statement): readonly Question[] {
  const { prose, node, label } = statement;
  const { text } = prose;
  const found: Question[] = [];
  const bracket = OPEN.exec(text);
  if (bracket !== null || node.optional) {
    const isBlank = bracket?.[0].startsWith('<') === true && !node.optional;
    const start = isBlank
      ? bracket.index
      : bracket === null
        ? 0
        : text.indexOf('[', Math.max(0, bracket.index - 1)) === -1
          ? 0
          : text.indexOf('[');
    const end = isBlank
      ? start + bracket[0].length
      : node.optional
        ? text.length
        : Math.max(text.lastIndexOf(']') + 1, start + 1);
    found.push({
      kind: 'choice left open',
      ...placed(statement, start, end),
      read: `Text in brackets has still to be chosen, filled in or taken out: "${short(text.slice(start, end))}".`,
      ask: 'Which of it applies to this project?',
      values: [],
      ...(label !== undefined && { label }),
    });
  }
  found.push(...methodQuestions(statement));
  const lost = /\ufffd|(?<=\s)\?(?=\d)|(?<=\d)\?(?=[CF]\b)/.exec(text);
  if (lost !== null) {
    found.push({
      kind: 'lost sign',
      ...placed(statement, lost.index, lost.index + 1),
      read: `A character got lost: "${short(text.slice(Math.max(0, lost.index - 20), lost.index + 20))}".`,
      ask: 'Which sign stands there in the original?',
      values: [],
    });
  }
  return found;
}

function methodQuestions(statement: Statement): readonly Question[] {
  const { prose, label, designations, titles } = statement;
  const found: Question[] = [];
  const own: readonly Measured[] = measuredIn(label ?? prose.text);
  const wider = own.length > 0 ? own : measuredIn(prose.text);
  const above = [...titles]
    .reverse()
    .map((title) => measuredIn(title))
    .find((kinds) => kinds.length > 0);
  const spokenOf = wider.length > 0 ? wider : (above ?? []);
  for (const { start, end, text, key } of designations) {
    if (methodFits(key, spokenOf)) continue;
    found.push({
      kind: 'method and property differ',
      ...placed(statement, start, end),
      read: `${text} is known to measure ${(measuredBy(key) ?? []).join(' and ')} (from memory, confirm); the text speaks of ${spokenOf.join(' and ')}.`,
      ask: 'Is the method the right one for this property?',
      values: [],
      ...(label !== undefined && { label }),
    });
  }
  return found;
}
