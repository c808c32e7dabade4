/** The run of water in sentences: what a finding says, step by step. */
import { endsRight, type WaterEnd, type WaterPath } from './types.js';
import { pieceName } from '../../geometry/piece-name.js';
import type { Locus } from '../../reading/types.js';

/** `on the bare sheathing beside ...`: where a path ends, to follow `Water ... ends `. */
export function endText(end: WaterEnd): string {
  const why = end.why === undefined ? '' : ` (${end.why})`;
  switch (end.kind) {
    case 'daylight':
      return `at daylight${why}`;
    case 'goes on':
      return `outside the barrier, where it runs on below the wall that is drawn${why}`;
    case 'behind veneer':
      return `behind the veneer${why}`;
    case 'bare substrate':
      return 'behind the barrier, on the bare substrate';
    case 'sheathing joint':
      return `in ${end.joint?.orientation === 'horizontal' ? 'a horizontal' : 'a vertical'} joint of "${end.joint?.layer.id ?? 'the sheathing'}"`;
    case 'opening':
      return `in the rough opening of "${end.opening?.id ?? ''}"${why}`;
    case 'penetration':
      return `in the hole around "${end.penetration?.id ?? ''}"`;
    case 'held in pan':
      return `held in the pan of "${end.opening?.id ?? ''}"${why}`;
    case 'interior':
      return `inside the building${why}`;
  }
}

/** One sentence for each step, at the entry of the piece it touches. */
export function stepsOf(path: WaterPath, start: Locus): { message: string; at: Locus; essential?: boolean }[] {
  const steps: { message: string; at: Locus; essential?: boolean }[] = [];
  for (const step of path.steps) {
    const name = step.piece === undefined ? 'the bare substrate' : pieceName(step.piece);
    const at = step.piece?.at ?? steps.at(-1)?.at ?? start;
    switch (step.what) {
      case 'starts':
        steps.push({ message: `Water runs down ${name}.`, at });
        break;
      case 'behind':
        steps.push({ message: `It meets the open upper edge of ${name} and goes behind it.`, at, essential: true });
        break;
      case 'over edge':
        steps.push({ message: `It runs over the closed upper edge of ${name}.`, at });
        break;
      case 'drops':
        steps.push({
          message: `${name.replace(/^./, (c) => c.toUpperCase())} ends; the water drops onto ${step.onto === undefined ? 'the bare substrate' : pieceName(step.onto)}.`,
          at: step.onto?.at ?? at,
          ...(step.onto === undefined ? { essential: true } : {}),
        });
        break;
      case 'comes out':
        steps.push({
          message:
            step.piece === undefined
              ? 'What covered it ends; it is on the bare substrate.'
              : `What covered it ends; it is at the face again, on ${name}.`,
          at,
        });
        break;
      default:
        break;
    }
  }
  const last = steps.at(-1)?.at ?? start;
  steps.push({
    message: `It ends ${endText(path.end)}.`,
    at: path.end.opening?.at ?? path.end.penetration?.at ?? path.end.joint?.layer.at ?? last,
    essential: !endsRight(path.end),
  });
  return steps;
}
