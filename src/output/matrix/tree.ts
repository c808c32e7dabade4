/** The compliance matrix as a Markdown tree: a chapter of a report, or a page of its own. */
import type { PhrasingContent, Root, RootContent, TableCell } from 'mdast';
import { countVerdicts, verdict, type MatrixAnswer, type MatrixRow } from '../../matrix/rows.js';
import { cell, code, heading, joint, paragraph, strong, table, words } from '../markdown-parts.js';
import { placeOfLocus, placeOfResult } from '../place.js';
import { CAUTION, plural, type Review } from '../report.js';

/** How many details a row names before it counts the rest. */
const NAMED = 4;

/** What those answers provide that weigh as much as the row does, then how many others there are. */
export function providedWords(row: MatrixRow, places: 'with places' | 'without' = 'with places'): PhrasingContent[] {
  if (row.answers.length === 0) return [words(row.unheld ?? '')];
  const telling = row.answers.filter(
    (a) => a.result.kind === row.kind || (row.silent.length > 0 && row.kind === 'open'),
  );
  const parts = telling
    .slice(0, NAMED)
    .flatMap((answer, i): PhrasingContent[] => [...(i === 0 ? [] : [joint('; ')]), ...answerWords(answer, places)]);
  const rest = telling.length - NAMED;
  const others = row.answers.filter((a) => !telling.includes(a));
  const comply = others.every((a) => a.result.kind === 'pass') ? 'complying' : 'answered otherwise';
  return [
    ...parts,
    ...(rest > 0 ? [joint(`; and ${plural(rest, 'detail')} more`)] : []),
    ...row.silent.flatMap((id): PhrasingContent[] => [joint('; '), words(id), joint(': not shown')]),
    ...(others.length > 0 ? [joint(`; ${plural(others.length, 'other detail')} ${comply}`)] : []),
  ];
}

function answerWords({ documentId, result }: MatrixAnswer, places: 'with places' | 'without'): PhrasingContent[] {
  const place = placeOfResult(result);
  const said = result.provided ?? (result.kind === 'open' ? (result.missing ?? []).join(', ') : result.message);
  return [
    words(documentId),
    joint(': '),
    words(said),
    ...(places === 'without' ? [] : [joint(' ('), code(`${place.uri}:${String(place.line)}`), joint(')')]),
  ];
}

/** What is asked, by which method and when, and whether a person has confirmed it. */
export function requirementWords(row: MatrixRow): PhrasingContent[] {
  const { method, confirmed } = row;
  return [
    words(row.words),
    ...(method === undefined ? [] : [joint(', by '), words(method)]),
    ...(row.condition === undefined ? [] : [joint(' ('), words(row.condition), joint(')')]),
    ...(confirmed ? [] : [joint(' (not confirmed)')]),
  ];
}

const HEAD = ['Paragraph', 'Requirement', 'Result', 'Provided, and where'];

/** The paragraph of a row, with its section where the rows are of several. */
export function paragraphName(row: MatrixRow, rows: readonly MatrixRow[]): string {
  const isOfSeveral = rows.some((other) => other.section !== row.section);
  return isOfSeveral ? `${row.section}, ${row.paragraph}` : row.paragraph;
}

/** The table; one row for each requirement. */
export function matrixTable(rows: readonly MatrixRow[]): RootContent {
  return table([
    HEAD.map((name) => cell(joint(name))),
    ...rows.map((row): TableCell[] => [
      cell(words(paragraphName(row, rows))),
      cell(...requirementWords(row)),
      cell(row.kind === 'fail' && !row.accepted ? strong(verdict(row)) : joint(verdict(row))),
      cell(...providedWords(row)),
    ]),
  ]);
}

/** `10 requirements: 2 not complying, 8 complying.` */
export function matrixCounts(rows: readonly MatrixRow[]): string {
  return `${plural(rows.length, 'requirement')}: ${countVerdicts(rows)}.`;
}

/** What was held against what, in a sentence or two. */
export function openingWords(rows: readonly MatrixRow[], review: Review): string {
  const details = plural(review.details.length, 'detail');
  return rows.length === 0
    ? `No specification within reach of ${details} holds a requirement.`
    : `${matrixCounts(rows)} Held against ${details}.`;
}

/** A page of its own. */
export function matrixTree(rows: readonly MatrixRow[], review: Review): Root {
  const looked = rows.filter((row) => row.kind === 'review');
  return {
    type: 'root',
    children: [
      heading(1, joint('Compliance matrix')),
      paragraph(joint(openingWords(rows, review))),
      paragraph(joint(CAUTION)),
      ...(rows.length === 0 ? [] : [heading(2, joint('Requirements')), matrixTable(rows)]),
      ...(looked.length === 0 ? [] : [heading(2, joint('For the reviewer')), ...reviewerList(looked)]),
      heading(2, joint('Caution')),
      paragraph(joint(CAUTION)),
    ],
  };
}

/** What a person has to look at, with the words of the section and why no check answers it. */
function reviewerList(rows: readonly MatrixRow[]): RootContent[] {
  return [
    table([
      ['Paragraph', 'What is asked', 'Why a person has to look', 'Stands in'].map((name) => cell(joint(name))),
      ...rows.map((row) => {
        const place = placeOfLocus(row.at);
        return [
          cell(words(row.paragraph)),
          cell(words(row.text ?? row.words)),
          cell(words(row.unheld ?? row.answers[0]?.result.message ?? '')),
          cell(code(`${place.uri}:${String(place.line)}`)),
        ];
      }),
    ]),
  ];
}
