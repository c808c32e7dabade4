/**
 * Builds dist/: the program as ES modules split by command, so that each command loads only what it uses, the
 * two entry points for users of the library, their types, and the licenses of what is bundled.
 */
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync, rmSync, writeFileSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { build } from 'esbuild';

const root = path.resolve(import.meta.dirname, '..');
execFileSync(process.execPath, [path.join(root, 'scripts/generate.mjs')], { stdio: 'inherit' });
rmSync(path.join(root, 'dist'), { recursive: true, force: true });

const { version } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8'));
const result = await build({
  absWorkingDir: root,
  entryPoints: { lapwright: 'src/cli/main.ts', index: 'src/index.ts', rule: 'src/engine/rule.ts' },
  outdir: 'dist',
  bundle: true,
  splitting: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  chunkNames: 'parts/[name]-[hash]',
  // The CommonJS build of the YAML library asks for `require` at run time; its ES module build does not.
  alias: { yaml: path.join(root, 'node_modules/yaml/browser/index.js') },
  define: { LAPWRIGHT_VERSION: JSON.stringify(version) },
  metafile: true,
  legalComments: 'none',
  logLevel: 'warning',
  minifySyntax: true,
  minifyWhitespace: true,
});

const bundled = new Set();
for (const input of Object.keys(result.metafile.inputs)) {
  const match = /node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(input);
  if (match) bundled.add(match[1]);
}
const notices = [...bundled].sort().map((name) => {
  const dir = path.join(root, 'node_modules', name);
  const manifest = JSON.parse(readFileSync(path.join(dir, 'package.json'), 'utf8'));
  const file = readdirSync(dir).find((f) => /^licen[cs]e(\.|$)/i.test(f));
  const text =
    file && existsSync(path.join(dir, file))
      ? readFileSync(path.join(dir, file), 'utf8').trim()
      : `License: ${manifest.license}`;
  return `${name} ${manifest.version} (${manifest.license})\n\n${text}\n`;
});
writeFileSync(path.join(root, 'dist/THIRD-PARTY-LICENSES.txt'), notices.join(`\n${'-'.repeat(72)}\n\n`));

execFileSync(process.execPath, [path.join(root, 'node_modules/typescript/bin/tsc'), '-p', 'tsconfig.types.json'], {
  cwd: root,
  stdio: 'inherit',
});
