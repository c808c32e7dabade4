/** Reviews paths the way the command does, and hands back the results. */
import path from 'node:path';
import type { Result } from '../../src/engine/result.js';
import { runReview } from '../../src/cli/run.js';

export const ROOT = path.resolve(import.meta.dirname, '../..');

/** @param paths relative to the root of the project */
export async function reviewPaths(paths: readonly string[]): Promise<Result[]> {
  const { review } = await runReview({
    inputs: paths,
    cwd: ROOT,
    packs: [],
    allowPacks: false,
    today: '2026-01-15',
    skipOthers: false,
    dependents: false,
  });
  return [...review.results];
}
