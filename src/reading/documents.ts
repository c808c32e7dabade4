/**
 * One file to its checked documents.
 *
 * A document with a problem is left out and its problems are told; the others of the same file are read.
 */
import { editDistance, nearest } from './nearest.js';
import type { OffsetMap } from './offsets.js';
import { DOCUMENT_KINDS } from './types.js';
import type { DocumentKind, Part, Path, ReadDocument, ReadingProblem, SourceFile, Span } from './types.js';
import { validateDocument } from './validate.js';
import { readYaml } from './yaml.js';
import type { YamlDocument } from './yaml.js';

/** What one file holds. */
export interface FileReading {
  readonly documents: readonly ReadDocument[];
  readonly problems: readonly ReadingProblem[];
  /** The file is meant for Lapwright, even if all its documents have problems. */
  readonly isOurs: boolean;
}

export interface ReadOptions {
  /**
   * The file was asked for by name, or refers to itself as ours by standing in another document. YAML files of
   * other purposes (nothing in them has a `kind`) are then reported instead of passed over.
   */
  readonly named: boolean;
}

/** Endings of the files that are read. */
export const EXTENSIONS = ['.yaml', '.yml', '.json', '.md', '.markdown'] as const;

const NOT_OURS: FileReading = { documents: [], problems: [], isOurs: false };
const MARKDOWN = /\.(?:md|markdown)$/i;
const YAML_FENCE = /(?:`{3}|~{3})[ \t]*ya?ml[ \t]+\S/i;
/** A line that begins with a `kind` entry, in any of the ways YAML and JSON write it. */
const KIND_LINE = /^[\s{,]*["']?kind["']?\s*:/m;
const CONTENT_LINE = /^[ \t]*[^#\s]/m;
/** Far longer than any specification section; the Markdown parser takes seconds for ten times as many. */
export const MAX_MARKDOWN_LINES = 20_000;
/** A second word in an info string that is this near to a kind is one, misspelled. */
const MISSPELLED = 2;

/**
 * Reads a file of any kind that is read: YAML, JSON (which is YAML) or Markdown with YAML blocks.
 *
 * @param file the file; its uri's ending decides how it is read
 * @returns documents without problems, and the problems of the others
 */
export async function readDocuments(file: SourceFile, options: ReadOptions): Promise<FileReading> {
  return isMarkdown(file.uri) ? readMarkdownDocuments(file) : readYamlDocuments(file, options);
}

/** Whether a file is read as Markdown. */
export function isMarkdown(uri: string): boolean {
  return MARKDOWN.test(uri);
}

/** Reads a YAML or JSON file; not asynchronous, so that a folder of thousands waits for nothing. */
export function readYamlDocuments(file: SourceFile, { named }: ReadOptions): FileReading {
  const { text } = file;
  // Whatever has no `kind` in it needs no parsing to be known as another program's file.
  if (!named && !text.includes('kind') && CONTENT_LINE.test(text)) return NOT_OURS;
  const reading = readYaml(file, text);
  const mentionsKind = KIND_LINE.test(text);
  if (reading.documents.length === 0) {
    if (reading.problems.length > 0)
      return named || mentionsKind ? { documents: [], problems: reading.problems, isOurs: true } : NOT_OURS;
    const message = `The file is empty or holds only comments; a document begins with "kind:", for example "kind: detail".`;
    return {
      documents: [],
      problems: [{ code: 'empty-file', message, file, span: { start: 0, end: 0 } }],
      isOurs: true,
    };
  }
  const isOurs =
    named ||
    reading.documents.some(({ data }) => (data === undefined ? mentionsKind : isRecord(data) && 'kind' in data));
  if (!isOurs) return NOT_OURS;
  const collected = new Collected(file);
  collected.problems.push(...reading.problems);
  for (const document of reading.documents) collected.add(document);
  return { documents: collected.documents, problems: collected.problems, isOurs };
}

/** Reads the YAML blocks of a Markdown file; the Markdown parser is loaded only when there is one. */
export async function readMarkdownDocuments(file: SourceFile): Promise<FileReading> {
  if (!YAML_FENCE.test(file.text)) return NOT_OURS;
  const lines = file.text.split('\n').length;
  if (lines > MAX_MARKDOWN_LINES) {
    const message = `The file has ${lines} lines and the limit for Markdown is ${MAX_MARKDOWN_LINES}; split it into smaller files.`;
    return {
      documents: [],
      problems: [{ code: 'unsafe-content', message, file, span: { start: 0, end: 1 } }],
      isOurs: true,
    };
  }
  const { yamlBlocks } = await import('./markdown.js');
  const collected = new Collected(file);
  let isOurs = false;
  for (const { word, wordSpan, text, offsetMap } of yamlBlocks(file.text)) {
    const kind = DOCUMENT_KINDS.find((known) => known === word);
    if (kind) collected.addBlock(kind, wordSpan, text, offsetMap);
    else if (DOCUMENT_KINDS.some((known) => editDistance(word.toLowerCase(), known) <= MISSPELLED)) {
      collected.problems.push({ code: 'unknown-kind', message: unknownKind(word), file, span: wordSpan });
    } else continue;
    isOurs = true;
  }
  return { documents: collected.documents, problems: collected.problems, isOurs };
}

class Collected {
  readonly documents: ReadDocument[] = [];
  readonly problems: ReadingProblem[] = [];

  constructor(private readonly file: SourceFile) {}

  /** The documents of one Markdown block, which has told the kind already. */
  addBlock(kind: DocumentKind, wordSpan: Span, text: string, offsetMap: OffsetMap): void {
    const reading = readYaml(this.file, text, offsetMap);
    this.problems.push(...reading.problems);
    if (reading.documents.length === 0 && reading.problems.length === 0) {
      this.#problem(
        'empty-file',
        `The ${kind} block is empty; write the document between the fences, or take the block out.`,
        wordSpan,
      );
    }
    for (const document of reading.documents) this.add(document, { kind, span: wordSpan });
  }

  /** One document; `fence` is what the info string of a Markdown block says. */
  add(document: YamlDocument, fence?: { readonly kind: DocumentKind; readonly span: Span }): void {
    const { data } = document;
    const before = this.problems.length;
    this.problems.push(
      ...document.problems.map(({ code, message, file, span, related }) => ({
        code,
        message,
        file,
        span,
        ...(related && { related }),
      })),
    );
    if (data === undefined) return;
    if (!isRecord(data)) {
      const found = Array.isArray(data) ? 'a list' : 'a single value';
      this.#problem(
        'unknown-kind',
        `A document is made of entries and begins with "kind:"; ${found} was found.`,
        document.spanOf([]),
      );
      return;
    }
    const kind = this.#kind(data, document, fence);
    if (!kind) return;
    const hasKind = 'kind' in data;
    const whole = hasKind ? data : Object.assign({ __proto__: null }, { kind }, data);
    // Without a `kind` entry, the info string is what stands for the whole document.
    const spanOf =
      hasKind || !fence
        ? (path: Path, part?: Part) => document.spanOf(path, part)
        : (path: Path, part?: Part) =>
            path.length === 0 || !((path[0] ?? '') in data) ? fence.span : document.spanOf(path, part);

    const refused = document.problems.flatMap(({ path }) => (path ? [path] : []));
    for (const { code, path, part, message } of validateDocument(kind, whole)) {
      // A value that was refused as it was read has its message already.
      if (!refused.some((prefix) => prefix.every((step, index) => path[index] === step)))
        this.#problem(code, message, spanOf(path, part));
    }
    if (this.problems.length > before) return;
    const name = data[kind === 'submittal' ? 'number' : 'id'];
    const id = typeof name === 'string' && name !== '' ? name : this.file.uri;
    this.documents.push({ kind, id, file: this.file, data: whole, spanOf });
  }

  #kind(
    data: Readonly<Record<string, unknown>>,
    document: YamlDocument,
    fence?: { readonly kind: DocumentKind },
  ): DocumentKind | undefined {
    if (!('kind' in data)) {
      if (!fence)
        this.#problem(
          'unknown-kind',
          `The document has no kind; begin it with "kind:" and one of ${listOfKinds()}.`,
          document.spanOf([]),
        );
      return fence?.kind;
    }
    if (document.problems.some(({ path }) => path?.[0] === 'kind')) return undefined;
    const kind = DOCUMENT_KINDS.find((known) => known === data['kind']);
    if (!kind) this.#problem('unknown-kind', unknownKind(data['kind']), document.spanOf(['kind']));
    else if (fence && fence.kind !== kind) {
      const message = `The block begins as "yaml ${fence.kind}" and its kind is ${kind}; make the two agree, or take the kind entry out.`;
      this.#problem('unknown-kind', message, document.spanOf(['kind']));
      return undefined;
    }
    return kind;
  }

  #problem(code: ReadingProblem['code'], message: string, span: Span): void {
    this.problems.push({ code, message, file: this.file, span });
  }
}

function isRecord(data: unknown): data is Readonly<Record<string, unknown>> {
  return typeof data === 'object' && data !== null && !Array.isArray(data);
}

function unknownKind(found: unknown): string {
  if (typeof found !== 'string') return `A kind is one word; write one of ${listOfKinds()}.`;
  const near = nearest(found, DOCUMENT_KINDS);
  return `${JSON.stringify(found.slice(0, 40))} is not a kind of document; write one of ${listOfKinds()}${near ? ` (nearest: ${near})` : ''}.`;
}

function listOfKinds(): string {
  return DOCUMENT_KINDS.join(', ');
}
