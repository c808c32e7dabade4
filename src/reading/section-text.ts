/** The text of a section beside its documents: paragraphs that are cited and do not exist, and numbers used twice. */
import type { NumberedParagraph, SectionOutline } from './section-outline.js';
import type { ReadDocument, ReadingProblem, SourceFile } from './types.js';

/** Numbers that two paragraphs of one section carry, each at the later one. */
export function repeatedParagraphs({ paragraphs }: SectionOutline, file: SourceFile): ReadingProblem[] {
  const first = new Map<string, NumberedParagraph>();
  return paragraphs.flatMap((paragraph): ReadingProblem[] => {
    const before = first.get(paragraph.number);
    if (before === undefined) {
      first.set(paragraph.number, paragraph);
      return [];
    }
    return [
      {
        code: 'repeated-paragraph',
        message: `The paragraph number ${paragraph.number} is used twice in this section; number one of the two paragraphs anew.`,
        file,
        span: paragraph.span,
        related: [{ message: `${paragraph.number} stands here first`, file, span: before.span }],
      },
    ];
  });
}

/** The nearest paragraph above one that does not exist, or what the text has instead. */
function instead(number: string, numbers: ReadonlySet<string>): string {
  for (let above = number; above.includes('.');) {
    above = above.slice(0, above.lastIndexOf('.'));
    if (numbers.has(above)) return `; the nearest above it is ${above}`;
  }
  const articles = [...numbers].filter((n) => /^\d+\.\d+$/.test(n));
  return `; its articles are ${articles.slice(0, 12).join(', ')}${articles.length > 12 ? ' and more' : ''}`;
}

/** Requirements and submittals of a document that cite a paragraph the text of the section does not have. */
export function missingParagraphs(document: ReadDocument, { paragraphs }: SectionOutline): ReadingProblem[] {
  if (paragraphs.length === 0) return [];
  const numbers = new Set(paragraphs.map(({ number }) => number));
  return ['requirements', 'submittals'].flatMap((list) => {
    const entries = document.data[list];
    return (Array.isArray(entries) ? entries : []).flatMap((entry: unknown, index): ReadingProblem[] => {
      const number = (entry as { readonly paragraph?: unknown }).paragraph;
      if (typeof number !== 'string' || numbers.has(number)) return [];
      return [
        {
          code: 'unknown-paragraph',
          message: `The text of this section has no paragraph ${number}${instead(number, numbers)}. Correct the number, or add the paragraph.`,
          file: document.file,
          span: document.spanOf([list, index, 'paragraph']),
        },
      ];
    });
  });
}
