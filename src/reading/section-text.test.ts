/** The text of a section in Markdown: the numbers people cite, and tables whose rows are requirements. */
import { describe, expect, it } from 'vitest';
import { readMarkdownDocuments } from './documents.js';
import { markdownTree } from './markdown.js';
import { outlinesOf } from './section-outline.js';
import { lineColumn, sourceFile } from './source.js';

const outline = async (markdown: string) => outlinesOf(await markdownTree(markdown, false), markdown);
const numbers = async (markdown: string) => (await outline(markdown)).flatMap((o) => o.paragraphs.map((p) => p.number));

describe('the numbers of a section', () => {
  it('follow the marks of the three-part format, as a list of Markdown or not', async () => {
    expect(
      await numbers(`# Section 07 27 26 - Air barriers

## Part 3 - Execution

### 3.4 Openings

A. First,
wrapped onto a second line.

B. Flashing:

1. Sill.

   a. Pan.

   b. Dam.

2. Head.

C. Last. See C. D. Mark for more.

### 3.5 Field

A. Again from A.
`),
    ).toEqual(['3.4', '3.4.A', '3.4.B', '3.4.B.1', '3.4.B.1.a', '3.4.B.1.b', '3.4.B.2', '3.4.C', '3.5', '3.5.A']);
  });
  it('are those written, but a list of ones is counted', async () => {
    expect(await numbers('### 3.1 X\n\nA. y\n\n2. two\n3. three\n')).toEqual(['3.1', '3.1.A', '3.1.A.2', '3.1.A.3']);
    expect(await numbers('### 3.1 X\n\nA. y\n\n1. one\n1. two\n')).toEqual(['3.1', '3.1.A', '3.1.A.1', '3.1.A.2']);
  });
  it('of indented lines, deeper marks and decimal articles are read too', async () => {
    expect(await numbers('### 2.3.1 X\n\n    a. y\n    b. z\n\n    1) deep\n    a) deeper\n')).toEqual([
      '2.3.1',
      '2.3.1.a',
      '2.3.1.b',
      '2.3.1.b.1',
      '2.3.1.b.1.a',
    ]);
  });
  it('do not come from text outside of articles, from quotes or from examples', async () => {
    expect(await numbers('A. x\n\n### 1.1 Y\n\n> A. note\n\n```text\nB. example\n```\n')).toEqual(['1.1']);
  });
  it('point at the mark', async () => {
    const markdown = '### 3.1 X\n\n  B. y\n';
    const [article, paragraph] = (await outline(markdown))[0]!.paragraphs;
    expect(markdown.slice(article!.span.start, article!.span.end)).toBe('3.1');
    expect(paragraph!.span).toEqual({ start: markdown.indexOf('B.'), end: markdown.indexOf('B.') + 1 });
  });
  it('begin anew with the next section of the file', async () => {
    const two = await outline('# Section 07 27 26 - A\n\n### 1.1 X\n\n# SECTION 079200 B\n\n### 1.1 Y\n');
    expect(two.map((o) => [o.section?.number, o.section?.title, o.paragraphs.length])).toEqual([
      ['07 27 26', 'A', 1],
      ['07 92 00', 'B', 1],
    ]);
  });
});

const read = (text: string) => readMarkdownDocuments(sourceFile('s.md', text));
const HEAD = '# Section 07 27 26 - Air barriers\n\n### 3.4 Openings\n\nB. Flashing.\n\n';
const block = (paragraph: string) =>
  `\n\`\`\`yaml specification\nsection: "07 27 26"\ntitle: Air barriers\nrequirements:\n  - { paragraph: "${paragraph}", property: lap, atLeast: 2 in }\n\`\`\`\n`;

describe('a requirement beside the text of its section', () => {
  it('may cite any paragraph that is there', async () => {
    expect((await read(HEAD + block('3.4.B'))).problems).toEqual([]);
    expect((await read(HEAD + block('3.4'))).problems).toEqual([]);
  });
  it('is told when its paragraph is not there, and is held all the same', async () => {
    const text = HEAD + block('3.4.C.1');
    const { documents, problems } = await read(text);
    expect(documents).toHaveLength(1);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({
      code: 'unknown-paragraph',
      message:
        'The text of this section has no paragraph 3.4.C.1; the nearest above it is 3.4. Correct the number, or add the paragraph.',
    });
    expect(text.slice(problems[0]!.span.start, problems[0]!.span.end)).toBe('"3.4.C.1"');
  });
  it('is not checked where the text has no articles', async () => {
    expect((await read(`# Notes\n${block('3.4.C.1')}`)).problems).toEqual([]);
  });
  it('tells a number that is used twice, with both places', async () => {
    const text = `${HEAD}B. Again.\n${block('3.4.B')}`;
    const [problem, ...others] = (await read(text)).problems;
    expect(others).toEqual([]);
    expect(problem).toMatchObject({ code: 'repeated-paragraph' });
    expect(problem!.span.start).toBe(text.indexOf('B. Again'));
    expect(problem!.related![0]!.span.start).toBe(text.indexOf('B. Flashing'));
  });
});

const TABLE = `| Subject | Property | Requirement | Method |
| --- | --- | --- | --- |
| Sill pan | End dam height | at least 6 in | - |
| field membrane | wet film | 12-15 mil | \`ASTM D4414\` |
| | joint width | one of 3/8 in, 1/2 in | |
| exterior seal | weep count | 2 minimum | |
`;

describe('a table of requirements', () => {
  it('belongs to the paragraph it stands under, each value at its cell', async () => {
    const text = HEAD + TABLE;
    const { documents, problems } = await read(text);
    expect(problems).toEqual([]);
    expect(documents).toHaveLength(1);
    const [document] = documents;
    expect(document!.data).toMatchObject({ kind: 'specification', section: '07 27 26', title: 'Air barriers' });
    expect(JSON.parse(JSON.stringify(document!.data['requirements']))).toEqual([
      { paragraph: '3.4.B', subject: 'sill pan', property: 'end dam height', atLeast: '6 in' },
      {
        paragraph: '3.4.B',
        subject: 'field membrane',
        property: 'wet film',
        equals: '12-15 mil',
        method: 'ASTM D4414',
      },
      { paragraph: '3.4.B', property: 'joint width', oneOf: ['3/8 in', '1/2 in'] },
      { paragraph: '3.4.B', subject: 'exterior seal', property: 'weep count', atLeast: 2 },
    ]);
    const at = (...path: (string | number)[]) => {
      const span = document!.spanOf(['requirements', ...path]);
      return text.slice(span.start, span.end);
    };
    expect(at(0, 'atLeast')).toBe('at least 6 in');
    expect(at(1, 'method')).toBe('ASTM D4414');
    expect(at(2, 'oneOf', 1)).toBe('1/2 in');
    expect(at(2)).toBe('| | joint width | one of 3/8 in, 1/2 in | |');
    expect(at(3, 'paragraph')).toBe('B');
    expect(lineColumn(document!.file, document!.spanOf(['requirements', 0, 'atLeast']).start)).toEqual({
      line: 9,
      column: 31,
    });
  });
  it('is added to the block of its section', async () => {
    const { documents, problems } = await read(HEAD + TABLE + block('3.4.B'));
    expect(problems).toEqual([]);
    expect(documents).toHaveLength(1);
    expect(documents[0]!.data['requirements']).toHaveLength(5);
    const text = documents[0]!.file.text;
    const span = documents[0]!.spanOf(['requirements', 0, 'atLeast']);
    expect(text.slice(span.start, span.end)).toBe('2 in');
  });
  it('takes words and characteristics, and a paragraph of its own', async () => {
    const { documents, problems } = await read(
      `${HEAD}| Paragraph | Characteristic | Requirement |\n|---|---|---|\n| 3.4 | pull adhesion | not less than 20 psi |\n| | color | black |\n| | | Keep it dry. |\n`,
    );
    expect(problems).toEqual([]);
    expect(JSON.parse(JSON.stringify(documents[0]!.data['requirements']))).toEqual([
      { paragraph: '3.4', characteristic: 'pull adhesion', atLeast: '20 psi' },
      { paragraph: '3.4.B', characteristic: 'color', equals: 'black' },
      { paragraph: '3.4.B', text: 'Keep it dry.' },
    ]);
  });
  it.each([
    [
      '| lap | 2 in |',
      '2 in',
      '"2 in" does not say how a value compares with it; write "at least 2 in", "at most 2 in" or "exactly 2 in".',
    ],
    ['| lop | at least 2 in |', 'lop', '"property": found "lop". Did you mean "lap"?'],
    ['| lap | at least 2 |', 'at least 2', 'needs its unit'],
    ['| lap | |', '| lap | |', 'The row has no requirement'],
  ])('tells what is wrong with %s at its place', async (row, place, message) => {
    const text = `${HEAD}| Property | Requirement |\n|---|---|\n${row}\n`;
    const { documents, problems } = await read(text);
    expect(documents).toEqual([]);
    expect(problems[0]!.message).toContain(message);
    expect(text.slice(problems[0]!.span.start, problems[0]!.span.end)).toBe(place);
  });
  it('tells a column it does not know', async () => {
    const { problems } = await read(
      `${HEAD}| Property | Requirement | Methods |\n|---|---|---|\n| lap | at least 2 in | x |\n`,
    );
    expect(problems.map((p) => p.message)).toEqual([
      '"Methods" is not a column of a table of requirements; did you mean "method"?',
    ]);
  });
  it('needs to know its section', async () => {
    const table = '| Property | Requirement |\n|---|---|\n| lap | at least 2 in |\n';
    expect((await read(`### 3.4 Openings\n\n${table}`)).problems[0]!.message).toContain('a section without a number');
    expect(await read(`# About\n\n${table}`)).toEqual({ documents: [], problems: [], isOurs: false });
  });
});
