/** Finding the one detail of a file that a command is about. */
import { UsageError } from './arguments.js';
import type { Run } from './run.js';
import { nearest } from '../model/nearest.js';
import type { ReviewedDetail } from '../output/report.js';

/** `"a", "b" and "c"` for a message. */
const listed = (ids: readonly string[]): string => ids.map((id) => `"${id}"`).join(', ');

/** Names the nearest id, or those there are. */
export function unknownId(what: string, id: string, ids: readonly string[]): UsageError {
  const close = nearest(id, ids);
  return new UsageError(
    `There is no ${what} "${id}"; ${close === undefined ? `found: ${ids.length === 0 ? 'none' : listed(ids)}` : `did you mean "${close}"?`}`,
  );
}

/**
 * The detail that is meant: the one that is named, or the only one of the file.
 *
 * @param done what is to be done with it, for messages: `drawn`
 * @throws UsageError when none or several are there, or none of the name
 */
export function chosenDetail(run: Run, file: string, id: string | undefined, done: string): ReviewedDetail {
  const { details } = run.review;
  const ids = details.map((d) => d.id);
  if (id !== undefined) {
    const found = details.find((d) => d.id === id);
    if (found === undefined) throw unknownId('detail', id, ids);
    return found;
  }
  const [only, second] = details;
  if (only === undefined)
    throw new UsageError(`"${file}" holds no detail that can be ${done}; lapwright review ${file} tells why.`);
  if (second !== undefined)
    throw new UsageError(`"${file}" holds several details (${listed(ids)}); name one with --detail ID.`);
  return only;
}
