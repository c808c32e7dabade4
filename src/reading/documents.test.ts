import { describe, expect, it } from 'vitest';
import { readDocuments, readMarkdownDocuments } from './documents.js';
import { lineColumn, sourceFile } from './source.js';

const PRODUCT = 'kind: product\nid: liquid-flashing\nname: Liquid flashing\nfamily: fluid-applied flashing\n';

async function read(text: string, uri = 'a.yaml', named = true) {
  const file = sourceFile(uri, text);
  const reading = await readDocuments(file, { named });
  return {
    ...reading,
    file,
    held: reading.documents.map(({ kind, id }) => `${kind} ${id}`),
    problems: reading.problems.map(({ code, message, span }) => {
      const { line, column } = lineColumn(file, span.start);
      return { code, message, at: `${line}:${column}`, text: file.text.slice(span.start, span.end) };
    }),
  };
}

const KINDS = 'detail, product, project, specification, submittal, settings';

describe('a YAML file', () => {
  it('is read to its documents', async () => {
    const { documents, problems, isOurs, file } = await read(PRODUCT);
    expect(problems).toEqual([]);
    expect(isOurs).toBe(true);
    expect(documents).toHaveLength(1);
    expect(documents[0]).toMatchObject({ kind: 'product', id: 'liquid-flashing', file });
    expect(documents[0]?.data['name']).toBe('Liquid flashing');
    const span = documents[0]?.spanOf(['name']);
    expect(file.text.slice(span?.start, span?.end)).toBe('Liquid flashing');
  });

  it('may be JSON', async () => {
    const { held, problems } = await read(
      '{ "kind": "product", "id": "liquid-flashing", "name": "Liquid flashing", "family": "tape" }\n',
      'a.json',
    );
    expect(problems).toEqual([]);
    expect(held).toEqual(['product liquid-flashing']);
  });

  it('holds several documents', async () => {
    expect((await read(`${PRODUCT}---\nkind: settings\n`)).held).toEqual([
      'product liquid-flashing',
      'settings a.yaml',
    ]);
  });

  it('keeps its good documents when another has a problem', async () => {
    const { held, problems } = await read(
      `kind: product\nid: a\nname: A\nfamily: tap\n---\n${PRODUCT}---\nkind: product\nid: "\n`,
    );
    expect(held).toEqual(['product liquid-flashing']);
    expect(problems.map(({ code, at }) => [code, at])).toEqual([
      ['wrong-value', '4:9'],
      ['malformed-yaml', '12:5'],
    ]);
  });

  it('points each problem of the schema at its place', async () => {
    const { problems } = await read(`${PRODUCT}colour: red\n`);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ code: 'unknown-field', at: '5:1', text: 'colour' });
  });

  it('tells the refusal of a value once, and other problems with it', async () => {
    const { problems, held } = await read(`${PRODUCT}volumeSolids: 0x10\ncolour: red\n`);
    expect(held).toEqual([]);
    expect(problems.map(({ code, at }) => [code, at])).toEqual([
      ['wrong-value', '5:15'],
      ['unknown-field', '6:1'],
    ]);
  });

  it('that repeats an entry is not read, since either may be meant', async () => {
    const { problems, held } = await read(`${PRODUCT}id: other\n`);
    expect(held).toEqual([]);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ code: 'malformed-yaml', at: '5:1' });
  });
});

describe('the kind', () => {
  it('must be known', async () => {
    const { problems } = await read('kind: detial\nid: a\n');
    expect(problems).toEqual([
      {
        code: 'unknown-kind',
        at: '1:7',
        text: 'detial',
        message: `"detial" is not a kind of document; write one of ${KINDS} (nearest: detail).`,
      },
    ]);
    expect((await read('kind: Deployment\n')).problems[0]?.message).toBe(
      `"Deployment" is not a kind of document; write one of ${KINDS}.`,
    );
    expect((await read('kind: [detail]\n')).problems[0]?.message).toBe(`A kind is one word; write one of ${KINDS}.`);
  });

  it('must be there', async () => {
    expect((await read('id: a\ntitle: b\n')).problems).toEqual([
      {
        code: 'unknown-kind',
        at: '1:1',
        text: 'id: a',
        message: `The document has no kind; begin it with "kind:" and one of ${KINDS}.`,
      },
    ]);
  });

  it('needs entries to stand among', async () => {
    expect((await read('- a\n- b\n')).problems[0]).toMatchObject({
      code: 'unknown-kind',
      message: 'A document is made of entries and begins with "kind:"; a list was found.',
    });
    expect((await read('just text\nand more\n')).problems[0]).toMatchObject({
      text: 'just text',
      message: 'A document is made of entries and begins with "kind:"; a single value was found.',
    });
  });

  it('is told once when it is refused as it is read', async () => {
    expect((await read('kind: 0x10\n')).problems.map(({ code }) => code)).toEqual(['wrong-value']);
  });
});

describe('a file without documents', () => {
  it.each(['', '\n\n', '# only this\n', '---\n', '\uFEFF'])('%j is empty', async (text) => {
    const { problems, isOurs } = await read(text, 'a.yaml', false);
    expect(isOurs).toBe(text !== '---\n');
    if (isOurs)
      expect(problems).toEqual([
        {
          code: 'empty-file',
          at: text === '\uFEFF' ? '1:2' : '1:1',
          text: '',
          message:
            'The file is empty or holds only comments; a document begins with "kind:", for example "kind: detail".',
        },
      ]);
  });

  it.each([
    ['no kind', 'name: build\nsteps: [a]\n'],
    ['the word, but no entry', 'title: a kind of wall\n'],
    ['a kind further inside', 'items:\n  - { kind: detail }\n'],
    ['anchors', 'a: &x 1\nb: *x\n'],
    ['a fault', 'a: {{ b }}\nc: @\n'],
    ['a fault and the word', 'a: {{ kind }}\nc: @\n'],
    ['too much depth', '['.repeat(100)],
  ])('with %s is passed over in a scan and told when named', async (_, text) => {
    expect(await read(text, 'a.yaml', false)).toMatchObject({ documents: [], problems: [], isOurs: false });
    const named = await read(text, 'a.yaml', true);
    expect(named.problems.length).toBeGreaterThan(0);
    expect(named.documents).toEqual([]);
  });

  it('but with a kind is told in a scan too', async () => {
    expect((await read('kind: detail\nid: @\n', 'a.yaml', false)).problems.map(({ code }) => code)).toEqual([
      'malformed-yaml',
    ]);
    expect((await read('kind: detial\n', 'a.yaml', false)).problems.map(({ code }) => code)).toEqual(['unknown-kind']);
    expect(
      (await read(`kind: detail\na: ${'['.repeat(100)}\n`, 'a.yaml', false)).problems.map(({ code }) => code),
    ).toEqual(['unsafe-content']);
    expect(
      (await read(`${PRODUCT}---\nid: forgot\n`, 'a.yaml', false)).problems.map(({ code, at }) => [code, at]),
    ).toEqual([['unknown-kind', '6:1']]);
  });
});

describe('a Markdown file', () => {
  const fence = (info: string, body: string): string => `Text.\n\n\`\`\`${info}\n${body}\`\`\`\n`;

  it('holds documents in its blocks, with or without a kind entry', async () => {
    const { held, problems, documents, file } = await read(
      fence('yaml product', PRODUCT) +
        fence('yaml product', PRODUCT.replace('kind: product\n', '').replace('liquid-', 'other-')),
      'a.md',
    );
    expect(problems).toEqual([]);
    expect(held).toEqual(['product liquid-flashing', 'product other-flashing']);
    expect(documents[1]?.data['kind']).toBe('product');
    const shown = (...path: string[]): string =>
      file.text.slice(documents[1]?.spanOf(path).start, documents[1]?.spanOf(path).end);
    expect(shown()).toBe('product');
    expect(shown('kind')).toBe('product');
    expect(shown('section')).toBe('product');
    expect(shown('id')).toBe('other-flashing');
    expect(documents[1]?.spanOf([]).start).toBe(file.text.lastIndexOf('```yaml product') + '```yaml '.length);
  });

  it('tells problems at their place in the Markdown', async () => {
    expect((await read(`> \`\`\`yaml product\n> id: a\n> colour: red\n> \`\`\`\n`, 'a.md')).problems).toEqual(
      expect.arrayContaining([
        expect.objectContaining({ code: 'unknown-field', at: '3:3', text: 'colour' }),
        expect.objectContaining({ code: 'missing-field', at: '1:11', text: 'product' }),
      ]),
    );
  });

  it('must not contradict itself', async () => {
    expect((await read(fence('yaml detail', PRODUCT), 'a.md')).problems).toEqual([
      {
        code: 'unknown-kind',
        at: '4:7',
        text: 'product',
        message:
          'The block begins as "yaml detail" and its kind is product; make the two agree, or take the kind entry out.',
      },
    ]);
  });

  it('may misspell a kind, which is told, and may hold other YAML, which is left alone', async () => {
    const { problems, held } = await read(
      fence('yaml prodcut', PRODUCT) +
        fence('yaml', PRODUCT) +
        fence('yaml title="x"', PRODUCT) +
        fence('yaml Detail', ''),
      'a.md',
    );
    expect(held).toEqual([]);
    expect(problems).toEqual([
      {
        code: 'unknown-kind',
        at: '3:9',
        text: 'prodcut',
        message: `"prodcut" is not a kind of document; write one of ${KINDS} (nearest: product).`,
      },
      expect.objectContaining({ code: 'unknown-kind', text: 'Detail' }),
    ]);
  });

  it('may hold an empty block, which is told', async () => {
    expect((await read(fence('yaml detail', '# later\n'), 'a.markdown')).problems).toEqual([
      {
        code: 'empty-file',
        at: '3:9',
        text: 'detail',
        message: 'The detail block is empty; write the document between the fences, or take the block out.',
      },
    ]);
  });

  it('without blocks is not ours', async () => {
    expect(await read('# kind: detail\n', 'a.md')).toMatchObject({ documents: [], problems: [], isOurs: false });
  });

  it('has a limit of lines, which the parser would take long for', async () => {
    const { problems } = await readMarkdownDocuments(
      sourceFile('a.md', `\`\`\`yaml detail\n${'a\n\n'.repeat(20_000)}`),
    );
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({
      code: 'unsafe-content',
      message: 'The file has 40002 lines and the limit for Markdown is 20000; split it into smaller files.',
    });
  });
});
