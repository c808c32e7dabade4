/** How a result stands compared with its predecessor: the state that SARIF knows, and what a reviewer calls it. */
import { saysTheSame, translated, type Renames } from './names.js';
import type { BaselineState, Difference, Progress, Told } from './types.js';

/** What a result asks of its reader. */
export type Standing = 'finding' | 'unsettled' | 'accepted' | 'pass' | 'nothing';

/** `nothing` where there is no result, and for one that only informs. */
export function standingOf(told: Told | undefined): Standing {
  if (told === undefined) return 'nothing';
  if (told.accepted !== undefined) return 'accepted';
  if (told.kind === 'pass') return 'pass';
  if (told.kind === 'fail') return told.level === 'none' ? 'nothing' : 'finding';
  return told.kind === 'open' || told.kind === 'review' ? 'unsettled' : 'nothing';
}

/** From the standing before to the standing now. `gone`: decided by whether the thing is still checked. */
const BECAME: Readonly<Record<Standing, Readonly<Record<Standing, Progress | 'gone'>>>> = {
  finding: {
    finding: 'still open',
    unsettled: 'still open',
    accepted: 'accepted',
    pass: 'corrected',
    nothing: 'gone',
  },
  unsettled: {
    finding: 'answered, and fails',
    unsettled: 'still open',
    accepted: 'accepted',
    pass: 'answered',
    nothing: 'gone',
  },
  accepted: {
    finding: 'no longer accepted',
    unsettled: 'newly open',
    accepted: 'unchanged',
    pass: 'corrected',
    nothing: 'gone',
  },
  pass: {
    finding: 'newly broken',
    unsettled: 'newly open',
    accepted: 'accepted',
    pass: 'unchanged',
    nothing: 'unchanged',
  },
  nothing: { finding: 'new', unsettled: 'newly open', accepted: 'accepted', pass: 'unchanged', nothing: 'unchanged' },
};

/**
 * @param isStillChecked whether the new submission still holds the thing and its detail passes or is silent
 */
export function progressOf(
  before: Told | undefined,
  after: Told | undefined,
  isStillChecked: (before: Told) => boolean,
): Progress {
  const was = standingOf(before);
  const became = BECAME[was][standingOf(after)];
  if (became !== 'gone') return became;
  if (before === undefined || !isStillChecked(before)) return 'no longer checked';
  return was === 'unsettled' ? 'answered' : 'corrected';
}

/** @see SARIF 2.1.0 section 3.27.24 */
export function stateOf(
  before: Told | undefined,
  after: Told | undefined,
  differences: readonly Difference[],
): BaselineState {
  if (before === undefined) return 'new';
  if (after === undefined) return 'absent';
  return differences.length === 0 ? 'unchanged' : 'updated';
}

/** What two results of the same check say differently; positions and words of the message do not count. */
export function differencesOf(before: Told, after: Told, renames: Renames): Difference[] {
  const differences: Difference[] = [];
  const compare = (what: Difference['what'], was: string | undefined, is: string | undefined): void => {
    if (was === is) return;
    const isSame =
      was !== undefined &&
      is !== undefined &&
      (saysTheSame(was, is, renames) || inOrder(translated(was, renames)) === inOrder(is));
    if (!isSame) differences.push({ what, before: was, after: is });
  };
  compare('kind', before.kind, after.kind);
  if (before.kind === 'fail' && after.kind === 'fail') compare('level', before.level, after.level);
  compare('provided', before.provided, after.provided);
  compare('required', before.required, after.required);
  compare('source', before.sources[0]?.citation, after.sources[0]?.citation);
  compare('missing', textOf(before.missing), textOf(after.missing));
  compare('accepted', before.accepted, after.accepted);
  // What asks for something and has no values says them in its message.
  const hasValues = [before, after].some((one) => one.provided !== undefined || one.required !== undefined);
  if (!hasValues && after.kind !== 'pass') compare('message', before.message, after.message);
  return differences;
}

function textOf(list: readonly string[]): string | undefined {
  return list.length === 0 ? undefined : list.join(', ');
}

/** Items of an enumeration in one order: `jambs, pan` says what `pan, jambs` says. */
function inOrder(text: string): string {
  return text.includes(', ') ? text.split(', ').sort().join(', ') : text;
}
