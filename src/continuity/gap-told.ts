/** What is told of a gap, the same for every control: only the name of the line and what is missing there differ. */
import type { PartGap } from './layer-gaps.js';
import type { SideGap } from './side-gaps.js';
import { gapLength, gapPlace, gapWords, listed } from './words.js';
import { showsWholeWall } from '../model/drawn.js';
import type { Detail } from '../model/types.js';
import { formatQuantity } from '../quantity/format.js';

/**
 * A layer that is put on only part of the wall; a question when the drawing does not show the whole wall.
 *
 * @param without what there is none of: `there is none`, `nothing slows vapor`
 */
export function partTold(detail: Detail, gap: PartGap, without: string) {
  const width = formatQuantity(gap.lengthMm, 'length', detail.openings[0]?.heightMm ?? { system: 'US' });
  const [work] = gap.works;
  const message = `"${work.id}" puts "${gap.layer.id}" on only part of the wall: ${without} ${gap.without}, ${width} wide as drawn`;
  const shared = { at: work.at, subject: `${gap.layer.id} over the wall` };
  return showsWholeWall(detail)
    ? {
        kind: 'fail' as const,
        message: `${message}.`,
        provided: `none ${gap.without}`,
        correct: `Put "${gap.layer.id}" on ${gap.without} too ("place: field").`,
        ...shared,
      }
    : {
        kind: 'open' as const,
        message: `${message}, and the drawing does not show the whole wall; show the rest.`,
        missing: ['work.place: field'],
        ...shared,
      };
}

/**
 * A gap beside an opening; a question when the documents leave out what would tell.
 *
 * @param line `air barrier`, `vapor line`
 * @param field name of what carries the line on the field of the wall
 */
export function sideTold(gap: SideGap, line: string, field: string) {
  const { what, correct } = gapWords(gap, field);
  const at = gap.flashing[0]?.at ?? gap.opening.at;
  const way = gap.isAfterUnit ? 'joined to the flange of the unit' : 'led into the opening';
  if (gap.missing.length > 0)
    return {
      kind: 'open' as const,
      message: `Whether the ${line} is ${way} at the ${gapPlace(gap)}, is not told; declare ${listed(gap.missing)}.`,
      at: gap.missing.some((m) => m.startsWith('openings')) ? gap.opening.at : at,
      missing: gap.missing,
    };
  return {
    kind: 'fail' as const,
    message: `The ${line} has a gap of ${gapLength(gap)} at the ${gapPlace(gap)}: ${what}.`,
    at,
    provided: `a gap of ${gapLength(gap)}`,
    correct,
    related: [{ message: 'the opening', at: gap.opening.at }],
  };
}
