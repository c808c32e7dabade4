/** `lapwright new KIND` */
import { open } from 'node:fs/promises';
import { readArguments, UsageError, valueOf } from './arguments.js';
import { STARTING_DOCUMENTS } from './starting-documents.js';
import { nearest } from '../model/nearest.js';

/** @returns the exit status 0; never overwrites a file */
export async function newCommand(argv: readonly string[]): Promise<number> {
  const { given, rest } = readArguments(argv, { output: { type: 'string' } });
  const kinds = Object.keys(STARTING_DOCUMENTS);
  const [kind, ...more] = rest;
  if (kind === undefined || more.length > 0) throw new UsageError(`Name one kind of document: ${kinds.join(', ')}.`);
  const text = Object.hasOwn(STARTING_DOCUMENTS, kind) ? STARTING_DOCUMENTS[kind] : undefined;
  if (text === undefined) {
    const close = nearest(kind, kinds);
    throw new UsageError(
      `There is no starting document "${kind}"; ${close === undefined ? `kinds: ${kinds.join(', ')}` : `did you mean "${close}"?`}`,
    );
  }
  const file = valueOf(given, 'output');
  if (file === undefined) {
    process.stdout.write(text);
    return 0;
  }
  try {
    // `wx` refuses to open a file that exists: nothing of the author's is ever overwritten.
    const handle = await open(file, 'wx');
    await handle.writeFile(text);
    await handle.close();
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST')
      throw new UsageError(`"${file}" exists already and is left as it is; name another file.`);
    throw error;
  }
  return 0;
}
