/**
 * YAML text to plain data with positions. The only module that knows the YAML library.
 *
 * What the documents have no use for and what harms is refused before the library builds anything from it:
 * huge texts, deep nesting (which makes the library abort the process), anchors, aliases, merge keys, tags and
 * directives. No option lifts these limits.
 */
import { Composer, Lexer, Parser, isMap, isScalar, isSeq } from 'yaml';
import type { CST, Document, Scalar, YAMLMap, YAMLSeq } from 'yaml';
import { lineAround, mapSpan, trimmedEnd, visibleSpan } from './offsets.js';
import type { OffsetMap } from './offsets.js';
import { entryName, plainValue } from './plain-scalar.js';
import { LIST, MAP, SCALAR, SpanRows } from './spans.js';
import { syntaxSentence, unsafeSentence } from './yaml-messages.js';
import { SCALAR_FOLLOWS, firstFault, openedAt } from './yaml-faults.js';
import type { Fault } from './yaml-faults.js';
import type { Part, Path, PathStep, ReadingProblem, SourceFile, Span } from './types.js';

/** One file; a detail takes a few kilobytes, a long specification section some hundred. */
export const MAX_BYTES = 1024 * 1024;
/** Maps and lists inside each other. The documents need about eight; the library fails near 900. */
export const MAX_DEPTH = 64;
/** Values, keys, and the brackets and commas between them, of one file; a detail has a few hundred. */
export const MAX_NODES = 100_000;

/** A problem of the writing. With a path: only the value there is missing, all else can still be checked. */
export interface YamlProblem extends ReadingProblem {
  readonly path?: Path;
}

/** One document of a YAML text. */
export interface YamlDocument {
  /** Null-prototype records, arrays, strings, finite numbers, truth values and null; undefined when not sound. */
  readonly data: unknown;
  /** As `ReadDocument.spanOf`, in offsets of the file; `SpanTable.spanOf` says what each part covers. */
  spanOf(path: Path, part?: Part): Span;
  readonly problems: readonly YamlProblem[];
}

/** All documents of one YAML text. Empty ones are left out. */
export interface YamlReading {
  readonly documents: readonly YamlDocument[];
  /** Why nothing could be read at all. */
  readonly problems: readonly ReadingProblem[];
}

/** Scalars come as text: what they mean is decided in `plain-scalar.ts`. */
const COMPOSE = { schema: 'failsafe', uniqueKeys: false, prettyErrors: false, logLevel: 'silent' } as const;

/**
 * Reads all documents of a YAML text (`---` stands between them).
 *
 * @param file the file that problems and spans point into
 * @param text the YAML: the text of the file, or a part cut out of it
 * @param offsetMap from an offset in `text` to one in `file.text`; left out when they are the same
 * @returns one entry for each document. Syntax faults (the first one only, the others follow from it) and
 *   unsafe content leave `data` undefined; a refused number or name leaves only that value out.
 * @see YAML 1.2.2 section 10.3 (core schema)
 */
export function readYaml(file: SourceFile, text: string, offsetMap: OffsetMap = (offset) => offset): YamlReading {
  const refuse = (message: string, offset: number): YamlReading => {
    const span = mapSpan(offsetMap, visibleSpan(text, offset, offset + 1));
    return { documents: [], problems: [{ code: 'unsafe-content', message, file, span }] };
  };
  // A code unit takes three bytes at most: only near the limit must bytes be counted.
  const bytes = text.length * 3 > MAX_BYTES ? Buffer.byteLength(text) : 0;
  if (bytes > MAX_BYTES) return refuse(tooLarge(bytes), 0);
  const lexed = lex(text);
  if ('refused' in lexed) return refuse(lexed.refused, lexed.offset);

  const documents: YamlDocument[] = [];
  let behind = 0;
  for (const parsed of new Composer(COMPOSE).compose(lexed.tokens)) {
    const from = behind;
    behind = parsed.range[2];
    const marks = lexed.marks.filter(({ offset }) => offset >= from && offset < behind);
    if (marks.length === 0 && parsed.errors.length === 0 && isEmpty(parsed.contents)) continue;
    documents.push(new Reader(file, text, offsetMap).read(parsed, marks));
  }
  const [stray] = lexed.marks.filter(({ offset }) => offset >= behind);
  return stray
    ? { documents, problems: refuse(unsafeSentence(stray.source), stray.offset).problems }
    : { documents, problems: [] };
}

/** The message for a file over the size limit; such a file is reported without being read. */
export function tooLarge(bytes: number): string {
  return `The file has ${bytes} bytes and the limit is ${MAX_BYTES}; split it into smaller files.`;
}

/** An anchor, alias, tag or directive as it stands in the text. */
interface Mark {
  readonly offset: number;
  readonly source: string;
}
type Lexed =
  | { readonly tokens: CST.Token[]; readonly marks: readonly Mark[] }
  | { readonly refused: string; readonly offset: number };

/** First characters of lexemes that are counted (ends too: a thousand stray ones cost as much), and of those refused. */
const COUNTED = new Set([SCALAR_FOLLOWS, '"', "'", '-', '[', '{', ',', ']', '}', '.']);
const REFUSED = new Set(['&', '*', '!', '%']);
/** So many problems of one document are told; of a hostile text there could be as many as it has values. */
const MOST_PROBLEMS = 100;
/** So many refused marks are each reported; of a text with more only the first is. */
const MAX_MARKS = 20;

/** Tokens of the text, counted while they come, so that a hostile text is left before it does harm. */
function lex(text: string): Lexed {
  const parser = new Parser();
  const tokens: CST.Token[] = [];
  const marks: Mark[] = [];
  let nodes = 0;
  let isScalarText = false;
  for (const lexeme of new Lexer().lex(text)) {
    const first: string = isScalarText ? '' : lexeme.charAt(0);
    isScalarText = first === SCALAR_FOLLOWS;
    if (COUNTED.has(first)) nodes += 1;
    else if (REFUSED.has(first)) marks.push({ offset: parser.offset, source: lexeme });
    const [firstMark] = marks;
    if (firstMark && marks.length > MAX_MARKS)
      return { refused: unsafeSentence(firstMark.source), offset: firstMark.offset };
    for (const token of parser.next(lexeme)) tokens.push(token);
    // The stack holds the document, the open collections and at times a scalar.
    if (parser.stack.length > MAX_DEPTH + 1 && parser.stack.filter(isCollection).length > MAX_DEPTH) {
      return {
        refused: `More than ${MAX_DEPTH} maps and lists stand inside each other here; write it flatter.`,
        offset: parser.offset,
      };
    }
    if (nodes > MAX_NODES)
      return {
        refused: `The file has more than ${MAX_NODES} values, names and commas; split it into smaller files.`,
        offset: parser.offset,
      };
  }
  for (const token of parser.end()) tokens.push(token);
  return { tokens, marks };
}

function isCollection({ type }: CST.Token): boolean {
  return type === 'block-map' || type === 'block-seq' || type === 'flow-collection';
}

function isEmpty(contents: unknown): boolean {
  return contents === null || (isScalar(contents) && contents.type === 'PLAIN' && contents.source === '');
}

interface Ranged {
  readonly range?: readonly [number, number, number] | null | undefined;
}

/** Turns one composed document into data, positions and problems, in one walk. */
class Reader {
  readonly #rows = new SpanRows();
  readonly #problems: YamlProblem[] = [];
  readonly #path: PathStep[] = [];
  #isSound = true;
  /** Offset behind the last visible character of the value read last. */
  #end = 0;

  constructor(
    private readonly file: SourceFile,
    private readonly text: string,
    private readonly offsetMap: OffsetMap,
  ) {}

  read(parsed: Document.Parsed, marks: readonly Mark[]): YamlDocument {
    const data = this.#value(parsed.contents, '', -1, -1);
    const table = this.#rows.table(this.text);
    const { offsetMap } = this;
    const spanOf = (path: Path, part?: Part): Span => mapSpan(offsetMap, table.spanOf(path, part));
    const fault = firstFault<Fault>(parsed.errors);
    if (marks.length > 0 || fault) {
      this.#problems.length = 0;
      this.#isSound = false;
      for (const { offset, source } of marks)
        this.#report('unsafe-content', unsafeSentence(source), offset, offset + source.length);
      if (fault && marks.length === 0) this.#fault(fault);
    }
    return { data: this.#isSound ? data : undefined, spanOf, problems: this.#problems };
  }

  #value(node: unknown, step: PathStep, keyStart: number, keyEnd: number): unknown {
    if (isMap(node)) return this.#map(node, step, keyStart, keyEnd);
    if (isSeq(node)) return this.#list(node, step, keyStart, keyEnd);
    if (isScalar(node)) return this.#scalar(node, step, keyStart, keyEnd);
    // No value (`{ a, b }`), or an alias, which is refused as a whole.
    this.#end = Math.max(keyEnd, 0);
    this.#rows.close(this.#rows.open(step, keyStart, keyEnd, SCALAR, this.#end), this.#end);
    return null;
  }

  #map(node: YAMLMap, step: PathStep, keyStart: number, keyEnd: number): unknown {
    // A literal with a null prototype stays a fast object, Object.create(null) does not.
    const data = { __proto__: null } as unknown as Record<string, unknown>;
    const [start, closing] = rangeOf(node);
    const row = this.#rows.open(step, keyStart, keyEnd, MAP, start);
    this.#end = start;
    for (const item of node.items) {
      const name = this.#name(item.key, item.value);
      if (name === undefined) continue;
      const [nameStart, nameEnd] = rangeOf(item.key);
      if (name in data) {
        this.#repeated(node, name, nameStart, nameEnd);
        continue;
      }
      this.#path.push(name);
      data[name] = this.#value(item.value, name, nameStart, nameEnd);
      this.#path.pop();
    }
    if (node.flow === true) this.#end = closing;
    this.#rows.close(row, this.#end);
    return data;
  }

  #list(node: YAMLSeq, step: PathStep, keyStart: number, keyEnd: number): unknown {
    const data: unknown[] = [];
    const [start, closing] = rangeOf(node);
    const row = this.#rows.open(step, keyStart, keyEnd, LIST, start);
    this.#end = start;
    for (const item of node.items) {
      this.#path.push(data.length);
      data.push(this.#value(item, data.length, -1, -1));
      this.#path.pop();
    }
    if (node.flow === true) this.#end = closing;
    this.#rows.close(row, this.#end);
    return data;
  }

  #scalar(node: Scalar, step: PathStep, keyStart: number, keyEnd: number): unknown {
    const [start, written] = rangeOf(node);
    // Only a block scalar's range runs on over line ends.
    const end = node.type === 'PLAIN' ? written : trimmedEnd(this.text, start, written);
    this.#rows.close(this.#rows.open(step, keyStart, keyEnd, SCALAR, start), end);
    this.#end = Math.max(end, keyEnd);
    if (node.type !== 'PLAIN') return node.value;
    const plain = plainValue(node.source ?? '');
    if ('value' in plain) return plain.value;
    const message = `${plain.refused}; write a plain decimal number, or put it in quotes if it is a name or a text.`;
    this.#report('wrong-value', message, start, end, { path: [...this.#path] });
    return null;
  }

  /** The name of an entry; undefined when it cannot be one, which is then reported. */
  #name(key: unknown, value: unknown): string | undefined {
    const [start, end] = rangeOf(key);
    if (!isScalar(key)) {
      this.#refuse(
        'malformed-yaml',
        'A map or a list stands where the name of an entry is expected; write a word.',
        start,
        end,
      );
      return undefined;
    }
    const checked = entryName(String(key.value), key.type === 'PLAIN', value !== null);
    if ('name' in checked) return checked.name;
    if (checked.code === 'wrong-value') this.#report(checked.code, checked.message, start, end);
    else this.#refuse(checked.code, checked.message, start, end);
    return undefined;
  }

  #repeated(node: YAMLMap, name: string, start: number, end: number): void {
    if (this.#problems.length >= MOST_PROBLEMS) return; // The search below would take time of its own.
    const first = node.items.find(({ key }) => isScalar(key) && String(key.value) === name)?.key;
    const [firstStart, firstEnd] = rangeOf(first);
    const related = [{ message: `${name} stands here first`, file: this.file, span: this.#span(firstStart, firstEnd) }];
    this.#report('malformed-yaml', `${name} stands twice in the same map; keep one of the two.`, start, end, {
      related,
    });
  }

  #fault(fault: Fault): void {
    const opened = openedAt(new Lexer().lex(this.text), fault);
    const start = opened ?? fault.pos[0];
    const span = visibleSpan(this.text, start, opened === undefined ? fault.pos[1] : opened + 1);
    const message = syntaxSentence({
      code: fault.code,
      message: fault.message,
      line: lineAround(this.text, span.start),
      rest: this.text.slice(span.start, span.start + 80),
    });
    this.#report('malformed-yaml', message, span.start, span.end);
  }

  #refuse(code: ReadingProblem['code'], message: string, start: number, end: number): void {
    this.#isSound = false;
    this.#report(code, message, start, end);
  }

  #report(
    code: ReadingProblem['code'],
    message: string,
    start: number,
    end: number,
    more: Pick<YamlProblem, 'path' | 'related'> = {},
  ): void {
    if (this.#problems.length >= MOST_PROBLEMS) return;
    this.#problems.push({ code, message, file: this.file, span: this.#span(start, end), ...more });
  }

  #span(start: number, end: number): Span {
    return mapSpan(this.offsetMap, visibleSpan(this.text, start, end));
  }
}

function rangeOf(node: unknown): readonly [number, number] {
  const range = (node as Ranged | null | undefined)?.range;
  return range ? [range[0], range[1]] : [0, 0];
}
