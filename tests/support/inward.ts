/** What the rule on inward drive says of a published wall. */
import { readPage, reviewWith } from './documents.js';
import { pagesOf, type PublishedWall } from './moisture-walls.js';
import type { Kind } from '../../src/engine/result.js';
import type { Rule } from '../../src/engine/rule.js';
import inwardDrive from '../../rules/moisture/inward-drive.js';

/** The kinds of its results over all interiors of the wall in the zone. */
export async function inwardAnswer(wall: PublishedWall, zone: string): Promise<Kind[]> {
  const kinds: Kind[] = [];
  for (const text of pagesOf(wall, zone)) {
    const page = await readPage(text);
    kinds.push(...reviewWith(page.detail(), [inwardDrive as unknown as Rule]).map((r) => r.kind));
  }
  return kinds;
}
