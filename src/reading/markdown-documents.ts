/**
 * A Markdown file to its documents: YAML blocks, and the tables of requirements in the text of a section.
 *
 * Loaded only when a Markdown file with one of them is read.
 */
import { Collected, isRecord, unknownKind } from './collected.js';
import type { FileReading } from './documents.js';
import { markdownTree, yamlBlocks } from './markdown.js';
import { editDistance } from './nearest.js';
import { requirementRows, type RequirementRow } from './requirement-table.js';
import { outlinesOf, type SectionOutline } from './section-outline.js';
import { missingParagraphs, repeatedParagraphs } from './section-text.js';
import { DOCUMENT_KINDS } from './types.js';
import type { ReadingProblem, SourceFile, Span } from './types.js';
import type { YamlDocument } from './yaml.js';

/** A second word in an info string that is this near to a kind is one, misspelled. */
const MISSPELLED = 2;

/**
 * Reads a Markdown file.
 *
 * @param hasTables whether it may hold tables of requirements; what reads tables is loaded only then
 */
export async function documentsOfMarkdown(file: SourceFile, hasTables: boolean): Promise<FileReading> {
  const tree = await markdownTree(file.text, hasTables);
  const blocks = yamlBlocks(file.text, tree);
  const collected = new Collected(file);
  const needsText = hasTables || blocks.some(({ word }) => word === 'specification');
  const sections = needsText ? outlinesOf(tree, file.text).map((outline) => new Section(outline, collected, file)) : [];
  let isOurs = false;
  for (const { word, wordSpan, text, offsetMap } of blocks) {
    const kind = DOCUMENT_KINDS.find((known) => known === word);
    const section = kind === 'specification' ? sections.findLast((s) => s.start <= wordSpan.start) : undefined;
    if (section)
      section.takeUp(() => collected.addBlock('specification', wordSpan, text, offsetMap, section.completed));
    else if (kind) collected.addBlock(kind, wordSpan, text, offsetMap);
    else if (DOCUMENT_KINDS.some((known) => editDistance(word.toLowerCase(), known) <= MISSPELLED))
      collected.problems.push({ code: 'unknown-kind', message: unknownKind(word), file, span: wordSpan });
    else continue;
    isOurs = true;
  }
  for (const section of sections) isOurs = section.finish() || isOurs;
  return isOurs
    ? { documents: collected.documents, problems: collected.problems, isOurs }
    : { documents: [], problems: [], isOurs };
}

/** The text of one section, with the requirements its tables hold until a document takes them up. */
class Section {
  readonly start: number;
  #rows: readonly RequirementRow[];
  #problems: readonly ReadingProblem[];
  #isOurs = false;

  constructor(
    private readonly outline: SectionOutline,
    private readonly collected: Collected,
    private readonly file: SourceFile,
  ) {
    this.start = outline.start;
    const read = outline.tables.flatMap((table) => requirementRows(table, file) ?? []);
    this.#rows = read.flatMap(({ rows }) => rows);
    this.#problems = read.flatMap(({ problems }) => problems);
  }

  /** Adds documents of the section, and holds the paragraphs they cite against the text. */
  takeUp(add: () => void): void {
    const known = this.collected.documents.length;
    add();
    this.#isOurs = true;
    for (const document of this.collected.documents.slice(known))
      this.collected.problems.push(...missingParagraphs(document, this.outline));
  }

  /** A specification with the rows of the tables behind its own requirements; the first one takes them all. */
  readonly completed = (document: YamlDocument): YamlDocument => {
    const [rows, problems] = [this.#rows, this.#problems];
    const { data } = document;
    if (!isRecord(data) || (rows.length === 0 && problems.length === 0)) return document;
    this.#rows = [];
    this.#problems = [];
    const own: unknown = data['requirements'] ?? [];
    // What is no list is told by the schema; there is nothing to add to.
    if (!Array.isArray(own)) return document;
    const requirements = [...(own as unknown[]), ...rows.map((row) => row.data)];
    return {
      data: Object.assign({ __proto__: null }, data, { requirements }),
      // Without a header nobody reads rows, and the schema is not to complain of their absence.
      problems: [
        ...document.problems,
        ...problems.map((p) => (rows.length === 0 ? { ...p, path: ['requirements'] } : p)),
      ],
      spanOf: (path, part) => {
        const [first, index, ...rest] = path;
        const row = first === 'requirements' && typeof index === 'number' ? rows[index - own.length] : undefined;
        return row === undefined ? document.spanOf(path, part) : row.spanOf(rest);
      },
    };
  };

  /**
   * Tables that no block took up become a document of their own, and the numbers of the text are checked.
   *
   * @returns whether the section holds a document
   */
  finish(): boolean {
    const { section, paragraphs } = this.outline;
    const first = this.#rows[0]?.spanOf([]) ?? this.#problems[0]?.span;
    if (first !== undefined) {
      if (section !== undefined) this.takeUp(() => this.collected.add(this.completed(ofHeading(section))));
      else if (paragraphs.length > 0) {
        const message =
          'The table of requirements stands in a section without a number; begin the text with a heading such as "Section 07 27 26 - Fluid-applied membrane air barriers".';
        this.collected.problems.push({ code: 'missing-field', message, file: this.file, span: first });
        this.#isOurs = true;
      }
    }
    if (this.#isOurs) this.collected.problems.push(...repeatedParagraphs(this.outline, this.file));
    return this.#isOurs;
  }
}

/** A specification of which only the heading is known. */
function ofHeading({ number, title, span }: NonNullable<SectionOutline['section']>): YamlDocument {
  const data = { __proto__: null, kind: 'specification', section: number, title };
  return { data, problems: [], spanOf: (): Span => span };
}
