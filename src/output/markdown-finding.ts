/** The findings of each detail as Markdown: what is wrong, required, provided, source, place, how to correct. */
import type { ListItem, RootContent } from 'mdast';
import type { Locus } from '../reading/types.js';
import type { Result } from '../engine/result.js';
import type { DetailResults } from './grouping.js';
import { code, heading, item, itemWith, joint, list, paragraph, strong, words } from './markdown-parts.js';
import { placeOfLocus, placeOfResult } from './place.js';
import type { RuleCard } from './report.js';
import { sourceLabels } from './source-text.js';

const LEVEL_NAME = { error: 'Error', warning: 'Warning', note: 'Note', none: 'None' } as const;
const SOURCE_NAME = { source: 'Source', also: 'Also asked by' } as const;

/** A chapter for each detail with findings, or one sentence when there are none. */
export function detailFindings(groups: readonly DetailResults[], rules: readonly RuleCard[]): RootContent[] {
  const cautions = new Map(rules.map((rule) => [rule.id, rule.caution]));
  const withFindings = groups.filter((group) => group.findings.length > 0);
  if (withFindings.length === 0) return [heading(2, joint('Findings')), paragraph(joint('None.'))];
  return withFindings.flatMap((group) => [
    heading(
      2,
      ...[group.detail.id, group.detail.title ?? '']
        .filter(Boolean)
        .flatMap((name, index) => [...(index === 0 ? [] : [joint(' ')]), words(name)]),
    ),
    ...group.findings.flatMap((result, index) => finding(result, index + 1, cautions.get(result.ruleId))),
  ]);
}

function finding(result: Result, number: number, caution: string | undefined): RootContent[] {
  const place = placeOfResult(result);
  const sources = sourceLabels(result.sources ?? []);
  const lines: ListItem[] = [
    item(strong('Place'), joint(': '), code(`${place.uri}:${String(place.line)}`)),
    ...fact('Required', result.required),
    ...fact('Provided', result.provided),
    ...sources.flatMap(({ label, text }) => fact(SOURCE_NAME[label], text)),
    ...fact('Correct', result.correct),
    ...steps('Path', result.flow ?? [], true),
    ...steps('See', result.related ?? [], false),
    ...notesOf(result),
    ...fact('Caution', caution),
  ];
  return [
    heading(3, joint(`${String(number)}. ${LEVEL_NAME[result.level]}: `), words(result.ruleId)),
    paragraph(words(result.message)),
    list(lines),
  ];
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
