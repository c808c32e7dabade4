/** Where a command leaves what it prints. */

/** The file that a name leads to, through links; the name itself when there is no such file yet. */
async function leadsTo(file: string): Promise<{ readonly target: string; readonly mode?: number; isPlain: boolean }> {
  const { realpath, stat } = await import('node:fs/promises');
  try {
    const target = await realpath(file);
    const found = await stat(target);
    return { target, mode: found.mode, isPlain: found.isFile() };
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
    return { target: file, isPlain: true };
  }
}

/**
 * Writes a file whole or not at all: beside the target and then moved into place, so that nobody reads half of it.
 *
 * A link stays a link, and its target is written. What is no plain file, such as a pipe, is written to as it is.
 * @throws when the folder cannot be made or written to
 */
export async function writeFileSafely(file: string, text: string): Promise<void> {
  const { chmod, mkdir, rename, rm, writeFile } = await import('node:fs/promises');
  const path = await import('node:path');
  const { randomUUID } = await import('node:crypto');
  await mkdir(path.dirname(file), { recursive: true });
  const { target, mode, isPlain } = await leadsTo(file);
  if (!isPlain) return writeFile(target, text);
  // A name that nobody else has: nothing that stands beside the target is overwritten.
  const part = `${target}.${randomUUID()}.part`;
  try {
    await writeFile(part, text, { flag: 'wx' });
    if (mode !== undefined) await chmod(part, mode & 0o777);
    await rename(part, target);
  } catch (error) {
    await rm(part, { force: true });
    throw error;
  }
}

/** Prints to standard output, or writes the file whose name was given. @see writeFileSafely */
export async function deliver(text: string, file: string | undefined): Promise<void> {
  if (file === undefined) process.stdout.write(text);
  else await writeFileSafely(file, text);
}
