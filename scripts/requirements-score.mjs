/**
 * Prints how well the reader of sections does against the answer keys: recall and precision for each section, what it
 * missed and what it found besides. Keys and texts stand in tests/data/requirements (or in the folder named).
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { build } from 'esbuild';
import { parse } from 'yaml';

const root = path.resolve(import.meta.dirname, '..');
const folder = path.resolve(process.argv[2] ?? path.join(root, 'tests/data/requirements'));
if (!existsSync(folder)) {
  process.stderr.write(`There is no folder ${folder}; name one that holds <section>.txt and <section>.key.yaml.\n`);
  process.exit(2);
}

const { outputFiles } = await build({
  entryPoints: [path.join(root, 'tests/support/requirements-score.ts')],
  bundle: true,
  write: false,
  format: 'esm',
  platform: 'node',
});
const code = encodeURIComponent(outputFiles[0].text);
const { scoreSection } = await import(`data:text/javascript,${code}`);

const share = (part, whole) => (whole === 0 ? 'none' : `${((100 * part) / whole).toFixed(0)} % (${part} of ${whole})`);
const keys = readdirSync(folder).filter((name) => name.endsWith('.key.yaml'));
if (keys.length === 0) {
  process.stderr.write(`${folder} holds no <section>.key.yaml.\n`);
  process.exit(2);
}
for (const name of keys.sort()) {
  const section = name.replace(/\.key\.yaml$/, '');
  const text = readFileSync(path.join(folder, `${section}.txt`), 'utf8');
  const { requirements } = parse(readFileSync(path.join(folder, name), 'utf8'));
  const score = scoreSection(text, requirements);
  console.log(
    `${section}: recall ${share(score.found, score.entries)}, traps ${share(score.trapsFound, score.traps)}, precision ${share(score.right, score.proposed)}`,
  );
  for (const miss of score.misses) console.log(`  missed ${miss}`);
  for (const extra of score.extras) console.log(`  extra  ${extra}`);
}
