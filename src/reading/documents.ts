/**
 * One file to its checked documents.
 *
 * A document with a problem is left out and its problems are told; the others of the same file are read.
 */
import { Collected, isRecord } from './collected.js';
import type { ReadDocument, ReadingProblem, SourceFile } from './types.js';
import { readYaml } from './yaml.js';

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
/** A line that may be the header of a table of requirements. */
const TABLE_HEADER = /^(?=[^\n]*\|)(?=[^\n]*\brequirement\b)[^\n]*\b(?:property|characteristic)\b/im;
/** A line that begins with a `kind` entry, in any of the ways YAML and JSON write it. */
const KIND_LINE = /^[\s{,]*["']?kind["']?\s*:/m;
const CONTENT_LINE = /^[ \t]*[^#\s]/m;
/** Far longer than any specification section; the Markdown parser takes seconds for ten times as many. */
export const MAX_MARKDOWN_LINES = 20_000;

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
  const hasTables = TABLE_HEADER.test(file.text);
  if (!hasTables && !YAML_FENCE.test(file.text)) return NOT_OURS;
  const lines = file.text.split('\n').length;
  if (lines > MAX_MARKDOWN_LINES) {
    const message = `The file has ${lines} lines and the limit for Markdown is ${MAX_MARKDOWN_LINES}; split it into smaller files.`;
    return {
      documents: [],
      problems: [{ code: 'unsafe-content', message, file, span: { start: 0, end: 1 } }],
      isOurs: true,
    };
  }
  const { documentsOfMarkdown } = await import('./markdown-documents.js');
  return documentsOfMarkdown(file, hasTables);
}
