/** How gaps are told in a sentence. */
import { isUpright, wholeSide } from './side-line.js';
import type { SideGap } from './side-gaps.js';
import type { Opening, Side } from '../model/types.js';
import { formatQuantity } from '../quantity/format.js';

const length = (mm: number, opening: Opening): string => formatQuantity(mm, 'length', opening.heightMm);

/** `from 6 in to 60 in above the sill`; `along all of it (36 in)` when the stretch is the whole side. */
export function stretchText(gap: Pick<SideGap, 'stretch' | 'opening' | 'side'>): string {
  const { stretch, opening, side } = gap;
  const whole = wholeSide(opening, side);
  if (stretch.toMm - stretch.fromMm > whole.toMm - whole.fromMm - 0.1)
    return `along all of it (${length(stretch.toMm - stretch.fromMm, opening)})`;
  const from = length(Math.max(0, stretch.fromMm), opening);
  const to = length(stretch.toMm, opening);
  return `from ${from} to ${to} ${isUpright(side) ? 'above the sill' : 'from its left end'}`;
}

/** `left jamb of "window", from 6 in to 60 in above the sill`. */
export function gapPlace(gap: Pick<SideGap, 'stretch' | 'opening' | 'side'>): string {
  return `${gap.side} of "${gap.opening.id}", ${stretchText(gap)}`;
}

/** Length of a gap in the units of the opening. */
export function gapLength(gap: Pick<SideGap, 'lengthMm' | 'opening'>): string {
  return length(gap.lengthMm, gap.opening);
}

/** `head`, `head and sill`, `head, left jamb and sill`. */
export function listed(words: readonly Side[] | readonly string[]): string {
  return words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1) ?? ''}`;
}

/** What is wrong along a stretch, as the end of a sentence, and how to mend it. */
export function gapWords(gap: SideGap, field: string): { readonly what: string; readonly correct: string } {
  const [first] = gap.flashing;
  const flashing = first === undefined ? 'the flashing' : `"${first.work.id}"`;
  switch (gap.cause) {
    case 'bare':
      return first === undefined
        ? {
            what: `no flashing comes up to the edge of the opening there`,
            correct: `Flash the ${gap.side} too ("place: ${gap.side}").`,
          }
        : {
            what: `${flashing} does not come up to the edge of the opening there`,
            correct: `Let ${flashing} cover the whole ${gap.side} ("ontoWall").`,
          };
    case 'lap':
      return {
        what: `${flashing} and ${field} do not meet there`,
        correct: `Lap ${field} and ${flashing} onto each other ("ontoWall", "lapsOnto").`,
      };
    case 'return':
      if (gap.isAfterUnit)
        return {
          what: `${flashing} goes on after the unit, so it cannot turn in, and is not joined to the flange there`,
          correct: `Adhere or seal ${flashing} to the flange ("edge"), bed the flange in sealant along the ${gap.side}, or line the opening before the unit is set.`,
        };
      return {
        what: `${first === undefined ? field : flashing} stops at the edge of the opening there`,
        correct:
          first === undefined
            ? `Flash the ${gap.side} too ("place: ${gap.side}").`
            : `Let ${flashing} reach into the opening ("intoOpening").`,
      };
    case 'seal':
      return {
        what: `no interior seal closes the gap to the unit there`,
        correct: `Run the interior seal along the ${gap.side} too ("sides").`,
      };
  }
}
