/**
 * What the scripts that write pages of docs/ share: the program's own modules, Markdown tables, and writing a page
 * or checking that it is up to date.
 */
import { Buffer } from 'node:buffer';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { build } from 'esbuild';

export const ROOT = path.resolve(import.meta.dirname, '..');

/**
 * Loads TypeScript modules of this repository, so that a page states what the program does and not a copy of it.
 *
 * @param code module code; imports are relative to the repository's root
 * @returns what the code exports
 */
export async function load(code) {
  if (!existsSync(path.join(ROOT, 'generated/validators.cjs')))
    throw new Error('generated/validators.cjs is missing; run "npm run generate" first.');
  const { outputFiles } = await build({
    stdin: { contents: code, resolveDir: ROOT, loader: 'ts' },
    absWorkingDir: ROOT,
    bundle: true,
    write: false,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    // The CommonJS build of the YAML library asks for `require` at run time; its ES module build does not.
    alias: { yaml: path.join(ROOT, 'node_modules/yaml/browser/index.js') },
    logLevel: 'error',
  });
  return import(`data:text/javascript;base64,${Buffer.from(outputFiles[0].contents).toString('base64')}`);
}

/** Text of one table cell: a bar would end the cell, a line break the table. */
export const cell = (text) =>
  String(text)
    .replaceAll('|', '\\|')
    .replace(/\s*\n\s*/g, ' ');

/** Inline code that may stand in a cell. */
export const code = (text) => (text.includes('`') ? `\`\` ${text} \`\`` : `\`${text}\``);

/** A Markdown table. */
export function table(head, rows) {
  const line = (cells) => `| ${cells.map(cell).join(' | ')} |`;
  return [line(head), `|${head.map(() => '---').join('|')}|`, ...rows.map(line)].join('\n');
}

/** The anchor a heading gets on the usual Markdown hosts: small letters, no punctuation, dashes for spaces. */
export const anchor = (heading) =>
  heading
    .toLowerCase()
    .replace(/[^a-z0-9 _-]/g, '')
    .replaceAll(' ', '-');

/** The words that stand beside a list of the program must be about exactly that list. */
export function sameWords(what, texts, list) {
  const [missing, extra] = [
    list.filter((word) => !(word in texts)),
    Object.keys(texts).filter((word) => !list.includes(word)),
  ];
  if (missing.length + extra.length > 0)
    throw new Error(
      `scripts/reference-texts.mjs: ${what} lack ${missing.join(', ') || 'nothing'} and have too much: ${extra.join(', ') || 'nothing'}.`,
    );
}

/**
 * Writes a page, or with `--check` says whether the one there is the same (exit status 1 when it is not).
 * A folder on the command line takes the place of docs/.
 */
export function put(name, text) {
  const given = process.argv.slice(2);
  const folder = path.resolve(given.find((word) => !word.startsWith('--')) ?? path.join(ROOT, 'docs'));
  const file = path.join(folder, name);
  const isSame = existsSync(file) && readFileSync(file, 'utf8') === text;
  if (!given.includes('--check')) {
    mkdirSync(folder, { recursive: true });
    if (!isSame) writeFileSync(file, text);
  } else if (!isSame) {
    console.error(
      `${path.relative(process.cwd(), file)} is out of date: run "node ${path.relative(process.cwd(), process.argv[1])}".`,
    );
    process.exitCode = 1;
  }
}
