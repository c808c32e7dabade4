/** What is piped in. */
import { UsageError } from './arguments.js';
import { decodeText } from '../reading/source.js';

/** @throws UsageError when it is not UTF-8 text */
export async function standardInput(): Promise<string> {
  const chunks: Buffer[] = [];
  for await (const chunk of process.stdin) chunks.push(chunk as Buffer);
  const decoded = decodeText(Buffer.concat(chunks));
  if ('reason' in decoded) throw new UsageError(`Standard input ${decoded.reason}.`);
  return decoded.text;
}
