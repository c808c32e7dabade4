/** The comparison as a Markdown tree (mdast); the HTML page starts from it too. */
import type { ListItem, PhrasingContent, Root, RootContent } from 'mdast';
import type { Change, Comparison, Pair, Progress, Told } from '../../compare/types.js';
import {
  cell,
  code,
  heading,
  item,
  itemWith,
  joint,
  list,
  paragraph,
  strong,
  table,
  words,
} from '../markdown-parts.js';
import { CAUTION, plural, STAMP_NOTE } from '../report.js';
import { sourceText } from '../source-text.js';
import {
  asksNow,
  becauseWord,
  CAUSE_UNKNOWN,
  changePlaces,
  changeText,
  countsText,
  differencesText,
  gradeOf,
  isCauseUnknown,
  MOST_EXPLANATIONS,
  NO_DOCUMENTS,
  pairsOf,
  positionText,
  quietText,
  SECTIONS,
  type ComparisonReport,
} from './report.js';

/** Builds the tree; the same comparison gives the same tree. */
export function comparisonTree(report: ComparisonReport): Root {
  const { comparison } = report;
  return {
    type: 'root',
    children: [
      heading(1, joint('Comparison of two submissions')),
      ...opening(report),
      ...SECTIONS.flatMap(({ progress, title }): RootContent[] => {
        const pairs = pairsOf(comparison, progress);
        if (pairs.length === 0) return [];
        return [heading(2, joint(title)), ...pairs.flatMap((pair) => chapter(pair, report))];
      }),
      ...requirements(report),
      ...withoutEffect(report),
      heading(2, joint('Caution')),
      paragraph(joint(CAUTION)),
    ],
  };
}

const COUNTED: readonly Progress[] = ['corrected', 'still open', 'new', 'newly broken'];

function opening({ comparison, suggested }: ComparisonReport): RootContent[] {
  const { before, after, counts } = comparison;
  const rest = SECTIONS.map(({ progress }) => progress).filter((one) => !COUNTED.includes(one) && counts[one] > 0);
  return [
    paragraph(strong(`${countsText(comparison)}.`)),
    ...(suggested === undefined
      ? []
      : [
          paragraph(
            joint('Suggested action for the new submission: '),
            strong(suggested.action ?? 'none'),
            joint(` (${suggested.because}). ${STAMP_NOTE}`),
          ),
        ]),
    paragraph(joint('Before: '), code(before.name), joint('. Now: '), code(after.name), joint('.')),
    paragraph(joint(`${quietText(comparison)}.`)),
    paragraph(joint(CAUTION)),
    table([
      [cell(joint('What became of it')), cell(joint('Count'))],
      ...[...COUNTED, ...rest].map((one) => [cell(joint(capital(one))), cell(joint(String(counts[one])))]),
    ]),
  ];
}

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

function chapter(pair: Pair, { comparison, cautions, titles }: ComparisonReport): RootContent[] {
  const told = pair.after ?? pair.before;
  if (told === undefined) return [];
  const grade = gradeOf(told);
  const asks = asksNow(pair);
  const lines: ListItem[] = [
    ...places(pair),
    ...fact('What was checked', told.subject),
    item(strong('Check'), joint(': '), code(told.rule)),
    ...fact('Change', differencesText(pair)),
    ...fact('Required', told.required),
    ...fact('Provided', told.provided),
    ...fact('Missing', told.missing.join(', ')),
    ...fact('Source', sourcesOf(told)),
    ...(asks ? fact('Correct', told.correct) : []),
    ...(asks && told.kind === 'fail' ? fact('Caution', cautions.get(told.rule)) : []),
    ...because(pair, comparison),
  ];
  return [
    heading(3, words(told.detail), joint(` (${grade}): `), words(titles.get(told.rule) ?? told.rule)),
    paragraph(words(told.message)),
    list(lines),
  ];
}

function places({ before, after }: Pair): ListItem[] {
  const [was, is] = [before, after].map((told) => (told === undefined ? undefined : positionText(told.position())));
  return [
    ...(is === undefined ? [] : [item(strong('Place'), joint(': '), code(is))]),
    ...(was === undefined || was === is ? [] : [item(strong('Place before'), joint(': '), code(was))]),
  ];
}

function sourcesOf(told: Told): string {
  return told.sources.map(sourceText).join('; ');
}

function fact(name: string, text: string | undefined): ListItem[] {
  return text === undefined || text === '' ? [] : [item(strong(name), joint(': '), words(text))];
}

function because(pair: Pair, comparison: Comparison): ListItem[] {
  const shown = pair.explanations.slice(0, MOST_EXPLANATIONS);
  if (shown.length === 0) return isCauseUnknown(pair, comparison) ? fact('Cause', CAUSE_UNKNOWN) : [];
  const rest = pair.explanations.length - shown.length;
  const items = shown.map(({ change }) => item(...changeWords(change)));
  if (rest > 0) items.push(item(joint(`and ${plural(rest, 'other change')}`)));
  return [itemWith([strong(capital(becauseWord(pair))), joint(':')], list(items))];
}

function changeWords(change: Change): PhrasingContent[] {
  return [words(changeText(change)), joint(' ('), code(changePlaces(change)), joint(')')];
}

function requirements({ comparison }: ComparisonReport): RootContent[] {
  if (comparison.requirements.length === 0) return [];
  const head = ['Source', 'Kind and how known', 'Change', 'Findings before', 'Findings now', 'Details'].map((name) =>
    cell(joint(name)),
  );
  const rows = comparison.requirements.map(({ source, status, before, after, details }) =>
    [
      source.citation,
      `${source.basis}; ${source.provenance}`,
      status,
      String(before),
      String(after),
      details.join(', '),
    ].map((text) => cell(words(text))),
  );
  return [heading(2, joint('Findings by source')), table([head, ...rows])];
}

function withoutEffect({ comparison }: ComparisonReport): RootContent[] {
  const title = heading(2, joint('Changed without effect on any check'));
  if (comparison.changes === undefined) return [title, paragraph(joint(NO_DOCUMENTS))];
  const items = comparison.withoutEffect.map((change) => item(...changeWords(change)));
  return items.length === 0 ? [] : [title, list(items)];
}
