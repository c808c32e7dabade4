/**
 * A library: the documents a person asked for, the documents those refer to, the settings, and what could not be
 * read. The only part of reading that others start from.
 */
import { realpathSync } from 'node:fs';
import { basename, dirname, relative, sep } from 'node:path';
import { isMarkdown, readMarkdownDocuments, readYamlDocuments } from './documents.js';
import type { FileReading } from './documents.js';
import { filesBelow, findRoot, readText } from './folder.js';
import type { Root } from './folder.js';
import { Ignored } from './ignored.js';
import { classify, filesOf } from './inputs.js';
import type { Input, Stdin } from './inputs.js';
import { Reaches } from './reach.js';
import type { Reach } from './reach.js';
import { ReferencePaths } from './reference-paths.js';
import { circleProblems, contentProblem, problemAt, referencesOf } from './references.js';
import type { FoundReference, TargetFile } from './references.js';
import { sourceFile } from './source.js';
import type { DocumentKind, ReadDocument, ReadingProblem, SourceFile } from './types.js';

export { UnusableInput } from './inputs.js';
export type { Reach } from './reach.js';

/** All documents that were read, and the ways between them. */
export interface Library {
  /** Absolute; uris are relative to it. */
  readonly root: string;
  /** In the order of their uris, by code unit. */
  readonly files: readonly SourceFile[];
  /** Those without problems, in the order of their files and of the text. */
  readonly documents: readonly ReadDocument[];
  /** `lapwright.yaml` at the root. */
  readonly settings?: ReadDocument;
  readonly problems: readonly ReadingProblem[];
  /** Remarks for the person who runs it: a folder without documents, a file that was left out. */
  readonly notices: readonly string[];
  /** Whether the document was asked for, and not only referred to. */
  reviewed(document: ReadDocument): boolean;
  /** What a detail can use, whatever else was asked for. */
  reach(detail: ReadDocument): Reach;
  /** A document with this id anywhere in what was read, to say where one stands that is out of reach. */
  elsewhere(kind: DocumentKind, id: string): ReadDocument | undefined;
}

export interface LibraryOptions {
  /** Folder that relative inputs count from. */
  readonly cwd: string;
  readonly stdin?: Stdin;
  /** Pass over named files that are not meant for Lapwright, as a scan of a folder does. */
  readonly skipOthers?: boolean;
  /** Also read all other documents of the library, without marking them as asked for. */
  readonly whole?: boolean;
}

/**
 * Reads a library.
 *
 * @param inputs files, folders, patterns or `-`; folders are searched for `.yaml`, `.yml`, `.json` and Markdown
 * @returns the same whatever the working directory and the order of the inputs, once the first one has told the root
 * @throws UnusableInput when an input does not exist or is of a kind that is not read
 */
export async function loadLibrary(inputs: readonly string[], options: LibraryOptions): Promise<Library> {
  const classified = classify(inputs, options.cwd, options.stdin);
  const root = rootOf(classified, options.cwd);
  const loader = new Loader(root, options);
  await loader.readSettings();
  await loader.readInputs(classified);
  await loader.readReferences();
  return loader.library();
}

function rootOf(inputs: readonly Input[], cwd: string): Root {
  const folders = inputs.map(({ folder }) => folder);
  const [first = realpathSync(cwd)] = folders;
  let common = first;
  while (folders.some((folder) => folder !== common && !folder.startsWith(common.endsWith(sep) ? common : common + sep))) common = dirname(common);
  return findRoot(first, common);
}

interface LoadedFile extends TargetFile {
  readonly path: string;
  readonly reading: FileReading;
}

class Loader {
  readonly #files = new Map<string, LoadedFile>();
  readonly #fileOf = new Map<ReadDocument, LoadedFile>();
  readonly #asked = new Set<LoadedFile>();
  readonly #found = new Map<ReadDocument, FoundReference[]>();
  readonly #problems: ReadingProblem[] = [];
  readonly #notices = new Set<string>();
  readonly #root: string;
  #ignored: Ignored;
  #settings: ReadDocument | undefined;
  /** Path that standard input stands for, whatever the file on disk says. */
  #stdinPath: string | undefined;

  constructor(
    private readonly place: Root,
    private readonly options: LibraryOptions,
  ) {
    this.#root = place.root;
    this.#ignored = new Ignored(place.repository, place.root, []);
  }

  async readSettings(): Promise<void> {
    const { settingsPath, repository } = this.place;
    if (settingsPath === undefined) return;
    const loaded = await this.#load(settingsPath, true);
    const [settings, second] = loaded.documents.filter(({ kind }) => kind === 'settings');
    if (second) {
      this.#problems.push(problemAtKind(second, 'repeated-id', 'A library has one settings document; join this one with the first.'));
    } else if (!settings && !loaded.isFaulty && loaded.documents[0]) {
      this.#problems.push(problemAtKind(loaded.documents[0], 'unknown-kind', `${loaded.file.uri} is kept for the settings of the library; begin it with "kind: settings", or rename the file.`));
    }
    if (!settings) return;
    this.#settings = settings;
    const patterns = settings.data['ignore'];
    if (Array.isArray(patterns)) this.#ignored = new Ignored(repository, this.#root, patterns.filter((pattern) => typeof pattern === 'string'));
  }

  async readInputs(inputs: readonly Input[]): Promise<void> {
    const stdin = inputs.find(({ type }) => type === 'stdin');
    if (stdin?.type === 'stdin') this.#stdinPath = stdin.path;
    const isNamed = this.options.skipOthers !== true;
    for (const input of inputs) {
      const paths = filesOf(input, this.#root, this.#ignored, this.#notices).sort(byCodeUnit);
      let count = 0;
      for (const path of paths) {
        const markdown = isMarkdown(path);
        const loaded = this.#loadNow(path, isNamed && input.type !== 'folder' && input.type !== 'pattern') ?? (await this.#load(path, isNamed));
        this.#asked.add(loaded);
        if (loaded.reading.isOurs) count += 1;
        else if (markdown && input.type === 'file' && isNamed) this.#notices.add(`No Lapwright documents found in ${input.written}; in Markdown a document is a block that begins with "yaml" and its kind.`);
      }
      if (input.type === 'folder' && count === 0 && !this.#ignored.folder(input.path)) {
        this.#notices.add(`No Lapwright documents found under ${input.written}; a document starts with "kind:", for example "kind: detail".`);
      }
    }
    if (this.options.whole !== true) return;
    for (const path of filesBelow(this.#root, this.#root, this.#ignored, this.#notices).sort(byCodeUnit)) {
      if (!this.#loadNow(path, false)) await this.#load(path, false);
    }
  }

  /** Follows references from all documents read so far, and from those they lead to. */
  async readReferences(): Promise<void> {
    const paths = new ReferencePaths(this.#root, this.#ignored, this.#notices);
    const open = [...this.#files.values()];
    const queued = new Set(open);
    for (let at = 0; at < open.length; at++) {
      const loaded = open[at];
      for (const document of loaded?.documents ?? []) {
        const found: FoundReference[] = [];
        for (const reference of referencesOf(document)) {
          const resolved = paths.resolve(dirname(loaded?.path ?? ''), reference.text);
          if ('code' in resolved) {
            this.#problems.push(problemAt(reference, resolved.code, resolved.message));
            continue;
          }
          const targets: LoadedFile[] = [];
          for (const path of resolved.paths) {
            const target = this.#loadNow(path, false) ?? (await this.#load(path, false));
            if (target === loaded && resolved.isGlob) continue;
            targets.push(target);
            if (!queued.has(target)) open.push(target);
            queued.add(target);
          }
          found.push({ ...reference, isGlob: resolved.isGlob, targets });
        }
        if (found.length > 0) this.#found.set(document, found);
      }
    }
  }

  library(): Library {
    const loaded = [...new Set(this.#files.values())].sort((a, b) => byCodeUnit(a.file.uri, b.file.uri));
    const documents = loaded.flatMap((file) => file.documents);
    const reaches = new Reaches((document) => this.#fileOf.get(document), this.#found, this.#settings);
    const found = documents.flatMap((document) => this.#found.get(document) ?? []);
    for (const document of documents) {
      if (document.kind === 'settings' && document !== this.#settings && this.#asked.has(this.#fileOf.get(document) as LoadedFile)) {
        this.#notices.add(`${document.file.uri} holds settings that have no effect; settings are read from lapwright.yaml at the root of the library.`);
      }
    }
    const problems = [
      ...loaded.flatMap(({ reading }) => reading.problems),
      ...this.#problems,
      ...found.flatMap((reference) => contentProblem(reference) ?? []),
      ...circleProblems(documents, this.#found),
      ...reaches.repeatedIds(documents.filter(({ kind }) => kind === 'detail')),
    ];
    problems.sort((a, b) => byCodeUnit(a.file.uri, b.file.uri) || a.span.start - b.span.start || byCodeUnit(a.code, b.code) || byCodeUnit(a.message, b.message));
    const byId = new Map<string, ReadDocument>();
    for (const document of documents) {
      const key = `${document.kind}\0${document.id}`;
      if (!byId.has(key)) byId.set(key, document);
    }
    const asked = new Set([...this.#asked].flatMap((file) => file.documents));
    return {
      root: this.#root,
      files: loaded.filter(({ reading }) => reading.isOurs).map(({ file }) => file),
      documents,
      ...(this.#settings && { settings: this.#settings }),
      problems,
      notices: [...this.#notices].map((notice) => notice.replaceAll(this.#root + sep, '')),
      reviewed: (document) => asked.has(document),
      reach: (detail) => reaches.of(detail),
      elsewhere: (kind, id) => byId.get(`${kind}\0${id}`),
    };
  }

  /** A file that is read already or needs no waiting; undefined for Markdown that is still to be read. */
  #loadNow(path: string, named: boolean): LoadedFile | undefined {
    return this.#files.get(path) ?? (isMarkdown(path) ? undefined : this.#keep(path, named));
  }

  async #load(path: string, named: boolean): Promise<LoadedFile> {
    const known = this.#loadNow(path, named);
    if (known) return known;
    const text = this.#text(path);
    const file = sourceFile(this.#uri(path), 'text' in text ? text.text : '');
    return this.#store(path, file, 'text' in text ? await readMarkdownDocuments(file) : unreadable(file, text, named));
  }

  #keep(path: string, named: boolean): LoadedFile {
    const text = this.#text(path);
    const file = sourceFile(this.#uri(path), 'text' in text ? text.text : '');
    return this.#store(path, file, 'text' in text ? readYamlDocuments(file, { named }) : unreadable(file, text, named));
  }

  #store(path: string, file: SourceFile, reading: FileReading): LoadedFile {
    const loaded = { path, file, reading, documents: reading.documents, isFaulty: reading.problems.length > 0 };
    this.#files.set(path, loaded);
    for (const document of reading.documents) this.#fileOf.set(document, loaded);
    return loaded;
  }

  #text(path: string): ReturnType<typeof readText> {
    return path === this.#stdinPath && this.options.stdin ? { text: this.options.stdin.text } : readText(path);
  }

  #uri(path: string): string {
    if (path === this.#stdinPath && this.options.stdin?.name === undefined) return '-';
    return relative(this.#root, path).split(sep).join('/') || basename(path);
  }
}

function unreadable(file: SourceFile, { code, message, isOurs }: Exclude<ReturnType<typeof readText>, { readonly text: string }>, named: boolean): FileReading {
  if (!named && !isOurs) return { documents: [], problems: [], isOurs: false };
  return { documents: [], problems: [{ code, message, file, span: { start: 0, end: 0 } }], isOurs: true };
}

function problemAtKind(document: ReadDocument, code: ReadingProblem['code'], message: string): ReadingProblem {
  return { code, message, file: document.file, span: document.spanOf(['kind']) };
}

function byCodeUnit(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
