/** One comment in words, short for the transmittal and whole for the chapter of corrections. */
import type { Result } from '../../engine/result.js';
import type { Comment } from '../comments.js';
import { isUnsure } from '../source-text.js';
import { inTradeWords, subjectInWords } from './trade-words.js';

/** Follows what has to be looked up; the note at the end of the letter says why. */
const unsureMark = ({ sources = [] }: Result): string =>
  sources[0]?.basis === 'code' ? ' Confirm in the code.*' : ' Confirm in the source.*';

/** `left and right jamb of W`, `sill of W`; each subject once, and nothing that the title says already. */
function placeText({ lead, same }: Comment, title: string): string {
  const subjects = [...new Set([lead, ...same].flatMap((r) => r.subject ?? []))];
  const [first = '', second] = subjects;
  const isPair = subjects.length === 2 && first.replace('left', 'right') === second;
  const whole = isPair ? first.replace('left', 'left and right') : subjects.join(', ');
  const plain = subjectInWords(whole, lead).replace(/, at (?:least|most)$/, '');
  const [, what = plain, owner = ''] = /^(.*?) (?:of|at) (.*)$/s.exec(plain) ?? [];
  return title.toLowerCase().includes(what.toLowerCase()) ? owner : plain;
}

const withoutStop = (text: string): string => text.replace(/[.;]\s*$/, '');

/** What asks for it; physics asks for nothing that the sentence does not say. */
function citationOf(result: Result): string {
  const [source] = result.sources ?? [];
  if (source?.basis === 'physics') return '';
  return source === undefined || source.provenance === 'common practice, no source'
    ? 'common practice'
    : source.citation;
}

/** One line: what stands there and what is asked. */
export function shortText(comment: Comment, title: string): string {
  const { lead } = comment;
  const place = placeText(comment, title);
  const [sentence = ''] = inTradeWords(lead.message, lead).split(/(?<=[.;]) /);
  const told =
    lead.provided === undefined || lead.required === undefined
      ? withoutStop(sentence)
      : `${lead.provided}; required: ${lead.required}`;
  const isTold = told.toLowerCase().startsWith(place.toLowerCase());
  return `${title}${isTold ? '' : `, ${place}`}: ${told.replaceAll('"', '')}`;
}

/** `on the right`, or where else. */
function otherSide({ subject: first = '' }: Result, { subject = '' }: Result): string {
  for (const [one, other] of [
    ['left', 'right'],
    ['right', 'left'],
  ] as const)
    if (first.replace(one, other) === subject && first !== subject) return `on the ${other}`;
  return `at ${subject.replaceAll('"', '')}`;
}

/** What is wrong, by which paragraph, and what to do. */
export function wholeText(comment: Comment): string {
  const { lead, same, also } = comment;
  const message = inTradeWords(lead.message, lead);
  const citation = citationOf(lead);
  const others = same.map((r) => otherSide(lead, r)).join(', ');
  const correct = lead.correct === undefined ? '' : ` ${inTradeWords(lead.correct, lead)}`;
  // A correction of its own is told with the breach it belongs to.
  const more = also
    .filter((r) => r.ruleId !== 'deviation/undeclared')
    .map((r) => ` Also: ${inTradeWords(r.message, r)}`)
    .join('');
  const undeclared = also.some((r) => r.ruleId === 'deviation/undeclared') ? ' No deviation is declared.' : '';
  return [
    message,
    message.includes(citation) ? '' : ` (${citation}.)`,
    others === '' ? '' : ` The same ${others}.`,
    correct,
    more,
    undeclared,
    isUnsureOf(lead) ? unsureMark(lead) : '',
  ].join('');
}

export const isUnsureOf = ({ sources = [] }: Result): boolean => sources[0] !== undefined && isUnsure(sources[0]);
