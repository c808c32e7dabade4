/** One side of a comparison as a person names it: documents, a SARIF file, or a revision of the repository. */
import { closeSync, openSync, readFileSync, readSync, statSync } from 'node:fs';
import path from 'node:path';
import { submissionOfReview } from '../compare/of-review.js';
import { submissionOfSarif } from '../compare/of-sarif.js';
import type { Submission } from '../compare/types.js';
import type { Review } from '../output/report.js';
import { UsageError } from './arguments.js';
import { checkOut } from './git-revision.js';
import { runReview, withPages, type RunOptions } from './run.js';

export const GIT = 'git:';
/** A SARIF file is read whole; a review of thousands of details stays below this. */
const MOST_SARIF_BYTES = 256 * 1024 * 1024;
const PEEKED_BYTES = 4096;

export interface ReadSubmission {
  readonly submission: Submission;
  /** The review behind it; absent for a SARIF file. */
  readonly review?: Review;
  /** One run of a SARIF log, with the results in the order of the submission. */
  sarif(): Promise<Readonly<Record<string, unknown>>>;
  readonly notices: readonly string[];
  /** False when there was nothing to compare: no documents. */
  readonly ran: boolean;
}

/** Whether a path names a file that is to be read as SARIF: by its ending, or `.json` that begins like a log. */
export function isSarif(written: string): boolean {
  if (/\.sarif(?:\.json)?$/i.test(written)) return true;
  return (
    /\.json$/i.test(written) && statSync(written, { throwIfNoEntry: false })?.isFile() === true && looksLikeLog(written)
  );
}

function looksLikeLog(file: string): boolean {
  const bytes = Buffer.alloc(PEEKED_BYTES);
  const open = openSync(file, 'r');
  try {
    const text = bytes.toString('latin1', 0, readSync(open, bytes, 0, PEEKED_BYTES, 0));
    return /"runs"\s*:|"\$schema"\s*:\s*"[^"]*sarif/i.test(text);
  } finally {
    closeSync(open);
  }
}

/**
 * @param written as on the command line
 * @param at path in the repository, for a revision
 * @param options how documents are reviewed; the same for both sides
 * @throws UsageError or UnusableSarif when it cannot be read
 */
export async function readSubmission(
  written: string,
  at: string,
  options: Omit<RunOptions, 'inputs'>,
): Promise<ReadSubmission> {
  if (written.startsWith(GIT)) {
    const out = await checkOut(written.slice(GIT.length), at);
    try {
      const read = await reviewed(written, out.input, options);
      return { ...read, notices: [...out.notices, ...read.notices] };
    } finally {
      out.remove();
    }
  }
  // Reports are sent along: where a folder lies on a disk is nobody's business.
  const name = path.isAbsolute(written) ? path.basename(written) : written;
  if (!isSarif(written)) return reviewed(name, written, options);
  const { submission, run } = submissionOfSarif(name, readSarif(written));
  return { submission, sarif: () => Promise.resolve(run), notices: [], ran: true };
}

async function reviewed(name: string, input: string, options: Omit<RunOptions, 'inputs'>): Promise<ReadSubmission> {
  const run = await runReview({ ...options, inputs: [input] });
  return {
    submission: submissionOfReview(name, run.review, run.library),
    review: run.review,
    sarif: async () => {
      const { printSarif } = await import('../output/sarif.js');
      const log = JSON.parse(printSarif(await withPages(run.review), { profile: 'full' })) as {
        runs: [Readonly<Record<string, unknown>>];
      };
      return log.runs[0];
    },
    notices: run.notices,
    ran: run.ran,
  };
}

function readSarif(file: string): string {
  const status = statSync(file, { throwIfNoEntry: false });
  if (status?.isFile() !== true)
    throw new UsageError(`There is no file ${file} that can be read; check the path, and name the SARIF file itself.`);
  if (status.size > MOST_SARIF_BYTES)
    throw new UsageError(
      `${file} has ${status.size} bytes and the limit is ${MOST_SARIF_BYTES}; compare the documents themselves, or a part of them.`,
    );
  return readFileSync(file, 'utf8');
}
