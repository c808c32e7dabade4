/**
 * Prints how well the reader of sections does against the answer keys: recall and precision for each section, what it
 * missed and what it found besides. Keys and texts stand in tests/data/requirements (or in the folder named).
 */
import { existsSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const root = path.resolve(import.meta.dirname, '..');
const folder = path.resolve(process.argv[2] ?? path.join(root, 'tests/data/requirements'));
if (!existsSync(folder)) {
  process.stderr.write(
    `There is no folder ${folder}; name one that holds <section>.txt or .md and <section>.key.yaml.\n`,
  );
  process.exit(2);
}

const outfile = path.join(root, 'generated/requirements-score.mjs');
await build({
  entryPoints: [path.join(root, 'tests/support/requirements-score.ts')],
  bundle: true,
  outfile,
  format: 'esm',
  platform: 'node',
  packages: 'external',
});
const { scoreFile } = await import(pathToFileURL(outfile).href);

const share = (part, whole) => (whole === 0 ? 'none' : `${((100 * part) / whole).toFixed(0)} % (${part} of ${whole})`);
const keys = readdirSync(folder).filter((name) => name.endsWith('.key.yaml'));
if (keys.length === 0) {
  process.stderr.write(`${folder} holds no <section>.key.yaml.\n`);
  process.exit(2);
}
for (const name of keys.sort()) {
  const section = name.replace(/\.key\.yaml$/, '');
  const score = scoreFile(folder, section);
  console.log(
    `${section}: recall ${share(score.found, score.entries)}, traps ${share(score.trapsFound, score.traps)}, precision ${share(score.right, score.proposed)}; ${score.inWords} proposed in words, ${score.passedOver} numbers passed over`,
  );
  for (const miss of score.misses) console.log(`  missed ${miss}`);
  for (const extra of score.extras) console.log(`  extra  ${extra}`);
}
