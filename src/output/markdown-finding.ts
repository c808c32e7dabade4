/** The findings of each detail as Markdown: what is wrong, required, provided, source, place, how to correct. */
import type { InlineCode, ListItem, RootContent } from 'mdast';
import type { Locus } from '../reading/types.js';
import type { Result } from '../engine/result.js';
import { commentsOf, type Comment } from './comments.js';
import type { DetailResults } from './grouping.js';
import { code, heading, item, itemWith, joint, list, paragraph, strong, words } from './markdown-parts.js';
import { placeOfLocus, placeOfResult } from './place.js';
import type { RuleCard } from './report.js';
import { shortSourceLabels } from './source-text.js';

const LEVEL_NAME = { error: 'Error', warning: 'Warning', note: 'Note', none: 'None' } as const;
const SOURCE_NAME = { source: 'Source', also: 'Also asked by' } as const;

/** A chapter for each detail with findings, or one sentence when there are none. */
export function detailFindings(groups: readonly DetailResults[], rules: readonly RuleCard[]): RootContent[] {
  const cards = new Map(rules.map((rule) => [rule.id, rule]));
  const withFindings = groups.filter((group) => group.findings.length > 0);
  if (withFindings.length === 0) return [heading(2, joint('Findings')), paragraph(joint('None.'))];
  return withFindings.flatMap((group) => [
    heading(
      2,
      ...[group.detail.id, group.detail.title ?? '']
        .filter(Boolean)
        .flatMap((name, index) => [...(index === 0 ? [] : [joint(' ')]), words(name)]),
    ),
    ...commentsOf([group]).flatMap((comment) => finding(comment, cards)),
  ]);
}

function finding({ lead, same, also, number }: Comment, cards: ReadonlyMap<string, RuleCard>): RootContent[] {
  const flow = [lead, ...also].find((r) => (r.flow ?? []).length > 0)?.flow ?? [];
  const card = cards.get(lead.ruleId);
  const lines: ListItem[] = [
    item(strong('Place'), joint(': '), placeCode(lead)),
    item(strong('Check'), joint(': '), code(lead.ruleId)),
    ...fact('Required', lead.required),
    ...fact('Provided', lead.provided),
    ...shortSourceLabels(lead.sources ?? []).flatMap(({ label, text }) => fact(SOURCE_NAME[label], text)),
    ...fact('Correct', lead.correct),
    ...steps('Path', flow, true),
    ...steps('See', lead.related ?? [], false),
    ...told('The same', same),
    ...told('Also', also),
    ...notesOf(lead),
    ...fact('Caution', card?.caution),
  ];
  return [
    heading(3, joint(`${String(number)}. ${LEVEL_NAME[lead.level]}: `), words(card?.title ?? lead.ruleId)),
    paragraph(words(lead.message)),
    list(lines),
  ];
}

const placeCode = (result: Result): InlineCode => {
  const place = placeOfResult(result);
  return code(`${place.uri}:${String(place.line)}`);
};

/** The other findings of a comment, each with all that it says for itself. */
function told(name: string, results: readonly Result[]): ListItem[] {
  if (results.length === 0) return [];
  const items = results.map((r) => {
    const sources = shortSourceLabels(r.sources ?? []).map(({ text }) => text);
    const facts = [
      r.required === undefined ? '' : ` Required: ${r.required}.`,
      r.provided === undefined ? '' : ` Provided: ${r.provided}.`,
      sources.length === 0 ? '' : ` Source: ${sources.join('; ')}.`,
      r.correct === undefined ? '' : ` Correct: ${r.correct}`,
    ];
    const seen = (r.related ?? []).map((one) => one.message.replace(/[.]$/, '')).join('; ');
    const more = [seen === '' ? '' : ` See: ${seen}.`, ...(r.notes ?? []).map((one) => ` ${one}`)];
    return item(
      strong(LEVEL_NAME[r.level]),
      joint(': '),
      words(r.message),
      // For the same thing at the other side, its place and its words are all that differs.
      ...(name === 'Also' ? [joint(' '), words([...facts, ...more].join('').trim())] : []),
      joint(' ('),
      placeCode(r),
      joint(', '),
      code(r.ruleId),
      joint(')'),
    );
  });
  return [itemWith([strong(name), joint(':')], list(items))];
}

function fact(name: string, text: string | undefined): ListItem[] {
  return text === undefined || text === '' ? [] : [item(strong(name), joint(': '), words(text))];
}

function notesOf({ notes = [] }: Result): ListItem[] {
  if (notes.length === 0) return [];
  return [itemWith([strong('Notes'), joint(':')], list(notes.map((note) => item(words(note)))))];
}

function steps(name: string, places: readonly { message: string; at: Locus }[], ordered: boolean): ListItem[] {
  if (places.length === 0) return [];
  const items = places.map(({ message, at }) => {
    const place = placeOfLocus(at);
    return item(words(message), joint(' ('), code(`${place.uri}:${String(place.line)}`), joint(')'));
  });
  return [itemWith([strong(name), joint(':')], list(items, ordered))];
}
