/** `lapwright requirements SECTION` */
import { readArguments, UsageError, valueOf } from './arguments.js';
import { deliver } from './write-file.js';
import { isMarkdown, MAX_MARKDOWN_LINES } from '../reading/documents.js';
import { readText } from '../reading/folder.js';
import { sourceFile } from '../reading/source.js';
import type { SourceFile } from '../reading/types.js';
import { readSection } from '../specification/read.js';
import type { OutlineOptions } from '../specification/outline.js';
import type { ReadSpecification } from '../output/requirements.js';
import { chosenFormat } from './format.js';
import { standardInput } from './standard-input.js';

const FORMATS = ['yaml', 'markdown', 'json'] as const;
const SECTION_NUMBER = /^\d{2} \d{2} \d{2}(\.\d{2})?$/;
const LONGEST = 1_000_000;

async function textOf(file: string): Promise<string> {
  if (file === '-') return standardInput();
  const read = readText(file);
  if (!('text' in read)) throw new UsageError(`"${file}": ${read.message}`);
  return read.text;
}

/** The running text and, in Markdown, its headings; offsets count in the file. */
async function proseOfFile(file: SourceFile): Promise<{ readonly text: string; readonly options: OutlineOptions }> {
  if (file.text.length > LONGEST)
    throw new UsageError(`"${file.uri}" has ${file.text.length} characters; a section has at most ${LONGEST}.`);
  // Standard input is read as plain text unless it has the headings of Markdown.
  if (!isMarkdown(file.uri) && !(file.uri === '-' && /^#{1,6} \S/m.test(file.text)))
    return { text: file.text, options: {} };
  if (file.text.split('\n', MAX_MARKDOWN_LINES + 1).length > MAX_MARKDOWN_LINES)
    throw new UsageError(
      `"${file.uri}" has more than ${MAX_MARKDOWN_LINES} lines; divide it, or save it as plain text (.txt).`,
    );
  const { markdownProse } = await import('../reading/markdown-prose.js');
  const { text, headings } = markdownProse(file.text);
  return { text, options: { headings } };
}

async function print(read: ReadSpecification, format: (typeof FORMATS)[number]): Promise<string> {
  if (format === 'json') return (await import('../output/requirements-json.js')).printRequirementsJson(read);
  if (format === 'markdown')
    return (await import('../output/requirements-markdown.js')).printRequirementsMarkdown(read);
  return (await import('../output/requirements-yaml.js')).printRequirementsYaml(read);
}

/** @returns the exit status 0: a reading has questions, but it is no review and finds nothing wrong */
export async function requirementsCommand(argv: readonly string[]): Promise<number> {
  const { given, rest } = readArguments(argv, {
    format: { type: 'string' },
    output: { type: 'string' },
    section: { type: 'string' },
    title: { type: 'string' },
  });
  const [name, ...more] = rest;
  if (name === undefined || more.length > 0)
    throw new UsageError(
      'Name one file that holds the section (.md or .txt), or - for standard input: lapwright requirements SECTION. See lapwright help requirements.',
    );
  const output = valueOf(given, 'output');
  const format = chosenFormat(given, FORMATS, 'yaml', output);
  const file = sourceFile(name, await textOf(name));
  if (file.text.trim() === '') throw new UsageError(`"${name}" is empty; name the text of a specification section.`);
  const { text, options } = await proseOfFile(file);
  const reading = readSection(text, options);
  const section = valueOf(given, 'section') ?? reading.outline.section;
  if (section === undefined)
    throw new UsageError(
      `"${name}" does not say which section it is (expected a line such as "SECTION 07 27 26"); give the number with --section "07 27 26".`,
    );
  if (!SECTION_NUMBER.test(section))
    throw new UsageError(`--section is a number in three pairs of digits such as "07 27 26", not "${section}".`);
  const title = valueOf(given, 'title') ?? reading.outline.title;
  if (title === undefined || title.trim() === '')
    throw new UsageError(`"${name}" has no title beside its section number; give it with --title.`);
  await deliver(await print({ file, reading, section, title }, format), output);
  return 0;
}
