/** Whether a check may rest on a value: by the fields that its rule says it reads. */
import type { Change } from './types.js';

/** Parts of a detail whose entries stand under an id or a side, which no rule names. */
const KEYED: ReadonlySet<string> = new Set(['wall', 'openings', 'penetrations', 'work', 'edges']);

/** What the shape of pieces on the wall face is made of: a rule that reads where a piece lies reads all of it. */
const SHAPE: readonly string[] = [
  ...['place', 'of', 'layer', 'product', 'ontoWall', 'intoOpening', 'pastJambs', 'aboveHead', 'belowSill', 'downJambs'],
  ...['endDams', 'upstand', 'extends', 'offCenter', 'lapsOnto', 'courseLap', 'endLap', 'roll', 'courses'],
  ...['edge', 'edgeSeal', 'tuckedUnder', 'close', 'endsSealed', 'set'],
]
  .map((key) => `work.${key}`)
  .concat('openings.roughOpening', 'openings.at', 'openings.unit.mounting', 'openings.unit.flange', 'face');

/** The field of a change as rules name it: `work.ontoWall`, `openings.unit.flange`, `product.least.lap`. */
function fieldOf({ document, steps }: Change): string[] {
  if (document.kind !== 'detail') return [document.kind, ...steps];
  const [top, ...rest] = steps;
  if (top === undefined) return [];
  return [top, ...(KEYED.has(top) ? rest.slice(1) : rest)];
}

/**
 * False only when the rule tells what it reads, and the changed field is not among it. An entry that was added, removed
 * or moved as a whole holds every field.
 *
 * @param reads of the rule, as `work.ontoWall`; `undefined` when it is not known
 */
export function mayRead(reads: readonly string[] | undefined, change: Change): boolean {
  const { kind } = change.document;
  if (reads === undefined || (kind !== 'detail' && kind !== 'product' && kind !== 'project')) return true;
  const field = fieldOf(change);
  return (reads.includes('work.place') ? [...reads, ...SHAPE] : reads).some((read) => {
    const parts = read.split('.');
    return parts.slice(0, field.length).every((part, i) => part === field[i]);
  });
}
