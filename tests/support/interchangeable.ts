/**
 * Steps that a crew may do in either order, by the nature of the work: swapping them breaks nothing. Written by
 * hand from how the work is done, not from what the rules happen to find.
 */
import type { Edit } from './edits.js';

/** Two kinds of steps, told by how their ids begin in the demo library. */
interface Interchangeable {
  readonly steps: readonly [RegExp, RegExp];
  readonly why: string;
}

export const INTERCHANGEABLE: readonly Interchangeable[] = [
  { steps: [/^seams$/, /^ro-corners$/], why: 'both are joint filler on bare sheathing and do not lie over each other' },
  {
    steps: [/^flashing-check$/, /^field$/],
    why: 'the field covers 2 in of 6 in of flashing; the rest can still be read',
  },
  {
    steps: [/^flashing-check$/, /^over-head$/],
    why: 'the flashing on the lintel leaves pan and jambs in sight, and a part of the head',
  },
  {
    steps: [/^field-check$/, /^(set|conduit-in|roof-strip|bellows)$/],
    why: 'the step hides none, or a narrow edge, of the field',
  },
  { steps: [/^counter-/, /^air-seal$/], why: 'one is outside, the other inside, of a unit that is set' },
  { steps: [/^air-seal$/, /^rain-seal$/], why: 'one is inside, the other outside, of a unit that is set' },
  { steps: [/^air-seal$/, /^outside-board$/], why: 'the seal is on the inside' },
  {
    steps: [/^wet-check$/, /^outside-board$/],
    why: 'the joint stays in view from inside; boards outside may be on or off',
  },
  { steps: [/^(brick|cladding)$/, /^drywall$/], why: 'they cover opposite faces of the wall' },
  { steps: [/^seams$/, /-in$/], why: 'a pipe may stand in the sheathing before its joints are filled' },
  { steps: [/^seams$/, /-collar$/], why: 'the collar does not reach a joint' },
  { steps: [/^base-(strip|flashing)$/, /-(collar|in)$/], why: 'what lies at the base and the collar do not meet' },
];

/** Why the two steps of an edit may be swapped; `undefined` when they may not. */
export function mayBeSwapped(edit: Edit): string | undefined {
  const [a = '', b = ''] = edit.steps;
  return INTERCHANGEABLE.find(({ steps: [x, y] }) => (x.test(a) && y.test(b)) || (y.test(a) && x.test(b)))?.why;
}
