/** Writes generated/field-names.ts: every field name of the document schemas, so that letters can tell fields from words. */
import { mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';

const root = new URL('../', import.meta.url);
const names = new Set();

function collect(node) {
  if (typeof node !== 'object' || node === null) return;
  for (const [key, value] of Object.entries(node)) {
    if (key === 'properties' && typeof value === 'object') for (const name of Object.keys(value)) names.add(name);
    collect(value);
  }
}

for (const name of readdirSync(new URL('schemas/', root)).filter((n) => n.endsWith('.schema.json')))
  collect(JSON.parse(readFileSync(new URL(`schemas/${name}`, root), 'utf8')));

mkdirSync(new URL('generated/', root), { recursive: true });
const list = [...names].sort().map((name) => `  ${JSON.stringify(name)},`);
writeFileSync(
  new URL('generated/field-names.ts', root),
  `// Written by scripts/generate-fields.mjs.\nexport const FIELD_NAMES: readonly string[] = [\n${list.join('\n')}\n];\n`,
);
