/**
 * The least that a review has to do: read every document of a folder as YAML with positions, and validate it by
 * its schema. By the same libraries as the program, without anything of the program's own; formats (quantities)
 * always pass, so the floor lies a little too low rather than too high.
 *
 *   node bench/floor.mjs FOLDER
 */
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { LineCounter, parseAllDocuments } from 'yaml';

const validators = createRequire(import.meta.url)('../generated/validators.cjs');
const formats = new Proxy({}, { get: () => () => true });
const entered = new Map();

function validatorOf(kind) {
  let known = entered.get(kind);
  if (known === undefined) entered.set(kind, (known = validators[kind](formats)));
  return known;
}

/** The YAML of a file: all of it, or the fenced blocks of a Markdown file. */
function textsOf(file, text) {
  if (!file.endsWith('.md')) return [[undefined, text]];
  return [...text.matchAll(/^```yaml ([a-z-]+)\n([\s\S]*?)^```/gm)].map(([, kind, block]) => [kind, block]);
}

/** @returns how many documents were parsed, and how many of them their schema accepts */
export function floor(folder) {
  let parsed = 0;
  let valid = 0;
  for (const name of readdirSync(folder, { recursive: true })) {
    if (!/\.(?:yaml|md)$/.test(name)) continue;
    const file = path.join(folder, name);
    for (const [fence, text] of textsOf(file, readFileSync(file, 'utf8'))) {
      const lineCounter = new LineCounter();
      for (const document of parseAllDocuments(text, {
        lineCounter,
        prettyErrors: false,
        uniqueKeys: false,
        schema: 'core',
      })) {
        const data = document.toJS();
        if (fence !== undefined) data.kind ??= fence;
        parsed += 1;
        if (validatorOf(data.kind)(data)) valid += 1;
      }
    }
  }
  return { parsed, valid };
}

if (process.argv[1] === import.meta.filename) process.stdout.write(`${JSON.stringify(floor(process.argv[2]))}\n`);
