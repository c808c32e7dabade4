/**
 * What reading hands to the rest: checked plain data, and a way back to the exact place in the file.
 *
 * Offsets are UTF-16 code units into the text of the file (byte order mark removed), end exclusive. They
 * become lines and columns only where something is printed, in one function (`lineColumn` in `source.ts`).
 */

export const DOCUMENT_KINDS = ['detail', 'product', 'project', 'specification', 'submittal', 'settings'] as const;
export type DocumentKind = (typeof DOCUMENT_KINDS)[number];

export type PathStep = string | number;
/** From the root of the document: `['work', 2, 'ontoWall']`. */
export type Path = readonly PathStep[];

export interface Span {
  readonly start: number;
  readonly end: number;
}

export interface SourceFile {
  /** Relative to the library root, with `/`. `-` for standard input. */
  readonly uri: string;
  /** Without its byte order mark. */
  readonly text: string;
  /** The file on disk begins with a byte order mark; `lineColumn` then counts it on line 1. */
  readonly byteOrderMark?: true;
}

/** Which part of an entry is meant: its value (default), its key, or the whole `key: value` entry. */
export type Part = 'value' | 'key' | 'entry';

export interface ReadDocument {
  readonly kind: DocumentKind;
  /** The `id`; of a submittal its number; for documents without either (settings) the file's uri. */
  readonly id: string;
  readonly file: SourceFile;
  /** Plain, null-prototype records, arrays, strings, finite numbers, booleans and null. */
  readonly data: Readonly<Record<string, unknown>>;
  /** Where an entry stands in the file. For a path that does not exist: its nearest existing ancestor. */
  spanOf(path: Path, part?: Part): Span;
}

/** A place in a document that a result can point at. */
export interface Locus {
  readonly document: ReadDocument;
  readonly path: Path;
  readonly part?: Part;
  /** A stretch inside the scalar's own text, when only a word of it is meant. */
  readonly within?: Span;
}

/** Something that kept a document, or part of it, from being read. Reported under the rule id `document/<code>`. */
export interface ReadingProblem {
  readonly code:
    | 'unreadable-file'
    | 'malformed-yaml'
    | 'empty-file'
    | 'unknown-kind'
    | 'unknown-field'
    | 'missing-field'
    | 'wrong-value'
    | 'wrong-unit'
    | 'repeated-id'
    | 'unknown-reference'
    | 'circular-reference'
    | 'circular-precedence'
    | 'unknown-paragraph'
    | 'repeated-paragraph'
    | 'unsafe-content'
    | 'wrong-geometry';
  /** What was found, what is allowed, what to do. */
  readonly message: string;
  readonly file: SourceFile;
  readonly span: Span;
  readonly related?: readonly { readonly message: string; readonly file: SourceFile; readonly span: Span }[];
}
