/** Folders of files for tests, removed after each test. */
import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach } from 'vitest';

const made: string[] = [];

afterEach(() => {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true });
});

/** A new folder with these files; names may hold `/`, a name that ends in `/` makes a folder. */
export function folderWith(files: Readonly<Record<string, string | Uint8Array>>): string {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'lapwright-')));
  made.push(folder);
  for (const [name, content] of Object.entries(files)) {
    const path = join(folder, name);
    mkdirSync(name.endsWith('/') ? path : dirname(path), { recursive: true });
    if (!name.endsWith('/')) writeFileSync(path, content);
  }
  return folder;
}
