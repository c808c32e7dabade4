import { describe, expect, it } from 'vitest';
import { outlineOf, walk } from './outline.js';
import { sentencesOf } from './sentences.js';
import { sourceSpan } from './prose.js';

/** `number: text` of each paragraph and row. */
function paragraphs(source: string): string[] {
  return [...walk(outlineOf(source).nodes)]
    .filter(({ node }) => node.type === 'paragraph' || node.type === 'row')
    .map(({ node }) => `${node.number ?? '-'}: ${node.prose.text}`);
}

describe('the outline of a section', () => {
  it('cites lettered paragraphs as 3.4.B.2, down to the fifth level', () => {
    const source = [
      'SECTION 07 27 26 - AIR BARRIERS',
      '',
      'PART 3 - EXECUTION',
      '',
      '3.4 FLASHING',
      '',
      'A. First.',
      'B. Second:',
      '   1. Onto the wall.',
      '   2. Into the opening:',
      '      a. Sill.',
      '      b. Jambs:',
      '         1) Left.',
      '         2) Right.',
      'C. Third.',
      '3.5 FIELD',
      'A. Again.',
    ].join('\n');
    expect(paragraphs(source)).toEqual([
      '3.4.A: First.',
      '3.4.B: Second:',
      '3.4.B.1: Onto the wall.',
      '3.4.B.2: Into the opening:',
      '3.4.B.2.a: Sill.',
      '3.4.B.2.b: Jambs:',
      '3.4.B.2.b.1: Left.',
      '3.4.B.2.b.2: Right.',
      '3.4.C: Third. 3.5 FIELD',
      '3.4.A: Again.',
    ]);
    expect(outlineOf(source)).toMatchObject({ section: '07 27 26', title: 'AIR BARRIERS' });
  });

  it("cites a guide's own numbering as 2.3.1.a, with (1) below it", () => {
    const source = 'PART 2   PRODUCTS\n\n2.3.1   Sheets\n\na.  One.\n\n    (1)  Two.\n\n    (2)  Three.\n\nb.  Four.\n';
    expect(paragraphs(source)).toEqual(['2.3.1.a: One.', '2.3.1.a.1: Two.', '2.3.1.a.2: Three.', '2.3.1.b: Four.']);
  });

  it('reads i. as a letter after h. and as a Roman number where a list begins', () => {
    const letters = 'a b c d e f g h i j'.split(' ').map((letter) => `${letter}. Entry.`);
    expect(paragraphs(`PART 1 GENERAL\n\n1.1 LIST\n\n${letters.join('\n')}\n`).at(-1)).toBe('1.1.j: Entry.');
    const roman = 'PART 1 GENERAL\n\n1.1 LIST\n\na. Entry.\ni. One.\nii. Two.\nb. Entry.\n';
    expect(paragraphs(roman)).toEqual(['1.1.a: Entry.', '1.1.a.i: One.', '1.1.a.ii: Two.', '1.1.b: Entry.']);
  });

  it('reports a number that is used twice, with both places', () => {
    const source = 'PART 1 GENERAL\n\n1.1 LIST\n\nA. One.\n\nA. Two.\n';
    const [repeated] = outlineOf(source).repeated;
    expect(repeated?.number).toBe('1.1.A');
    expect(repeated?.spans.map(({ start }) => source.slice(start, start + 7))).toEqual(['A. One.', 'A. Two.']);
  });

  it('takes no wrapped value for an article, and no wrapped number for a paragraph', () => {
    const source =
      'PART 1 GENERAL\n\n1.1 RATES\n\nA. Leakage is at most 0.2 or\n1.57 Psf whichever is\n4. that is all.\n';
    expect(paragraphs(source)).toEqual(['1.1.A: Leakage is at most 0.2 or 1.57 Psf whichever is 4. that is all.']);
  });

  it('leaves out boxes for the specifier, page headers and the mark at the end, also inside of a sentence', () => {
    const source = [
      '***************************************',
      'NOTE: Use not less than 12 mm here.',
      '***************************************',
      'PART 1   GENERAL',
      '',
      '1.1   SCOPE',
      '',
      'Lap the membrane over the',
      '',
      'SECTION 07 27 26   Page 4',
      '',
      'flashing everywhere.',
      '',
      '    -- End of Section --',
    ].join('\n');
    expect(paragraphs(source)).toEqual(['1.1: Lap the membrane over the flashing everywhere.']);
    expect(outlineOf(source).notes).toHaveLength(1);
  });

  it('keeps the place of wrapped sentences, and reads divided words as one', () => {
    const source =
      'PART 1 GENERAL\r\n\r\n1.1 WORK\r\n\r\nA. Apply. Lap the fluid-\r\n   applied membrane 3\r\n   inches over it.\r\n';
    const node = [...walk(outlineOf(source).nodes)].at(-1)?.node;
    const sentence = sentencesOf(node!.prose)[1]!;
    expect(node!.prose.text.slice(sentence.start, sentence.end)).toBe(
      'Lap the fluid-applied membrane 3 inches over it.',
    );
    const { start, end } = sourceSpan(node!.prose, sentence.start, sentence.end);
    expect(source.slice(start, end)).toBe('Lap the fluid-\r\n   applied membrane 3\r\n   inches over it.');
  });

  it('marks paragraphs that stand in brackets as optional', () => {
    const source = 'PART 1 GENERAL\n\n1.1 WORK\n\na. Fixed.\n\n[b. Maybe.\n\n]c. Fixed.\n';
    const nodes = [...walk(outlineOf(source).nodes)].map(({ node }) => node).filter(({ type }) => type === 'paragraph');
    expect(nodes.map(({ number, optional }) => [number, optional])).toEqual([
      ['1.1.a', false],
      ['1.1.b', true],
      ['1.1.c', false],
    ]);
  });

  it('gives no number where the section gives none', () => {
    expect(paragraphs('PART 1 GENERAL\n\nDEFINITIONS\n\nA barrier is a membrane.\n')).toEqual([
      '-: A barrier is a membrane.',
    ]);
  });
});

describe('sentences', () => {
  const split = (text: string): string[] =>
    sentencesOf({ text, offsets: [] }).map(({ start, end }) => text.slice(start, end));

  it('end at a point, but not inside of abbreviations', () => {
    expect(split('Lap 3 in. Seal edges. Use No. 9 of approx. Size two.')).toEqual([
      'Lap 3 in.',
      'Seal edges.',
      'Use No. 9 of approx. Size two.',
    ]);
    expect(split('Use ASTM E96, Method A. Elongation is 2.5 in. 64 mm.')).toEqual([
      'Use ASTM E96, Method A.',
      'Elongation is 2.5 in. 64 mm.',
    ]);
  });
});
