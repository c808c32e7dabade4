/** The walls of tests/data/moisture-walls.yaml, each followed through a year. */
import { readFileSync } from 'node:fs';
import { load } from 'js-yaml';
import { readPage } from './documents.js';
import { wallYearOf, type WallNotFollowed, type WallYear } from '../../src/moisture/wall/of-detail.js';

export interface PublishedWall {
  readonly id: string;
  readonly title: string;
  readonly zones: readonly string[];
  readonly verdict: 'good' | 'marginal' | 'risk' | 'not visible';
  /** The verdict comes from moisture readings, or from a wall taken down. */
  readonly measured?: true;
  readonly source: string;
  readonly says: string;
  /** What the source does not print and was filled in. */
  readonly taken: readonly string[];
  readonly indoor?: { readonly temperature: string; readonly humidity: string };
  /** Interiors the source allows; latex paint on the board when absent. */
  readonly interiors?: readonly ('none' | 'class III' | 'responsive class II')[];
  readonly wall: readonly Readonly<Record<string, unknown>>[];
}

export const PUBLISHED_WALLS = (
  load(readFileSync(new URL('../data/moisture-walls.yaml', import.meta.url), 'utf8')) as { walls: PublishedWall[] }
).walls;

/** The layers with each interior the source allows. */
function variants({ wall, interiors }: PublishedWall): (readonly Readonly<Record<string, unknown>>[])[] {
  if (interiors === undefined) return [wall];
  return interiors.map((interior) =>
    wall.flatMap((layer) => {
      if (layer['id'] !== 'board') return [layer];
      const board = { ...layer, finish: interior === 'none' ? 'none' : 'latex paint' };
      return interior === 'responsive class II' ? [board, { id: 'sheet', material: 'responsive membrane' }] : [board];
    }),
  );
}

/** The wall with each interior as a page of a detail and its project in the zone. JSON is YAML too. */
export function pagesOf(wall: PublishedWall, zone: string): string[] {
  const project = { kind: 'project', id: 'place', title: 'Place', place: { zone }, indoor: wall.indoor };
  return variants(wall).map((layers) => {
    const detail = { kind: 'detail', id: wall.id, title: wall.title, wall: layers };
    return `\`\`\`yaml detail\n${JSON.stringify(detail)}\n\`\`\`\n\n\`\`\`yaml project\n${JSON.stringify(project)}\n\`\`\`\n`;
  });
}

/** Each interior of the wall, followed through the year of a typical station of the zone. */
export async function followed(wall: PublishedWall, zone: string): Promise<(WallYear | WallNotFollowed)[]> {
  const pages = await Promise.all(pagesOf(wall, zone).map((text) => readPage(text)));
  return pages.map((page) => wallYearOf(page.detail()));
}
