/** What a section states: its sentences, and the rows of its tables as if they were sentences with a label. */
import { covered, cover } from './masks.js';
import { designationsIn } from './methods.js';
import type { Designation } from './methods.js';
import type { OutlineNode, Row } from './outline.js';
import { sliceProse } from './prose.js';
import type { Prose } from './prose.js';
import { sentencesOf } from './sentences.js';
import { defines } from './surroundings.js';
import type { Within } from './surroundings.js';
import { columnsOf } from './tables.js';
import { comparatorInWords } from './comparators.js';
import { unitsNamed } from './units.js';

export interface Statement {
  readonly node: OutlineNode;
  /** Titles above, outermost first. */
  readonly titles: readonly string[];
  readonly prose: Prose;
  /** The text with everything covered whose digits are no values. */
  readonly plain: string;
  readonly designations: readonly Designation[];
  /** The words before a colon that name what the rest is about, without brackets and comparators. */
  readonly label?: string;
  /** Where the text after the label begins. */
  readonly body: number;
  /** The paragraph or its article stands in a bracket that is still to be decided. */
  readonly isOpen: boolean;
  /** The text says what a word means, and asks for nothing. */
  readonly isDefinition: boolean;
  /** The text says what the section holds; only what it limits is asked for. */
  readonly isSummary: boolean;
}

const LABEL = /^[[\]\s]*([A-Za-z][^:;.]{2,120}?)\s*:\s+(?=\S)/;

/** A label without methods in parentheses and without `minimum`. */
export function cleanLabel(label: string): string {
  return label
    .replace(/\([^()]*\)?/g, ' ')
    .replace(/,?\s*\b(?:min(?:imum)?|max(?:imum)?)\b\.?,?/gi, ' ')
    .replace(/[[\]]/g, ' ')
    .replace(/\s+/g, ' ')
    .replace(/^[\s,]+|[\s,]+$/g, '');
}

function statement(node: OutlineNode, titles: readonly string[], prose: Prose, within: Within): Statement {
  const { text } = prose;
  const designations = designationsIn(text);
  let plain = covered(text);
  for (const { start, end } of designations) plain = cover(plain, start, end);
  // Points inside of designations and abbreviations do not end a label.
  const label = LABEL.exec(
    plain.replaceAll('.', (point, at: number) => (/[~\w]/.test(plain[at + 1] ?? '') ? '_' : point)),
  );
  // A colon inside of parentheses ends no label.
  const opened = label === null ? 0 : label[0].split('(').length - label[0].split(')').length;
  const body = label === null || opened > 0 ? 0 : label[0].length;
  let named = text.slice(0, body);
  for (const { start, end } of [...designations].reverse())
    if (end <= body) named = named.slice(0, start) + named.slice(end);
  const words = cleanLabel(named.replace(/:\s*$/, ''));
  return {
    node,
    titles,
    prose,
    plain,
    designations,
    body,
    isOpen: within.isOpen,
    isDefinition: within.isDefinition || defines(text),
    isSummary: within.isSummary,
    ...(words !== '' && { label: words }),
  };
}

/** The statements of a node of the outline. */
export function statementsOf(
  node: OutlineNode,
  titles: readonly string[],
  within: Within = { isOpen: node.optional, isDefinition: false, isSummary: false },
): readonly Statement[] {
  if (node.row !== undefined) return rowProses(node.row).map((prose) => statement(node, titles, prose, within));
  if (node.type !== 'paragraph') return [];
  return sentencesOf(node.prose).map(({ start, end }) =>
    statement(node, titles, sliceProse(node.prose, start, end), within),
  );
}

class Writer {
  text = '';
  offsets: number[] = [];
  /** Text of a cell, at its place. */
  cell(prose: Prose): void {
    this.text += prose.text;
    for (const offset of prose.offsets) this.offsets.push(offset);
  }
  /** Words of ours, at the place of what stands before them. */
  words(words: string): void {
    const at = this.offsets.at(-1) ?? 0;
    this.text += words;
    for (let i = 0; i < words.length; i++) this.offsets.push(at);
  }
}

/** A row as `Label, minimum (method): value unit`; one for each column that has a comparator of its own. */
function rowProses({ cells, head }: Row): readonly Prose[] {
  const columns = columnsOf(head, cells.length).map((column, at) => {
    const text = cells[at]?.text ?? '';
    if (column === 'value' && head === undefined) {
      if (designationsIn(text).length > 0 && !/\d/.test(maskDesignations(text))) return 'method';
      if (unitsNamed(text).length > 0) return 'unit';
    }
    return column;
  });
  const label = cells[columns.indexOf('label')];
  if (label === undefined || label.text === '') return [];
  const methods = cells.filter((cell, at) => columns[at] === 'method' && cell.text !== '');
  const unit = cells.find((cell, at) => columns[at] === 'unit' && cell.text !== '')?.text;
  const groups = new Map<string, { readonly cell: Prose; readonly unit: string | undefined }[]>();
  cells.forEach((cell, at) => {
    if (columns[at] !== 'value' || /^-*$|^n\/?a$/i.test(cell.text)) return;
    const words = head?.[at] ?? '';
    const key = comparatorInWords(words) ?? '';
    const headUnit = /\(([^()]+)\)|,\s*([^,]+)$/.exec(words);
    const named = headUnit?.[1] ?? headUnit?.[2];
    const own = named !== undefined && unitsNamed(named).length > 0 ? named : (unit ?? labelUnit(label.text));
    groups.set(key, [...(groups.get(key) ?? []), { cell, unit: own }]);
  });
  return [...groups].map(([compare, values]) => {
    const row = new Writer();
    row.cell(label);
    if (compare !== '') row.words(compare === 'atLeast' ? ', minimum' : ', maximum');
    for (const method of methods) {
      row.words(' (');
      row.cell(method);
      row.words(')');
    }
    row.words(':');
    for (const value of values) {
      row.words(' ');
      row.cell(value.cell);
      if (value.unit !== undefined && endsInNumber(value.cell.text)) row.words(` ${value.unit}`);
    }
    return { text: row.text, offsets: row.offsets };
  });
}

/** `| at least 200 | % |`: a number without a unit of its own, perhaps with `min.` behind it. */
function endsInNumber(text: string): boolean {
  return /(?:^|[\s<>=≤≥[\]-])\d[\d.,/]*(?:[- ]\d+\/\d+)?\s?(?:(?:min|max)\w*\.?)?$/iu.test(maskDesignations(text));
}

/** `Peel adhesion (lb/in)`: the unit may stand beside the name of the row. */
function labelUnit(text: string): string | undefined {
  const named = /\(([^()]+)\)\s*$|,\s*([^,]+)$/.exec(text);
  return [named?.[1], named?.[2]].find((unit) => unit !== undefined && unitsNamed(unit).length > 0);
}

function maskDesignations(text: string): string {
  let plain = text;
  for (const { start, end } of designationsIn(text)) plain = cover(plain, start, end);
  return plain;
}
