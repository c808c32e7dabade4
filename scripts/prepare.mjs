/**
 * Runs after an install from the repository (as a commit hook manager does it) and before packing: builds the
 * program. Some package managers install a repository without its build tools; then they are installed first.
 */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import path from 'node:path';

const root = path.resolve(import.meta.dirname, '..');
if (!existsSync(path.join(root, 'node_modules', 'esbuild'))) {
  // What is printed goes to standard error: the caller may read standard output for the name of the package.
  const { status } = spawnSync('npm', ['ci', '--global=false', '--include=dev', '--ignore-scripts'], {
    cwd: root,
    stdio: ['ignore', 2, 2],
    env: { ...process.env, npm_config_global: 'false' },
  });
  if (status !== 0) process.exit(status ?? 1);
}
await import('./build.mjs');
