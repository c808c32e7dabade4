/** The package as a user gets it: packed, and installed in a project of its own without any network. */
import { mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { ROOT, runProgram, scratch, type Ran } from './command.js';

export interface Installed {
  /** Folder of the project it is installed in. */
  readonly project: string;
  /** The tarball that was installed. */
  readonly tarball: string;
  /** The command as the package manager links it. */
  readonly bin: string;
}

/** Runs npm with a cache of its own, so that nothing on this machine helps. */
export function npm(args: readonly string[], cwd: string, cache: string): Promise<Ran> {
  return runProgram('npm', [...args, '--cache', cache, '--no-audit', '--no-fund', '--no-update-notifier', '--silent'], {
    cwd,
  });
}

/** Packs what is built (scripts do not run: the build of this test run is what is tested) and installs it. */
export async function installPacked(): Promise<Installed> {
  const folder = scratch({ 'project/package.json': '{ "private": true, "type": "module" }\n' });
  const [packed, project, cache] = ['packed', 'project', 'cache'].map((name) => path.join(folder, name)) as [
    string,
    string,
    string,
  ];
  mkdirSync(packed);
  const made = await npm(['pack', '--ignore-scripts', '--pack-destination', packed], ROOT, cache);
  const [name] = readdirSync(packed);
  if (made.status !== 0 || name === undefined) throw new Error(`npm pack failed: ${made.err}`);
  const tarball = path.join(packed, name);
  const installed = await npm(['install', '--offline', tarball], project, cache);
  if (installed.status !== 0)
    throw new Error(
      `The package does not install without a network (status ${String(installed.status)}): ${installed.err}${installed.out}`,
    );
  writeFileSync(path.join(project, '.gitignore'), 'node_modules/\n');
  return { project, tarball, bin: path.join(project, 'node_modules/.bin/lapwright') };
}
