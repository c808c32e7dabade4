/** Reviews folders and compares them, in this process. */
import { compareSubmissions } from '../../src/compare/compare.js';
import { submissionOfReview } from '../../src/compare/of-review.js';
import type { Comparison, Pair, Submission } from '../../src/compare/types.js';
import { runReview } from '../../src/cli/run.js';

/** @param folder absolute */
export async function submissionAt(folder: string): Promise<Submission> {
  const { review, library } = await runReview({
    inputs: [folder],
    cwd: folder,
    packs: [],
    allowPacks: false,
    today: '2026-01-15',
    skipOthers: false,
    dependents: false,
  });
  return submissionOfReview(folder, review, library);
}

export async function compareFolders(before: string, after: string): Promise<Comparison> {
  return compareSubmissions(await submissionAt(before), await submissionAt(after));
}

/** `S-1 | sill/end-dam-height | end dams of window`. */
export function nameOf({ before, after }: Pair): string {
  const told = after ?? before;
  return [told?.detail, told?.rule, told?.subject].join(' | ');
}
