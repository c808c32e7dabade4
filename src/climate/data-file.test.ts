/** The tables are found beside the program as it is installed, and read only when they are needed. */
import { execFileSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { afterAll, describe, expect, it } from 'vitest';
import type * as Zone from './zone.js';

const ROOT = path.resolve(import.meta.dirname, '../..');
const bundle = await build({
  entryPoints: [path.join(ROOT, 'src/climate/zone.ts')],
  bundle: true,
  write: false,
  format: 'esm',
  platform: 'node',
  alias: { yaml: path.join(ROOT, 'node_modules/yaml/browser/index.js') },
});
const home = realpathSync(mkdtempSync(path.join(tmpdir(), 'climate-')));
afterAll(() => rmSync(home, { recursive: true, force: true }));

/** Puts the built module where the package has it, with or without the tables, and loads it. */
async function installed(name: string, at: string, withTables: boolean): Promise<typeof Zone> {
  const file = path.join(home, name, at);
  mkdirSync(path.dirname(file), { recursive: true });
  writeFileSync(file, bundle.outputFiles[0]!.text);
  if (withTables) cpSync(path.join(ROOT, 'data/climate'), path.join(home, name, 'data/climate'), { recursive: true });
  return (await import(/* @vite-ignore */ pathToFileURL(file).href)) as typeof Zone;
}

describe('the climate tables', () => {
  it.each(['dist/index.js', 'dist/parts/zone.js'])('are found from %s', async (at) => {
    const { zoneOfPlace } = await installed(at.replaceAll('/', '-'), at, true);
    expect(zoneOfPlace({ county: 'Cook', state: 'IL' }, 2021)).toMatchObject({ zone: '5A' });
  });
  it('are found by a script of the repository that loads the module from memory', () => {
    const script = path.join(home, 'repository/scripts/print.mjs');
    mkdirSync(path.dirname(script), { recursive: true });
    cpSync(path.join(ROOT, 'data/climate'), path.join(home, 'repository/data/climate'), { recursive: true });
    const address = `data:text/javascript;base64,${Buffer.from(bundle.outputFiles[0]!.contents).toString('base64')}`;
    writeFileSync(
      script,
      `const { zoneOfPlace } = await import('${address}');\nconsole.log(zoneOfPlace({ county: '17031' }).zone);\n`,
    );
    expect(execFileSync(process.execPath, [script], { encoding: 'utf8' })).toBe('5A\n');
  });
  it('are not read for a declared zone, and their absence is told when a county needs them', async () => {
    const { zoneOfPlace } = await installed('bare', 'dist/parts/zone.js', false);
    expect(zoneOfPlace({ zone: '5A', county: 'Cook', state: 'IL' }, 2021)).toMatchObject({ zone: '5A' });
    expect(zoneOfPlace({ zone: '5' })).toMatchObject({ zone: '5' });
    expect(() => zoneOfPlace({ county: 'Cook', state: 'IL' })).toThrow(/us-counties\.txt .*missing; install it again/);
  });
});
