/** The files of a library, each read once, whoever names it first. */
import { basename, relative, sep } from 'node:path';
import { isMarkdown, readMarkdownDocuments, readYamlDocuments } from './documents.js';
import type { FileReading } from './documents.js';
import { readText } from './folder.js';
import type { FileText } from './folder.js';
import type { Stdin } from './inputs.js';
import type { TargetFile } from './references.js';
import { sourceFile } from './source.js';
import type { ReadDocument, SourceFile } from './types.js';

/** A file that was read. */
export interface LoadedFile extends TargetFile {
  /** Absolute, links resolved. */
  readonly path: string;
  readonly reading: FileReading;
}

/** Reads files and keeps what they hold. Paths are absolute, with links resolved, so that a file has one path. */
export class Files {
  readonly #byPath = new Map<string, LoadedFile>();
  readonly #byDocument = new Map<ReadDocument, LoadedFile>();

  /**
   * @param root of the library; uris are relative to it
   * @param stdinPath path that standard input stands for, whatever the file on disk says
   */
  constructor(
    private readonly root: string,
    private readonly stdin: Stdin | undefined,
    private readonly stdinPath: string | undefined,
  ) {}

  all(): LoadedFile[] {
    return [...this.#byPath.values()];
  }

  /** The file a document stands in. */
  of(document: ReadDocument): LoadedFile | undefined {
    return this.#byDocument.get(document);
  }

  /**
   * A file that was read already or can be read without waiting; undefined for Markdown that is still to be read.
   *
   * @param named whether YAML of other purposes is reported
   */
  now(path: string, named: boolean): LoadedFile | undefined {
    const known = this.#byPath.get(path);
    if (known || isMarkdown(path)) return known;
    const text = this.#text(path);
    if (!('text' in text)) return this.#unreadable(path, text, named);
    const file = sourceFile(this.#uri(path), text.text);
    return this.#keep(path, file, readYamlDocuments(file, { named }));
  }

  /** A Markdown file, whose parser may have to be loaded first. */
  async later(path: string, named: boolean): Promise<LoadedFile> {
    const known = this.#byPath.get(path);
    if (known) return known;
    const text = this.#text(path);
    if (!('text' in text)) return this.#unreadable(path, text, named);
    const file = sourceFile(this.#uri(path), text.text);
    return this.#keep(path, file, await readMarkdownDocuments(file));
  }

  #unreadable(
    path: string,
    { code, message, isOurs }: Exclude<FileText, { readonly text: string }>,
    named: boolean,
  ): LoadedFile {
    const file = sourceFile(this.#uri(path), '');
    if (!named && !isOurs) return this.#keep(path, file, { documents: [], problems: [], isOurs: false });
    const problem = { code, message, file, span: { start: 0, end: 0 } };
    return this.#keep(path, file, { documents: [], problems: [problem], isOurs: true });
  }

  #keep(path: string, file: SourceFile, reading: FileReading): LoadedFile {
    const loaded = { path, file, reading, documents: reading.documents, isFaulty: reading.problems.length > 0 };
    this.#byPath.set(path, loaded);
    for (const document of reading.documents) this.#byDocument.set(document, loaded);
    return loaded;
  }

  #text(path: string): FileText {
    return path === this.stdinPath && this.stdin ? { text: this.stdin.text } : readText(path);
  }

  #uri(path: string): string {
    if (path === this.stdinPath && this.stdin?.name === undefined) return '-';
    return relative(this.root, path).split(sep).join('/') || basename(path);
  }
}
