/** Rows of tables as they come, line by line: the head that names the columns is kept until the table ends. */
import type { Line } from './lines.js';
import type { Row } from './outline.js';
import { proseOf } from './prose.js';
import { alignedCells, cellsOf, isHead, isPipeRow } from './tables.js';

/** Takes the lines of a section one by one and gives back the rows of the tables among them. */
export class TableReader {
  #head: readonly string[] | undefined;
  /** Columns of the page at which the head of a table of plain text has its cells. */
  #columns: readonly number[] | undefined;

  /** Forgets the head: the table is over. */
  end(): void {
    this.#head = this.#columns = undefined;
  }

  /**
   * The row that a line holds from `start` on.
   *
   * @param start offset in the source, behind the mark that numbers the line
   * @returns `head` for the row that names the columns; undefined for running text
   */
  read(source: string, line: Line, start: number): Row | 'head' | undefined {
    const isPiped = isPipeRow(line.text);
    const aligned =
      this.#columns === undefined || isPiped || start !== line.start
        ? undefined
        : alignedCells(line.text, line.start, this.#columns);
    const cells =
      aligned !== undefined && aligned.filter((cell) => cell.end > cell.start).length > 1
        ? aligned
        : cellsOf(line.text, start - line.start, line.start);
    const isSentence = /[.;]\s+[A-Z]/.test(line.text) && !isPiped;
    if (cells.length <= 1 || isSentence) return undefined;
    const proses = cells.map((cell) => proseOf(source, [cell]));
    const words = proses.map((prose) => prose.text);
    if (isHead(words)) {
      this.#head = words;
      this.#columns = isPiped ? undefined : cells.map((cell) => cell.start - line.start);
      return 'head';
    }
    const head = this.#head !== undefined && this.#head.length === words.length ? this.#head : undefined;
    return { cells: proses, ...(head && { head }) };
  }
}
