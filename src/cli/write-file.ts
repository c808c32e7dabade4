/** Where a command leaves what it prints. */

/**
 * Writes a file whole or not at all: beside the target and then moved into place, so that nobody reads half of it.
 *
 * @throws when the folder cannot be made or written to
 */
export async function writeFileSafely(file: string, text: string): Promise<void> {
  const { mkdir, rename, rm, writeFile } = await import('node:fs/promises');
  const path = await import('node:path');
  await mkdir(path.dirname(file), { recursive: true });
  const part = `${file}.part`;
  try {
    await writeFile(part, text);
    await rename(part, file);
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
