/**
 * A library: the documents a person asked for, the documents those refer to, the settings, and what could not be
 * read. The only part of reading that others start from.
 */
import { realpathSync } from 'node:fs';
import { dirname, sep } from 'node:path';
import { isMarkdown } from './documents.js';
import { Files } from './files.js';
import type { LoadedFile } from './files.js';
import { filesBelow, findRoot } from './folder.js';
import type { Root } from './folder.js';
import { Ignored } from './ignored.js';
import { classify, filesOf } from './inputs.js';
import type { Input, Stdin } from './inputs.js';
import { Reaches } from './reach.js';
import type { Reach } from './reach.js';
import { ReferencePaths } from './reference-paths.js';
import { circleProblems, contentProblem, problemAt, referencesOf } from './references.js';
import type { FoundReference } from './references.js';
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
  /** The details that a submittal names by files, in the order of their files; empty when it names none so. */
  detailsNamed(submittal: ReadDocument): readonly ReadDocument[];
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
  const [stdinPath] = classified.flatMap((input) => (input.type === 'stdin' ? [input.path] : []));
  const loader = new Loader(root, options, stdinPath);
  loader.readSettings();
  await loader.readInputs(classified);
  await loader.readReferences();
  return loader.library();
}

function rootOf(inputs: readonly Input[], cwd: string): Root {
  const folders = inputs.map(({ folder }) => folder);
  const [first = realpathSync(cwd)] = folders;
  let common = first;
  while (
    folders.some((folder) => folder !== common && !folder.startsWith(common.endsWith(sep) ? common : common + sep))
  )
    common = dirname(common);
  return findRoot(first, common);
}

class Loader {
  readonly #files: Files;
  readonly #asked = new Set<LoadedFile>();
  readonly #found = new Map<ReadDocument, FoundReference[]>();
  readonly #problems: ReadingProblem[] = [];
  readonly #notices = new Set<string>();
  readonly #root: string;
  #ignored: Ignored;
  #settings: ReadDocument | undefined;

  constructor(
    private readonly place: Root,
    private readonly options: LibraryOptions,
    stdinPath: string | undefined,
  ) {
    this.#files = new Files(place.root, options.stdin, stdinPath);
    this.#root = place.root;
    this.#ignored = new Ignored(place.repository, place.root, []);
  }

  readSettings(): void {
    const { settingsPath, repository } = this.place;
    if (settingsPath === undefined) return;
    const loaded = this.#files.now(settingsPath, true);
    if (!loaded) return;
    const [settings, second] = loaded.documents.filter(({ kind }) => kind === 'settings');
    if (second) {
      this.#problems.push(
        problemAtKind(second, 'repeated-id', 'A library has one settings document; join this one with the first.'),
      );
    } else if (!settings && !loaded.isFaulty && loaded.documents[0]) {
      this.#problems.push(
        problemAtKind(
          loaded.documents[0],
          'unknown-kind',
          `${loaded.file.uri} is kept for the settings of the library; begin it with "kind: settings", or rename the file.`,
        ),
      );
    }
    if (!settings) return;
    this.#settings = settings;
    const patterns = settings.data['ignore'];
    if (Array.isArray(patterns))
      this.#ignored = new Ignored(
        repository,
        this.#root,
        patterns.filter((pattern) => typeof pattern === 'string'),
      );
  }

  async readInputs(inputs: readonly Input[]): Promise<void> {
    const isNamed = this.options.skipOthers !== true;
    for (const input of inputs) {
      const paths = filesOf(input, this.#root, this.#ignored, this.#notices).sort(byCodeUnit);
      let count = 0;
      for (const path of paths) {
        const markdown = isMarkdown(path);
        const named = isNamed && (input.type === 'file' || input.type === 'stdin');
        const loaded = this.#files.now(path, named) ?? (await this.#files.later(path, named));
        this.#asked.add(loaded);
        if (loaded.reading.isOurs) count += 1;
        else if (markdown && input.type === 'file' && isNamed)
          this.#notices.add(
            `No Lapwright documents found in ${input.written}; in Markdown a document is a block that begins with "yaml" and its kind.`,
          );
      }
      if (input.type === 'folder' && count === 0 && !this.#ignored.folder(input.path)) {
        this.#notices.add(
          `No Lapwright documents found under ${input.written}; a document starts with "kind:", for example "kind: detail".`,
        );
      }
    }
    if (this.options.whole !== true) return;
    for (const path of filesBelow(this.#root, this.#root, this.#ignored, this.#notices).sort(byCodeUnit)) {
      if (!this.#files.now(path, false)) await this.#files.later(path, false);
    }
  }

  /** Follows references from all documents read so far, and from those they lead to. */
  async readReferences(): Promise<void> {
    const paths = new ReferencePaths(this.#root, this.#ignored, this.#notices);
    const open = this.#files.all();
    const queued = new Set(open);
    for (let at = 0; at < open.length; at++) {
      const loaded = open[at];
      for (const document of loaded?.documents ?? []) {
        const found: FoundReference[] = [];
        for (const reference of referencesOf(document, loaded?.documents)) {
          const resolved = paths.resolve(dirname(loaded?.path ?? ''), reference.text);
          if ('code' in resolved) {
            this.#problems.push(problemAt(reference, resolved.code, resolved.message));
            continue;
          }
          const targets: LoadedFile[] = [];
          for (const path of resolved.paths) {
            const target = this.#files.now(path, false) ?? (await this.#files.later(path, false));
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
    const loaded = this.#files.all().sort((a, b) => byCodeUnit(a.file.uri, b.file.uri));
    const documents = loaded.flatMap((file) => file.documents);
    const asked = new Set([...this.#asked].flatMap((file) => file.documents));
    const reaches = new Reaches((document) => this.#files.of(document), this.#found, this.#settings);
    const found = documents.flatMap((document) => this.#found.get(document) ?? []);
    for (const document of documents) {
      if (document.kind === 'settings' && document !== this.#settings && asked.has(document)) {
        this.#notices.add(
          `${document.file.uri} holds settings that have no effect; settings are read from lapwright.yaml at the root of the library.`,
        );
      }
    }
    const problems = [
      ...loaded.flatMap(({ reading }) => reading.problems),
      ...this.#problems,
      ...found.flatMap((reference) => contentProblem(reference) ?? []),
      ...circleProblems(documents, this.#found),
      ...reaches.repeatedIds(documents.filter(({ kind }) => kind === 'detail')),
    ];
    problems.sort(
      (a, b) =>
        byCodeUnit(a.file.uri, b.file.uri) ||
        a.span.start - b.span.start ||
        byCodeUnit(a.code, b.code) ||
        byCodeUnit(a.message, b.message),
    );
    const byId = new Map<string, ReadDocument>();
    for (const document of documents) {
      const key = `${document.kind}\0${document.id}`;
      if (!byId.has(key)) byId.set(key, document);
    }
    return {
      root: this.#root,
      files: loaded.filter(({ reading }) => reading.isOurs).map(({ file }) => file),
      documents,
      ...(this.#settings && { settings: this.#settings }),
      problems,
      notices: [...this.#notices].map((notice) => notice.replaceAll(this.#root + sep, '')),
      reviewed: (document) => asked.has(document),
      reach: (detail) => reaches.of(detail),
      detailsNamed: (submittal) => {
        const named = (this.#found.get(submittal) ?? []).filter(({ path }) => path[0] === 'details');
        const held = new Set(named.flatMap(({ targets }) => targets.flatMap((target) => target.documents)));
        return documents.filter((document) => document.kind === 'detail' && held.has(document));
      },
      elsewhere: (kind, id) => byId.get(`${kind}\0${id}`),
    };
  }
}

function problemAtKind(document: ReadDocument, code: ReadingProblem['code'], message: string): ReadingProblem {
  return { code, message, file: document.file, span: document.spanOf(['kind']) };
}

function byCodeUnit(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
