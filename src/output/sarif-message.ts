/**
 * The text of a SARIF result. Viewers show the message and often nothing else, so what is required, provided and
 * cited is repeated there, and related places are linked from the text.
 *
 * @see SARIF 2.1.0 sections 3.11.5 (braces) and 3.11.6 (embedded links)
 */
import type { Result } from '../engine/result.js';
import { acceptanceText } from './grouping.js';
import { sourceLabels } from './source-text.js';

const SOURCE_NAME = { source: 'Source', also: 'Also asked by' } as const;

/**
 * First line: the rule's own message, whole. Then one line for each fact.
 *
 * @param caution of the rule, when it has one
 */
export function messageText(result: Result, caution?: string): string {
  const lines = [linked(result)];
  const fact = (name: string, text: string | undefined): void => {
    if (text !== undefined && text !== '') lines.push(`${name}: ${literal(text)}`);
  };
  fact('Required', result.required);
  fact('Provided', result.provided);
  fact('Missing', result.missing?.join(', '));
  for (const { label, text } of sourceLabels(result.sources ?? [])) fact(SOURCE_NAME[label], text);
  fact('Correct', result.correct);
  if (result.kind === 'fail') {
    fact('Notes', result.notes?.join(' '));
    fact('Caution', caution);
  }
  fact('Accepted', acceptanceText(result));
  return lines.join('\n');
}

/** The message with each related place linked: where its words occur, else in a sentence at the end. */
function linked(result: Result): string {
  const spots: { start: number; end: number; id: number }[] = [];
  const after: string[] = [];
  for (const [index, place] of (result.related ?? []).entries()) {
    const start = place.message === '' ? -1 : result.message.indexOf(place.message);
    const end = start + place.message.length;
    const taken = spots.some((spot) => start < spot.end && spot.start < end);
    if (start >= 0 && !taken) spots.push({ start, end, id: index + 1 });
    else after.push(link(place.message === '' ? `place ${String(index + 1)}` : place.message, index + 1));
  }
  let text = '';
  let from = 0;
  for (const { start, end, id } of spots.sort((a, b) => a.start - b.start)) {
    text += literal(result.message.slice(from, start)) + link(result.message.slice(start, end), id);
    from = end;
  }
  text += literal(result.message.slice(from));
  return after.length > 0 ? `${text} See ${after.join('; ')}.` : text;
}

function link(text: string, id: number): string {
  return `[${braces(text.replace(/[\r\n]+/g, ' ').replace(/[[\]\\]/g, '\\$&'))}](${String(id)})`;
}

/** Text that says what it says: what looks like a link in a document does not become one. */
export function literal(text: string): string {
  // Brackets are everywhere in paths (`openings[0]`); only those that could be read as a link are escaped.
  return braces(/\]\s*\(/.test(text) ? text.replace(/[[\]\\]/g, '\\$&') : text);
}

function braces(text: string): string {
  return text.replace(/[{}]/g, '$&$&');
}
