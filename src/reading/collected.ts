/** The documents of one file, each held against the schema of its kind, and the problems of those that are left out. */
import { nearest } from './nearest.js';
import type { OffsetMap } from './offsets.js';
import { precedenceProblems } from './precedence.js';
import { DOCUMENT_KINDS } from './types.js';
import type { DocumentKind, Part, Path, ReadDocument, ReadingProblem, SourceFile, Span } from './types.js';
import { validateDocument } from './validate.js';
import { readYaml } from './yaml.js';
import type { YamlDocument } from './yaml.js';

/** What a file holds, gathered one document at a time. */
export class Collected {
  readonly documents: ReadDocument[] = [];
  readonly problems: ReadingProblem[] = [];

  constructor(private readonly file: SourceFile) {}

  /**
   * The documents of one Markdown block, which has told the kind already.
   *
   * @param completed adds to a document what stands elsewhere in the file
   */
  addBlock(
    kind: DocumentKind,
    wordSpan: Span,
    text: string,
    offsetMap: OffsetMap,
    completed: (document: YamlDocument) => YamlDocument = (document) => document,
  ): void {
    const reading = readYaml(this.file, text, offsetMap);
    this.problems.push(...reading.problems);
    if (reading.documents.length === 0 && reading.problems.length === 0) {
      this.#problem(
        'empty-file',
        `The ${kind} block is empty; write the document between the fences, or take the block out.`,
        wordSpan,
      );
    }
    for (const document of reading.documents) this.add(completed(document), { kind, span: wordSpan });
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
    if (kind === 'project' && this.problems.length === before)
      this.problems.push(...precedenceProblems({ data: whole, file: this.file, spanOf }));
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

/** Whether a document is made of entries. */
export function isRecord(data: unknown): data is Readonly<Record<string, unknown>> {
  return typeof data === 'object' && data !== null && !Array.isArray(data);
}

/** Says that a word is no kind of document, and which ones are. */
export function unknownKind(found: unknown): string {
  if (typeof found !== 'string') return `A kind is one word; write one of ${listOfKinds()}.`;
  const near = nearest(found, DOCUMENT_KINDS);
  return `${JSON.stringify(found.slice(0, 40))} is not a kind of document; write one of ${listOfKinds()}${near ? ` (nearest: ${near})` : ''}.`;
}

function listOfKinds(): string {
  return DOCUMENT_KINDS.join(', ');
}
