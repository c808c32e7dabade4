/**
 * A table of requirements in the Markdown text of a section: each row is a requirement of the paragraph the table
 * stands under, each value with the place of its cell.
 *
 * The header names the columns: `Requirement`, and `Property` or `Characteristic` or both, make it such a table;
 * `Paragraph`, `Subject`, `Product`, `Method` and `Text` may stand beside them, in any order.
 */
import { isProblem, parseQuantity } from '../quantity/parse.js';
import { quoted } from '../quantity/problems.js';
import { DIMENSIONS } from '../quantity/units.js';
import { nearest } from './nearest.js';
import { listed } from './schema-words.js';
import type { PlacedTable } from './section-outline.js';
import type { Path, ReadingProblem, SourceFile, Span } from './types.js';
import type { TableRow as RowNode } from 'mdast';

/** One row, as the YAML of a requirement would say it. */
export interface RequirementRow {
  readonly data: Readonly<Record<string, unknown>>;
  /** Where a path below the requirement stands: of a value its cell, of anything else the row. */
  readonly spanOf: (path: Path) => Span;
}

const COLUMNS = ['paragraph', 'subject', 'product', 'property', 'characteristic', 'requirement', 'method', 'text'];
/** Words of a fixed list, which a table may begin with a capital. */
const LISTED = new Set(['subject', 'property']);

interface Cell {
  readonly text: string;
  readonly span: Span;
}

/** The cells of a row; an empty one, or a dash, has no text. */
function cellsOf(row: RowNode, markdown: string): Cell[] {
  return row.children.map((cell) => {
    const start = cell.children[0]?.position?.start.offset ?? cell.position?.start.offset ?? 0;
    const end = cell.children.at(-1)?.position?.end.offset ?? start;
    const raw = markdown.slice(start, end);
    const inner = /^(\s*`?)(.*?)(`?\s*)$/s.exec(raw);
    const text = /^[-\u2013\u2014]?$/.test(inner?.[2] ?? '') ? '' : (inner?.[2] ?? '');
    const from = start + (inner?.[1]?.length ?? 0);
    return {
      text: text.replaceAll('\\|', '|'),
      span: { start: from, end: Math.max(from + (inner?.[2] ?? '').length, from) },
    };
  });
}

/** Where a row stands, for what has no cell of its own. */
function spanOfRow(row: RowNode): Span {
  return { start: row.position?.start.offset ?? 0, end: row.position?.end.offset ?? 0 };
}

/**
 * The rows of a table of requirements.
 *
 * @returns `undefined` when the header is not that of such a table
 */
export function requirementRows(
  { table, paragraph }: PlacedTable,
  file: SourceFile,
): { readonly rows: readonly RequirementRow[]; readonly problems: readonly ReadingProblem[] } | undefined {
  const [head, ...body] = table.children;
  if (head === undefined) return undefined;
  const headers = cellsOf(head, file.text);
  const names = headers.map(({ text }) => text.toLowerCase());
  if (!names.includes('requirement') || !(names.includes('property') || names.includes('characteristic')))
    return undefined;
  const problems: ReadingProblem[] = [];
  const report = (code: ReadingProblem['code'], span: Span, message: string): void => {
    problems.push({ code, message, file, span });
  };
  for (const [index, name] of names.entries()) {
    const span = headers[index]?.span ?? spanOfRow(head);
    const near = nearest(name, COLUMNS);
    if (!COLUMNS.includes(name))
      report(
        'unknown-field',
        span,
        `${quoted(headers[index]?.text ?? '')} is not a column of a table of requirements; ${near === undefined ? `columns are ${listed(COLUMNS, 'and')}.` : `did you mean ${quoted(near)}?`}`,
      );
    else if (names.indexOf(name) !== index)
      report('wrong-value', span, `The table has two columns ${quoted(name)}; keep one of them.`);
  }
  if (problems.length > 0) return { rows: [], problems };
  const rows = body.map((row): RequirementRow => {
    const cells = new Map(cellsOf(row, file.text).map((cell, index) => [names[index] ?? '', cell]));
    const data: Record<string, unknown> = { __proto__: null };
    const spans = new Map<string, Span>();
    const set = (key: string, value: unknown, span: Span): void => {
      data[key] = value;
      spans.set(key, span);
    };
    if (paragraph !== undefined) set('paragraph', paragraph.number, paragraph.span);
    for (const [name, { text, span }] of cells)
      if (text !== '' && name !== 'requirement') set(name, LISTED.has(name) ? text.toLowerCase() : text, span);
    const asked = cells.get('requirement');
    if (asked === undefined || asked.text === '')
      report(
        'missing-field',
        spanOfRow(row),
        'The row has no requirement; write one, such as "at least 6 in", or take the row out.',
      );
    else {
      const read = readRequirement(asked, data['property'] !== undefined, data['characteristic'] !== undefined);
      if ('fault' in read) report('wrong-value', asked.span, read.fault);
      else set(read.key, read.value, asked.span);
      if ('spans' in read) read.spans.forEach((span, index) => spans.set(`${read.key} ${index}`, span));
    }
    const whole = spanOfRow(row);
    return {
      data,
      spanOf: ([key, index]) =>
        key === undefined ? whole : (spans.get(`${key} ${index ?? ''}`) ?? spans.get(String(key)) ?? whole),
    };
  });
  return { rows, problems };
}

type Read =
  { readonly key: string; readonly value: unknown; readonly spans?: readonly Span[] } | { readonly fault: string };

/** Words of comparison before and behind a value. */
const BEFORE: readonly (readonly [RegExp, 'atLeast' | 'atMost' | 'equals'])[] = [
  [/^(?:at least|not less than|no less than|minimum(?: of)?|min\.?)\s+(?=\S)/i, 'atLeast'],
  [/^(?:at most|not more than|no more than|not to exceed|maximum(?: of)?|max\.?)\s+(?=\S)/i, 'atMost'],
  [/^exactly\s+(?=\S)/i, 'equals'],
];
const BEHIND: readonly (readonly [RegExp, 'atLeast' | 'atMost'])[] = [
  [/\s+(?:minimum|min\.?|or more)$/i, 'atLeast'],
  [/\s+(?:maximum|max\.?|or less)$/i, 'atMost'],
];

/** A count is a number; everything else stays as written, with its unit. */
const value = (text: string): string | number => (/^\d{1,6}$/.test(text) ? Number(text) : text);

/** `at least 6 in`, `12-15 mil`, `one of 3/8 in, 1/2 in`, or words. */
function readRequirement({ text, span }: Cell, hasProperty: boolean, hasCharacteristic: boolean): Read {
  if (!hasProperty && !hasCharacteristic) return { key: 'text', value: text };
  for (const [words, key] of BEFORE) {
    const found = words.exec(text);
    if (found) return { key, value: value(text.slice(found[0].length).trim()) };
  }
  for (const [words, key] of BEHIND) if (words.test(text)) return { key, value: value(text.replace(words, '')) };
  const list = /^one of:?\s+/i.exec(text);
  if (list) {
    const spans: Span[] = [];
    const values: (string | number)[] = [];
    let at = list[0].length;
    for (const part of text.slice(at).split(/(\s*,\s*(?:or\s+)?|\s+or\s+)/i)) {
      if (!/^(?:\s*,\s*(?:or\s+)?|\s+or\s+)$/i.test(part)) {
        values.push(value(part));
        spans.push({ start: span.start + at, end: span.start + at + part.length });
      }
      at += part.length;
    }
    return { key: 'oneOf', value: values, spans };
  }
  const quantities = DIMENSIONS.flatMap((dimension) => {
    const quantity = parseQuantity(text, dimension);
    return isProblem(quantity) ? [] : [quantity];
  });
  if (quantities.some(({ bound }) => bound === 'between')) return { key: 'equals', value: text };
  if (quantities.length === 0 && !/^\d+$/.test(text) && hasCharacteristic) return { key: 'equals', value: text };
  return {
    fault: `${quoted(text)} does not say how a value compares with it; write ${listed([`at least ${text}`, `at most ${text}`, `exactly ${text}`].map(quoted))}.`,
  };
}
