/** Reads single paragraphs as part of a small section, for tests. */
import { readSection } from '../read.js';
import type { SectionReading } from '../types.js';

export const BEFORE = 'SECTION 07 27 26 - BARRIER\n\nPART 3 - EXECUTION\n\n3.1 WORK\n\nA. ';

export function readParagraph(text: string): SectionReading {
  return readSection(`${BEFORE}${text}\n`);
}

/** `lap atLeast 75 mm (3 in)` for each proposal with a value. */
export function told(text: string): string[] {
  return readParagraph(text)
    .proposals.filter(({ compare }) => compare !== undefined)
    .map(({ property, characteristic, compare, value, also }) => {
      const twin = also === undefined ? '' : ` (${also.text})`;
      return `${property ?? `"${characteristic ?? ''}"`} ${compare ?? ''} ${value?.text ?? ''}${twin}`;
    });
}

/** `reversed range: 12 to 6 in` for each question. */
export function asked(text: string): string[] {
  return readParagraph(text).questions.map(
    ({ kind, values }) => `${kind}: ${values.map((value) => value.text).join(', ')}`,
  );
}
