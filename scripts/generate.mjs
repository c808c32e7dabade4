/** Everything under generated/: compiled schema validators, the names of their fields, and the list of built-in rules with their pages. */
import { spawnSync } from 'node:child_process';
import path from 'node:path';

for (const script of ['generate-validators.mjs', 'generate-fields.mjs', 'generate-rules.mjs']) {
  const { status } = spawnSync(process.execPath, [path.join(import.meta.dirname, script)], { stdio: 'inherit' });
  if (status !== 0) {
    process.exitCode = status ?? 1;
    break;
  }
}
