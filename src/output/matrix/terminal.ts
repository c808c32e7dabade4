/** The compliance matrix for a terminal: a table that fits the width, then what a person has to look at. */
import type { PhrasingContent } from 'mdast';
import { verdict, type MatrixRow } from '../../matrix/rows.js';
import { themeFor, type Theme } from '../color.js';
import { oneLine } from '../escape.js';
import { placeOfLocus, placeOfResult, placeText } from '../place.js';
import { CAUTION, type Review } from '../report.js';
import { padTo, textWidth, wrap } from '../text-width.js';
import { openingWords, paragraphName, providedWords, requirementWords } from './tree.js';

const LEAST_CELLS = 60;
const MOST_CELLS = 140;
const MOST_PARAGRAPH_CELLS = 16;
const GAP = '  ';
const HEAD = ['Paragraph', 'Requirement', 'Provided', 'Result'] as const;

interface Page {
  readonly cells: number;
  readonly theme: Theme;
}

/** What a part of the tree says, without its marks. */
function plain(parts: readonly PhrasingContent[]): string {
  return parts.map((part) => ('value' in part ? part.value : 'children' in part ? plain(part.children) : '')).join('');
}

/**
 * @param options.columns width of the stream; 80 when not known
 * @returns lines, each ended by a line break; everything from documents is made harmless first
 */
export function printMatrixTerminal(
  rows: readonly MatrixRow[],
  review: Review,
  options: { readonly color: boolean; readonly columns?: number },
): string {
  const page: Page = {
    cells: Math.max(LEAST_CELLS, Math.min(MOST_CELLS, options.columns ?? 80)),
    theme: themeFor(options.color),
  };
  const faulty = rows.filter((row) => (row.kind === 'fail' && !row.accepted) || row.kind === 'open');
  const looked = rows.filter((row) => row.kind === 'review');
  const blocks = [
    wrap(openingWords(rows, review), page.cells),
    ...(rows.length === 0 ? [] : [table(page, rows)]),
    ...(faulty.length === 0 ? [] : [placesList(page, faulty, rows)]),
    ...(looked.length === 0 ? [] : [reviewerList(page, looked)]),
    wrap(CAUTION, page.cells),
  ];
  return `${blocks.map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

/** Paragraph and result as wide as they need; requirement and what is provided share the rest. */
function table(page: Page, rows: readonly MatrixRow[]): string[] {
  const told = rows.map((row): readonly string[] => [
    oneLine(paragraphName(row, rows)),
    oneLine(plain(requirementWords(row))),
    oneLine(plain(providedWords(row, 'without'))),
    verdict(row),
  ]);
  const widest = (column: number): number =>
    Math.max(...[HEAD, ...told].map((cells) => textWidth(cells[column] ?? '')));
  const paragraph = Math.min(MOST_PARAGRAPH_CELLS, widest(0));
  const rest = page.cells - paragraph - widest(3) - 3 * GAP.length;
  const requirement = Math.min(widest(1), Math.floor(rest / 2));
  const provided = Math.min(widest(2), rest - requirement);
  const widths = [paragraph, requirement, provided, widest(3)];
  const line = (cells: readonly string[]): string[] => {
    const wrapped = cells.map((text, i) => wrap(text, widths[i] ?? 1));
    const height = Math.max(...wrapped.map((lines) => lines.length));
    return Array.from({ length: height }, (_, k) =>
      wrapped
        .map((lines, i) => padTo(lines[k] ?? '', widths[i] ?? 0))
        .join(GAP)
        .trimEnd(),
    );
  };
  return [
    ...line(HEAD).map(page.theme.title),
    ...told.flatMap((cells, i) => {
      const lines = line(cells);
      const row = rows[i];
      if (row?.kind !== 'fail' || row.accepted) return lines;
      // The result stands last on the first line, so it can be painted after the widths are settled.
      return lines.map((text, k) => (k === 0 ? painted(text, verdict(row), page.theme) : text));
    }),
  ];
}

function painted(line: string, end: string, theme: Theme): string {
  return line.endsWith(end) ? line.slice(0, -end.length) + theme.level.error(end) : line;
}

/** Where the answers stand that do not comply or leave a question; a place stays whole, so that a terminal can open it. */
function placesList(page: Page, rows: readonly MatrixRow[], all: readonly MatrixRow[]): string[] {
  return [
    page.theme.title('To correct or to answer'),
    ...rows.flatMap((row) =>
      row.answers
        .filter((answer) => answer.result.kind === row.kind)
        .flatMap(({ documentId, result }) => {
          const place = placeText(placeOfResult(result));
          const name = oneLine(`${paragraphName(row, all)}, ${documentId}:`);
          return textWidth(name) + place.length + 3 <= page.cells
            ? [`  ${name} ${page.theme.quiet(place)}`]
            : [...wrap(name, page.cells - 2).map((text) => `  ${text}`), page.theme.quiet(`    ${place}`)];
        }),
    ),
  ];
}

/** What is asked in the words of the section, and why no check answers it. */
function reviewerList(page: Page, rows: readonly MatrixRow[]): string[] {
  return [
    page.theme.title('For the reviewer'),
    ...rows.flatMap((row) => {
      const why = row.unheld ?? row.answers[0]?.result.message ?? '';
      const name = row.paragraph === '' ? '' : `${row.paragraph}: `;
      return [
        ...wrap(oneLine(`${name}${row.text ?? row.words}`), page.cells - 4).map(
          (text, i) => (i === 0 ? '  ' : '    ') + text,
        ),
        ...wrap(oneLine(why), page.cells - 4).map((text) => `    ${text}`),
        page.theme.quiet(`    ${placeText(placeOfLocus(row.at))}`),
      ];
    }),
  ];
}
