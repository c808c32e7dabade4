/** What a paragraph stands in: an article of definitions, an explanation of classes, a bracket that is still open. */
import type { OutlineNode } from './outline.js';

export interface Within {
  /** The paragraph or its article stands in a bracket that is still to be decided. */
  readonly isOpen: boolean;
  /** Here it is said what words mean; nothing is asked for. */
  readonly isDefinition: boolean;
  /** Here it is said what the section holds, and what other sections do. */
  readonly isSummary: boolean;
}

const DEFINITIONS = /\b(?:definitions?|terminology|glossary|abbreviations|acronyms)\b/i;
const SUMMARY =
  /^(?:[A-Z\d]+\.\s+)?(?:summary|scope(?: of work)?|section includes|related (?:sections?|work|requirements|documents)|work (?:specified|included) (?:elsewhere|in other sections))\b[^.]{0,30}$/i;
const DEFINING_LABEL = /^[[\]\s]*(?:definitions?|abbreviations|acronyms)\s*:/i;
/** "1 perm equals 57.2 ng/(Pa s m2)": a conversion. */
const CONVERTS = /(?<![\d.,/])1 [A-Za-z][\w./]* (?:equals|is equal to|=) [\d.]/;
/** A title is short; a sentence that speaks of a definition is none. */
const TITLE_LENGTH = 60;
const CLASSIFIES = /\b(?:is|are) (?:separated|divided|classified|grouped|sorted|graded) (?:in|into|as|by|from)\b/i;
const CLASS = /^["'([\s]*(?:class|type|grade|group|category|level)\b/i;
const MEANS =
  /^.{1,80}?(?:\bshall mean\b|(?<!\b(?:by|other|no|suitable|the) )\bmeans\b(?! (?:of|and|or|to)\b)|\brefers? to\b|\b(?:is|are) defined as\b)/i;

/** Whether a sentence says what a word means. */
export function defines(text: string): boolean {
  return MEANS.test(text) || CONVERTS.test(text) || DEFINING_LABEL.test(text);
}

/** Follows the paragraphs of a section in their order. */
export class Surroundings {
  /** Square brackets that the title of the article opened and nothing has closed. */
  #open = 0;
  #article: string | undefined;
  #explainsClasses = false;

  /** The next node of the outline, with the titles above it. */
  enter(node: OutlineNode, titles: readonly string[]): Within {
    const { text } = node.prose;
    if (node.type === 'part' || node.type === 'article') {
      this.#enterArticle(node);
      return { isOpen: this.#open > 0, isDefinition: false, isSummary: false };
    }
    const isOpen = node.optional || this.#open > 0;
    if (this.#open > 0) this.#open = depthAfter(text, this.#open);
    this.#explainsClasses = CLASSIFIES.test(text) || (this.#explainsClasses && CLASS.test(text));
    const isDefinition =
      titles.some((title) => title.length <= TITLE_LENGTH && DEFINITIONS.test(title)) ||
      (this.#explainsClasses && CLASS.test(text));
    const isSummary = SUMMARY.test(text) || titles.some((title) => SUMMARY.test(title.trim()));
    return { isOpen, isDefinition, isSummary };
  }

  #enterArticle({ number, prose }: OutlineNode): void {
    this.#explainsClasses = false;
    // Articles below the one whose title opened the bracket stand in it too.
    const isBelow = this.#article !== undefined && number?.startsWith(`${this.#article}.`) === true;
    if (this.#open > 0 && isBelow) return;
    this.#open = /^[\]\s]*\[/.test(prose.text) ? depthAfter(prose.text, 0) : 0;
    this.#article = number;
  }
}

function depthAfter(text: string, before: number): number {
  let depth = before;
  for (const character of text) {
    if (character === '[') depth++;
    else if (character === ']' && depth > 0) depth--;
  }
  return depth;
}
