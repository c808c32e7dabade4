/**
 * The compliance matrix: a row for each requirement of the specification, with what the details of the review provide
 * for it. Nothing disappears: what no check can decide is a row for the reviewer.
 */
import { about, asks } from '../engine/requirement-words.js';
import type { HeldRequirement } from '../engine/requirements-of-run.js';
import type { Kind, Result } from '../engine/result.js';
import type { Condition, RequiredSubmittal } from '../model/types.js';
import type { Locus } from '../reading/types.js';

/** What one detail provides for a requirement: its weightiest result, and how many others stand behind it. */
export interface MatrixAnswer {
  readonly documentId: string;
  readonly result: Result;
  /** Results of this detail on the requirement, this one counted. */
  readonly count: number;
}
export interface MatrixRow {
  /** Where the specification asks it. */
  readonly at: Locus;
  /** False of what a reading of the text only proposed. */
  readonly confirmed: boolean;
  readonly method?: string;
  /** In the words of the section. */
  readonly text?: string;
  /** `07 27 26`; empty where the document gives none. */
  readonly section: string;
  /** `3.4.B.2`; empty where the document gives none. */
  readonly paragraph: string;
  /** `extension onto wall of opening flashing: at least 6 in`. */
  readonly words: string;
  /** `in zones 5, 6A; on steel framing`; absent when it applies everywhere. */
  readonly condition?: string;
  /** The weightiest kind among its answers; `review` where a person has to look. */
  readonly kind: Kind;
  /** Every breach of it is an accepted deviation. */
  readonly accepted: boolean;
  readonly answers: readonly MatrixAnswer[];
  /** Details that show what it is about and say nothing of it. */
  readonly silent: readonly string[];
  /** A document to be sent in: that it came says nothing of what stands in it. */
  readonly isDocument: boolean;
  /** Why no result depends on it, as a sentence. */
  readonly unheld?: string;
}

/** Heaviest first: what a reviewer must see before the rest. */
const WEIGHT: readonly Kind[] = ['fail', 'open', 'review', 'pass', 'informational', 'notApplicable'];
const weight = (result: Result): number =>
  // An accepted breach asks for nothing more than a passed check does.
  result.suppression === undefined ? WEIGHT.indexOf(result.kind) : WEIGHT.indexOf('pass') - 0.5;

/** The heaviest result of a list; the first of equals, so that a matrix does not depend on chance. */
function heaviest(results: readonly Result[]): Result | undefined {
  return results.reduce<Result | undefined>((a, b) => (a === undefined || weight(b) < weight(a) ? b : a), undefined);
}

function answersOf(results: readonly Result[]): MatrixAnswer[] {
  const byDetail = new Map<string, Result[]>();
  for (const result of results) {
    const known = byDetail.get(result.documentId);
    if (known === undefined) byDetail.set(result.documentId, [result]);
    else known.push(result);
  }
  return [...byDetail].flatMap(([documentId, of]) => {
    const result = heaviest(of);
    return result === undefined ? [] : [{ documentId, result, count: of.length }];
  });
}

function conditionWords(when: Condition): string {
  return [
    when.zones === undefined ? '' : `in ${when.zones.length === 1 ? 'zone' : 'zones'} ${when.zones.join(', ')}`,
    when.heightAboveMm === undefined ? '' : `on walls above ${when.heightAboveMm.text}`,
    when.heightUpToMm === undefined ? '' : `on walls up to ${when.heightUpToMm.text}`,
    when.framing === undefined ? '' : `on ${when.framing} framing`,
    when.family === undefined ? '' : `for ${when.family}`,
    when.mounting === undefined ? '' : `for ${when.mounting} units`,
  ]
    .filter((words) => words !== '')
    .join('; ');
}

type Cited = Pick<RequiredSubmittal, 'at' | 'confirmed' | 'citation' | 'paragraph' | 'text'>;

function rowOf(asked: Cited, words: string, results: readonly Result[]): Omit<MatrixRow, 'silent' | 'isDocument'> {
  const answers = answersOf(results);
  const worst = heaviest(answers.map((a) => a.result));
  return {
    at: asked.at,
    confirmed: asked.confirmed,
    ...(asked.text === undefined ? {} : { text: asked.text.value }),
    section: /^Section ([^,]*)/.exec(asked.citation)?.[1] ?? '',
    paragraph: asked.paragraph?.value ?? '',
    words,
    kind: worst?.kind ?? 'review',
    accepted: worst?.suppression !== undefined,
    answers,
  };
}

/** One requirement as a row. */
export function matrixRow({ requirement, results, silent, unheld }: HeldRequirement): MatrixRow {
  const what = about(requirement);
  const row = rowOf(requirement, what === undefined ? asks(requirement) : `${what}: ${asks(requirement)}`, results);
  return {
    ...row,
    silent,
    isDocument: false,
    // What some details provide does not answer for those that say nothing.
    ...(silent.length > 0 && row.kind === 'pass' ? { kind: 'open' as const } : {}),
    ...(requirement.method === undefined ? {} : { method: requirement.method.value }),
    ...(requirement.when === undefined ? {} : { condition: conditionWords(requirement.when) }),
    ...(unheld === undefined ? {} : { unheld }),
  };
}

const samePlace = (a: Locus, b: Locus): boolean =>
  a.document.file.uri === b.document.file.uri &&
  a.document.id === b.document.id &&
  a.path.join('/') === b.path.join('/');

/** Whether the thing was sent in, and whether product data came for each product that is used. */
const ITEM_RULES: ReadonlySet<string> = new Set(['submittal/required-items', 'submittal/product-data']);

/** Results on one thing to be submitted. */
export function resultsOn(asked: RequiredSubmittal, results: readonly Result[]): Result[] {
  const at = asked.paragraph?.at ?? asked.at;
  return results.filter(
    (r) => ITEM_RULES.has(r.ruleId) && r.sources?.some((s) => s.at !== undefined && samePlace(s.at, at)) === true,
  );
}

/** One thing to be submitted as a row, answered by the submittals under review. */
function itemRow(asked: RequiredSubmittal, results: readonly Result[]): MatrixRow {
  const answering = resultsOn(asked, results);
  const of = asked.of === undefined ? '' : ` (${asked.of.value})`;
  return {
    ...rowOf(asked, `submit ${asked.item.value}${of}`, answering),
    silent: [],
    isDocument: true,
    ...(answering.length > 0 ? {} : { unheld: 'No submittal under review answers it.' }),
  };
}

/** Paragraph numbers in the order of a section: 3.2 before 3.10, B before a deeper B.1. */
export function byParagraph(a: MatrixRow, b: MatrixRow): number {
  const text = (x: string, y: string): number => (x < y ? -1 : x > y ? 1 : 0);
  const [left, right] = [a.paragraph.split('.'), b.paragraph.split('.')];
  const bySection = text(a.section, b.section);
  if (bySection !== 0) return bySection;
  for (let i = 0; i < Math.max(left.length, right.length); i++) {
    const [x, y] = [left[i] ?? '', right[i] ?? ''];
    const both = /^\d+$/.test(x) && /^\d+$/.test(y);
    const step = both ? Number(x) - Number(y) : text(x, y);
    if (step !== 0) return step;
  }
  return 0;
}

export interface MatrixOf {
  readonly held: readonly HeldRequirement[];
  /** What the sections ask to be submitted. */
  readonly items: readonly RequiredSubmittal[];
  /** Of the whole run. */
  readonly results: readonly Result[];
}

/** The matrix of a run, by section and paragraph; rows of one paragraph stay in the order of the document. */
export function matrixOf({ held, items, results }: MatrixOf): MatrixRow[] {
  return [...items.map((item) => itemRow(item, results)), ...held.map(matrixRow)].sort(byParagraph);
}

/** What a row says in one or two words. */
export function verdict(row: MatrixRow): string {
  if (row.accepted) return 'deviation accepted';
  switch (row.kind) {
    case 'pass':
      return row.isDocument ? 'received; content for the reviewer' : 'complies';
    case 'fail':
      return 'does not comply';
    case 'open':
      return 'question';
    case 'review':
      return 'for the reviewer';
    case 'informational':
    case 'notApplicable':
      return 'not applicable';
  }
}

/** Heaviest first, each with how a number of rows says it. */
const VERDICTS = [
  ['does not comply', 'not complying'],
  ['question', 'in question'],
  ['for the reviewer', 'for the reviewer'],
  ['deviation accepted', 'with a deviation accepted'],
  ['received; content for the reviewer', 'received with their content for the reviewer'],
  ['complies', 'complying'],
  ['not applicable', 'not applicable'],
] as const;

/** `2 not complying, 8 complying`: the verdicts that occur. */
export function countVerdicts(rows: readonly MatrixRow[]): string {
  return VERDICTS.map(([name, words]) => ({ words, count: rows.filter((row) => verdict(row) === name).length }))
    .filter(({ count }) => count > 0)
    .map(({ words, count }) => `${count} ${words}`)
    .join(', ');
}
