/** What every printer of a comparison receives, and the words they share. */
import {
  PROGRESS,
  type Change,
  type Comparison,
  type Difference,
  type Pair,
  type Position,
} from '../../compare/types.js';
import { standingOf } from '../../compare/progress.js';
import type { Progress, RequirementChange, Told } from '../../compare/types.js';
import type { Kind } from '../../engine/result.js';
import { plural } from '../report.js';
import { sourceText } from '../source-text.js';

export interface ComparisonReport {
  readonly toolVersion: string;
  readonly comparison: Comparison;
  /** Of the new submission; `undefined` action: none is suggested. Absent when the new side is a SARIF file. */
  readonly suggested?: { readonly action: string | undefined; readonly because: string };
  /** By rule id. */
  readonly cautions: ReadonlyMap<string, string>;
  /** Titles by rule id; a rule that is not listed is called by its id. */
  readonly titles: ReadonlyMap<string, string>;
  readonly exitCode: number;
}

/** In the order a reviewer reads them: what is new or changed, then what is known already. */
export const SECTIONS: readonly { readonly progress: Progress; readonly title: string }[] = [
  { progress: 'newly broken', title: 'Newly broken: passed before, fails now' },
  { progress: 'new', title: 'New findings' },
  { progress: 'answered, and fails', title: 'Answered, and fails' },
  { progress: 'no longer accepted', title: 'No longer accepted' },
  { progress: 'newly open', title: 'Newly open: cannot be settled from the documents now' },
  { progress: 'corrected', title: 'Corrected' },
  { progress: 'answered', title: 'Answered' },
  { progress: 'accepted', title: 'Accepted as deviations' },
  { progress: 'no longer checked', title: 'No longer checked' },
  { progress: 'still open', title: 'Still open' },
];

/** Always told, so that a nought can be read; the others only when there are any. */
const HEADLINE: readonly Progress[] = ['corrected', 'still open', 'new', 'newly broken'];

/** `3 corrected, 1 still open, 0 new, 1 newly broken; 2 answered`. */
export function countsText({ counts }: Comparison): string {
  const told = (one: Progress): string => `${String(counts[one])} ${one}`;
  const rest = PROGRESS.filter((one) => one !== 'unchanged' && !HEADLINE.includes(one) && counts[one] > 0);
  return [HEADLINE.map(told).join(', '), ...rest.map(told)].join('; ');
}

/** Those that say something else than before come first. */
export function pairsOf({ pairs }: Comparison, progress: Progress): Pair[] {
  const found = pairs.filter((pair) => pair.progress === progress);
  return [...found.filter((one) => one.state !== 'unchanged'), ...found.filter((one) => one.state === 'unchanged')];
}

/** Checks that ask for nothing: how many came, went or give another value. */
export function quietText(comparison: Comparison): string {
  const quiet = pairsOf(comparison, 'unchanged');
  const count = (state: Pair['state']): number => quiet.filter((pair) => pair.state === state).length;
  return [
    `${plural(count('unchanged'), 'other check')} unchanged`,
    `${String(count('updated'))} with another value or limit`,
    `${String(count('new'))} made for the first time`,
    `${String(count('absent'))} not made any more`,
  ].join(', ');
}

const KIND_NAME: Readonly<Record<Kind, string>> = {
  pass: 'passes',
  fail: 'fails',
  open: 'cannot be checked',
  review: 'is for the reviewer to judge',
  notApplicable: 'does not apply',
  informational: 'is told for information',
};
const kindName = (kind: string | undefined): string =>
  kind !== undefined && Object.hasOwn(KIND_NAME, kind) ? KIND_NAME[kind as Kind] : (kind ?? '');

/** `2 in -> 4 in; required at least 6 in`. Empty when nothing is different. */
export function differencesText(pair: Pair): string {
  const { differences, after } = pair;
  const isOther = differences.some((one) => one.what === 'kind');
  const parts = differences.flatMap((one) => {
    // A check that comes out another way often rests on another clause: the source of the result tells it.
    if (one.what === 'source' && isOther) return [];
    const text = differenceText(one);
    return text === '' ? [] : [text];
  });
  const speaksOfValue = differences.some((one) => one.what === 'provided');
  const speaksOfLimit = differences.some((one) => one.what === 'required');
  if (speaksOfValue && !speaksOfLimit && after?.required !== undefined) parts.push(`required ${after.required}`);
  return parts.join('; ');
}

function differenceText({ what, before, after }: Difference): string {
  switch (what) {
    case 'kind':
      // Whoever reads of something corrected or broken knows this already.
      return before === 'fail' && after === 'open' ? `${kindName(before)} -> ${kindName(after)}` : '';
    case 'provided':
      if (before === undefined) return `now ${after ?? ''}`;
      return after === undefined ? `${before} before, not stated now` : `${before} -> ${after}`;
    case 'required':
      if (before === undefined) return `required ${after ?? ''}`;
      return after === undefined ? `required ${before} before, nothing now` : `required ${before} -> ${after}`;
    case 'level':
    case 'source':
      return before === undefined || after === undefined ? '' : `${what} ${before} -> ${after}`;
    case 'missing':
      return after === undefined ? '' : before === undefined ? `missing ${after}` : `missing ${before} -> ${after}`;
    case 'accepted':
      return after === undefined ? `was accepted: ${before ?? ''}` : `accepted: ${after}`;
    case 'message':
      return `before: ${before ?? ''}`;
  }
}

/** What stands before a result: its level, or what it is when nothing fails. */
export function gradeOf(told: Told): string {
  if (told.accepted !== undefined) return 'accepted';
  if (told.kind === 'fail') return told.level === 'none' ? 'note' : told.level;
  return { pass: 'pass', open: 'open', review: 'to judge', notApplicable: 'does not apply', informational: 'note' }[
    told.kind
  ];
}

/** Whether the reader still has to do something about it. */
export function asksNow({ after }: Pair): boolean {
  const standing = standingOf(after);
  return standing === 'finding' || standing === 'unsettled';
}

/** `details/w-1.yaml:12:4`. */
export function positionText({ uri, line, column }: Position): string {
  return `${uri}:${String(line)}:${String(column)}`;
}

/** Where a result stands now, and where it stood before when that is another place. */
export function placesText({ before, after }: Pair): string {
  const [was, is] = [before, after].map((told) => (told === undefined ? undefined : positionText(told.position())));
  if (was === undefined || was === is) return is ?? '';
  return is === undefined ? `was ${was}` : `${is}, was ${was}`;
}

/** `W-1 work/pan/ontoWall changed: 4 in -> 6 in`. */
export function changeText(change: Change): string {
  const { document, steps, before, after, kind } = change;
  const where = [document.id, steps.join('/')].filter(Boolean).join(' ');
  // A document without an id of its own goes by the name of its file, which tells what it is.
  const isFile = (after ?? before)?.position.uri === document.id;
  const name = document.kind === 'detail' || isFile ? where : `${document.kind} ${where}`;
  if (before !== undefined && after !== undefined) return `${name} ${kind}: ${before.text} -> ${after.text}`;
  return `${name} ${kind}: ${(after ?? before)?.text ?? ''}`;
}

/** Where a change stands: in the old submission, in the new one, or once when both are the same place. */
export function changePlaces({ before, after }: Change): string {
  const [was, is] = [before, after].map((side) => (side === undefined ? undefined : positionText(side.position)));
  if (was === undefined || was === is) return is ?? '';
  return is === undefined ? `was ${was}` : `${is}, was ${was}`;
}

export const MOST_EXPLANATIONS = 6;

/** Introduces the changes behind a result, honest about how sure the link is. */
export function becauseWord(pair: Pair): string {
  return pair.explanations[0]?.how === 'near' ? 'may be due to' : 'because';
}

/**
 * Said of a result that came out another way where no change of the documents is known to bear on it. A document that
 * cannot be read says itself what is wrong.
 */
export function isCauseUnknown(
  { state, progress, explanations, before, after }: Pair,
  { changes }: Comparison,
): boolean {
  const isOfDocument = (after ?? before)?.rule.startsWith('document/') ?? false;
  return (
    changes !== undefined &&
    state !== 'unchanged' &&
    progress !== 'unchanged' &&
    explanations.length === 0 &&
    !isOfDocument
  );
}

export const CAUSE_UNKNOWN = 'not known: no change was found in what this check reads';

export const NO_DOCUMENTS =
  'A SARIF file holds results, not documents; to see what changed in the documents, compare folders or revisions.';

/** `Section 07 27 26, 3.2.B.2 (specification; project document): no finding now; findings: 2 before, none now`. */
export function requirementText({ source, status, before, after }: RequirementChange): string {
  const count = (n: number): string => (n === 0 ? 'none' : String(n));
  return `${sourceText(source)}: ${status} (${count(before)} before, ${count(after)} now)`;
}
