/**
 * Collects the built-in rules: every `rules/<family>/<name>.ts` with the page `<name>.md` beside it. A page that
 * stands alone belongs to a rule of the engine's own.
 * Writes generated/rules.ts (the rules) and generated/pages.ts (their pages, loaded only when asked for), so
 * that adding a rule touches no file outside its two.
 */
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';

const root = path.resolve(import.meta.dirname, '..');
const rulesDir = path.join(root, 'rules');
const ids = [];
const pages = [];
for (const family of readdirSync(rulesDir, { withFileTypes: true })) {
  if (!family.isDirectory() || family.name.startsWith('_')) continue;
  for (const file of readdirSync(path.join(rulesDir, family.name))) {
    if (file.endsWith('.ts') && !file.endsWith('.test.ts')) ids.push(`${family.name}/${file.slice(0, -3)}`);
    if (file.endsWith('.md')) pages.push(`${family.name}/${file.slice(0, -3)}`);
  }
}
ids.sort();
pages.sort();
const missing = ids.filter((id) => !existsSync(path.join(rulesDir, `${id}.md`)));
if (missing.length > 0) {
  console.error(`These rules have no page beside them: ${missing.join(', ')}`);
  process.exitCode = 1;
}
const head = '/* Written by scripts/generate-rules.mjs from the folder rules/. Do not edit. */\n';
mkdirSync(path.join(root, 'generated'), { recursive: true });
const put = (name, text) => {
  const file = path.join(root, 'generated', name);
  if (!existsSync(file) || readFileSync(file, 'utf8') !== text) writeFileSync(file, text);
};
put(
  'rules.ts',
  `${head}import type { Rule } from '../src/engine/rule.js';\n` +
    ids.map((id, i) => `import rule${i} from '../rules/${id}.js';\n`).join('') +
    `\nexport const BUILT_IN_RULES = [${ids.map((_, i) => `rule${i}`).join(', ')}] as unknown as readonly Rule[];\n`,
);
put(
  'pages.ts',
  `${head}export const PAGES: Readonly<Record<string, string>> = ${JSON.stringify(
    Object.fromEntries(pages.map((id) => [id, readFileSync(path.join(rulesDir, `${id}.md`), 'utf8')])),
    null,
    1,
  )};\n`,
);
