/** Remarks to the person at the terminal. */
import { visible } from '../output/escape.js';

/** One remark on standard error. What it quotes from documents, files and revisions cannot act on a terminal. */
export function say(remark: string): void {
  process.stderr.write(`lapwright: ${remark.split('\n').map(visible).join('\n')}\n`);
}
