import { describe, expect, it } from 'vitest';
import { lineColumn, sourceFile } from './source.js';
import { readYaml } from './yaml.js';
import type { Path, Part } from './types.js';

function read(text: string) {
  const file = sourceFile('a.yaml', text);
  const reading = readYaml(file, file.text);
  const cut = ({ start, end }: { start: number; end: number }): string => file.text.slice(start, end);
  const [first] = reading.documents;
  return {
    ...reading,
    data: first?.data,
    problems: [...reading.problems, ...reading.documents.flatMap(({ problems }) => problems)].map(
      ({ code, message, span, related }) => {
        const { line, column } = lineColumn(file, span.start);
        return {
          code,
          message,
          at: `${line}:${column}`,
          text: cut(span),
          ...(related && { related: related.map((place) => lineColumn(file, place.span.start).line) }),
        };
      },
    ),
    at: (path: Path, part?: Part): string => (first ? cut(first.spanOf(path, part)) : ''),
  };
}

const DETAIL = `# interior to exterior
kind: detail
id: W-3
wall:
  - { id: board, thickness: 5/8 in }
  - id: studs
    framing:
      spacing: 16 in
  - thickness: 1 in   # no id
  -
places: [inside corners, "opening edges"]
section: "07 27 26"
note: |
  two
  lines

empty:
list:
- - a
  - b
- {}
`;

describe('values', () => {
  it('come as plain data', () => {
    expect(read('a: 1\nb: [x, true, ~]\nc: { d: "1" }\n').data).toEqual({ a: 1, b: ['x', true, null], c: { d: '1' } });
  });

  it('are records without a prototype', () => {
    const data = read('a: { b: 1 }').data as { a: object };
    expect(Object.getPrototypeOf(data)).toBeNull();
    expect(Object.getPrototypeOf(data.a)).toBeNull();
    expect(read('constructor: 1').data).toEqual(Object.assign(Object.create(null), { constructor: 1 }));
  });

  it('keep dates and words like yes as text', () => {
    expect(read('a: 2024-01-02\nb: yes\n').data).toEqual({ a: '2024-01-02', b: 'yes' });
  });

  it('fold quoted and block scalars as YAML does', () => {
    expect(read('a: "x\\ty"\nb: >\n  one\n  two\nc: |-\n  one\n  two\n').data).toEqual({
      a: 'x\ty',
      b: 'one two\n',
      c: 'one\ntwo',
    });
  });

  it('may come as JSON, indented with tabs', () => {
    expect(read('{\n\t"kind": "detail",\n\t"wall": [\n\t\t{ "id": "a" }\n\t]\n}\n').data).toEqual({
      kind: 'detail',
      wall: [{ id: 'a' }],
    });
  });

  it('refuse a number that people read differently, and keep the rest', () => {
    const { data, problems } = read('a: 010\nb: 2\n');
    expect(data).toEqual({ a: null, b: 2 });
    expect(problems).toEqual([
      {
        code: 'wrong-value',
        at: '1:4',
        text: '010',
        message:
          '010 begins with a zero, which reads in two ways; write a plain decimal number, or put it in quotes if it is a name or a text.',
      },
    ]);
  });

  it('refuse a name that is not text, and keep the rest', () => {
    const { data, problems } = read('12: a\nb: 2\n');
    expect(data).toEqual({ b: 2 });
    expect(problems).toEqual([
      {
        code: 'wrong-value',
        at: '1:1',
        text: '12',
        message: 'The name 12 does not read as a text; put it in quotes: "12".',
      },
    ]);
  });

  it('name both places of a repeated entry and keep the first', () => {
    const { data, problems } = read('a: 1\nb: { c: 1, c: 2 }\na: 3\n');
    expect(data).toEqual({ a: 1, b: { c: 1 } });
    expect(problems).toEqual([
      {
        code: 'malformed-yaml',
        at: '2:12',
        text: 'c',
        related: [2],
        message: 'c stands twice in the same map; keep one of the two.',
      },
      {
        code: 'malformed-yaml',
        at: '3:1',
        text: 'a',
        related: [1],
        message: 'a stands twice in the same map; keep one of the two.',
      },
    ]);
  });
});

describe('several documents in one text', () => {
  it('are read one by one', () => {
    expect(read('a: 1\n---\nb: 2\n...\nc: 3\n').documents.map(({ data }) => data)).toEqual([
      { a: 1 },
      { b: 2 },
      { c: 3 },
    ]);
  });

  it('do not spoil each other', () => {
    const { documents, problems } = read('a: 1\n---\nb: @\n---\nc: 3\n');
    expect(documents.map(({ data }) => data)).toEqual([{ a: 1 }, undefined, { c: 3 }]);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ code: 'malformed-yaml', at: '3:4' });
  });

  it('do not spoil each other with anchors either', () => {
    const { documents } = read('a: 1\n---\nb: &x 2\n---\nc: 3\n');
    expect(documents.map(({ data }) => data)).toEqual([{ a: 1 }, undefined, { c: 3 }]);
  });

  it('are left out when empty', () => {
    expect(read('---\n---\na: 1\n---\n# nothing\n').documents).toHaveLength(1);
    expect(read('').documents).toEqual([]);
    expect(read('# nothing\n\n').documents).toEqual([]);
  });
});

describe('unsafe content', () => {
  it.each([
    [
      'a: &x 1\nb: 2\n',
      '1:4',
      '&x',
      'Anchors (&name) are not read; write the value out, or in quotes if it is a text that begins with &.',
    ],
    [
      'a: *x\n',
      '1:4',
      '*x',
      'Aliases (*name) are not read; write the value out, or in quotes if it is a text that begins with *.',
    ],
    [
      'a: !!int 1\n',
      '1:4',
      '!!int',
      'Tags (!name) are not read; write the value out, or in quotes if it is a text that begins with !.',
    ],
    [
      'a: !x { b: 1 }\n',
      '1:4',
      '!x',
      'Tags (!name) are not read; write the value out, or in quotes if it is a text that begins with !.',
    ],
    ['a:\n  <<: { b: 1 }\n', '2:3', '<<', 'Merge keys (<<) are not read; write the entries out.'],
    [
      '%YAML 1.1\n---\na: 1\n',
      '1:1',
      '%YAML 1.1',
      'Directives (lines that begin with %) are not read; take the line out.',
    ],
    ['%FOO\n', '1:1', '%', 'Directives (lines that begin with %) are not read; take the line out.'],
    ['__proto__: { a: 1 }\n', '1:1', '__proto__', 'An entry named __proto__ is not read; choose another name.'],
    ['a: { "__proto__": 1 }\n', '1:6', '"__proto__"', 'An entry named __proto__ is not read; choose another name.'],
  ])('%j is refused', (text, at, shown, message) => {
    const { data, problems } = read(text);
    expect(data).toBeUndefined();
    expect(problems).toEqual([{ code: 'unsafe-content', at, text: shown, message }]);
  });

  it('does not mean text that holds such characters', () => {
    expect(read('a: R&D *here* 50% !\nb: "&x"\nc: |\n  *y\n  %z\n# &w\n').data).toEqual({
      a: 'R&D *here* 50% !',
      b: '&x',
      c: '*y\n%z\n',
    });
  });

  it('leaves Object as it was', () => {
    read('__proto__: { polluted: 1 }\n');
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
  });
});

describe('faults of the writing', () => {
  it.each([
    [
      'title: Window: flange\n',
      '1:8',
      'A second ": " stands where one value is expected; put the whole value in quotes, or begin the entries of a map on a line of their own, indented.',
    ],
    ['a: >= 4 in\n', '1:5', 'A value that begins with >= needs quotes; put the whole value in quotes.'],
    ['a:\n- b: > 4 in\n', '2:8', 'A value that begins with > needs quotes; put the whole value in quotes.'],
    ['a:\n\tb: 1\n', '2:2', 'The line is indented with a tab; indent with spaces.'],
    [
      'a:\n    b: 2\n  c: 1\n',
      '3:3',
      'The line is indented differently from its neighbors; entries of one map or list begin in the same column.',
    ],
    [
      'a: 1\n  b: 2\n',
      '1:4',
      'This line runs on into the next one, which holds an entry; write each entry as "name: value", those of one map beginning in the same column.',
    ],
    [
      'a: 1\nfoo\nb: 2\n',
      '2:1',
      'This line runs on into the next one, which holds an entry; write each entry as "name: value", those of one map beginning in the same column.',
    ],
    ['a: 1\nfoo\n', '2:1', 'A word stands here without a colon and a value; an entry is written "name: value".'],
    [
      'a: { b: 1\nc: 2\n',
      '1:4',
      'The { opened here is not closed with } before the next entry begins; close it, or indent what belongs inside.',
    ],
    [
      'a: { b: [1, 2 }\nc: 2\n',
      '1:9',
      'The [ opened here is not closed with ] before the next entry begins; close it, or indent what belongs inside.',
    ],
    ['{ a: 1\n', '1:1', 'The { opened here is never closed; add the missing }.'],
    ['a: "x" # "\nb: "abc\nc: 2\n', '2:4', 'The double quote opened here is never closed; add the missing ".'],
    ["b: 'abc\nc: 2\n", '1:4', "The single quote opened here is never closed; add the missing '."],
    [
      'a: "5" in\n',
      '1:8',
      'Text follows a value that is already complete; put the whole value in quotes, quotes inside it included (single quotes around double ones).',
    ],
    ['a: @x\n', '1:4', 'A value cannot begin with @ unless it is quoted; put the whole value in quotes.'],
    ['a: [1,,2]\n', '1:7', 'A comma stands where a value is expected; take it out, or write the missing value.'],
    ['a: {b: 1 c: 2}\n', '1:8', 'An entry inside { } or [ ] is not separated by a comma from the one before it.'],
    ['a: [1]]\n', '1:7', 'The ] closes nothing; take it out.'],
    ['a: - b\n', '1:4', 'A list begins with "- " on a line of its own; or write it as [a, b].'],
    [
      'a: "\\d"\n',
      '1:5',
      'A backslash inside double quotes begins a special character; write \\\\, or use single quotes.',
    ],
    ['- a\n- b: 1\n c: 2\n', '3:2', 'An item of the list lacks its "- ", or is indented differently.'],
    ['a: {b:1, c: 2}\n', '1:5', 'The colon needs a space after it; write "b: 1".'],
    ['? [a]\n: 1\n', '1:3', 'A map or a list stands where the name of an entry is expected; write a word.'],
  ])('%j is told once, in plain words', (text, at, message) => {
    const { data, problems } = read(text);
    expect(data).toBeUndefined();
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ code: 'malformed-yaml', at, message });
    expect(problems[0]?.text).not.toMatch(/^\s*$|\n/);
  });
});

describe('spanOf', () => {
  const { at } = read(DETAIL);

  it.each<[string, Path, Part | undefined, string]>([
    ['a scalar', ['id'], undefined, 'W-3'],
    ['a scalar in a flow map', ['wall', 0, 'thickness'], 'value', '5/8 in'],
    ['a quoted scalar, with its quotes', ['section'], 'value', '"07 27 26"'],
    ['a quoted item, with its quotes', ['places', 1], 'value', '"opening edges"'],
    ['a block scalar, without the lines that end it', ['note'], 'value', '|\n  two\n  lines'],
    ['a value that is missing, by its key', ['empty'], 'value', 'empty'],
    ['a missing item, by its dash', ['wall', 3], 'value', '-'],
    ['a map, by its key', ['wall', 1, 'framing'], 'value', 'framing'],
    ['a list, by its key', ['places'], 'value', 'places'],
    ['an item that is a map, by its id', ['wall', 0], 'value', 'id: board'],
    ['an item without an id, by its first entry', ['wall', 2], 'value', 'thickness: 1 in'],
    ['an item that is a list, by its first item', ['list', 0], 'value', 'a'],
    ['an empty item', ['list', 1], 'value', '{}'],
    ['a key', ['section'], 'key', 'section'],
    ['an entry', ['section'], 'entry', 'section: "07 27 26"'],
    ['an entry over several lines', ['wall', 1, 'framing'], 'entry', 'framing:\n      spacing: 16 in'],
    ['a whole item', ['wall', 1], 'entry', 'id: studs\n    framing:\n      spacing: 16 in'],
    ['a whole flow item', ['wall', 0], 'entry', '{ id: board, thickness: 5/8 in }'],
    ['the document, by its kind', [], 'entry', 'kind: detail'],
    ['a path that does not exist, by its nearest ancestor', ['wall', 0, 'product', 'name'], 'value', 'id: board'],
    ['a field that is missing from the document, by its kind', ['title'], 'key', 'kind: detail'],
    ['an item beyond the end, by the list', ['places', 9], 'value', 'places'],
  ])('finds %s', (_, path, part, expected) => {
    expect(at(path, part)).toBe(expected);
  });

  it('finds a document without a kind by its first entry', () => {
    expect(read('id: a\nb: 1\n').at([])).toBe('id: a');
    expect(read('- id: a\n- b\n').at([])).toBe('id: a');
    expect(read('one\ntwo\n').at([])).toBe('one');
  });

  it('is true to Windows line ends', () => {
    const windows = read(DETAIL.replaceAll('\n', '\r\n'));
    expect(windows.at(['wall', 1, 'framing', 'spacing'])).toBe('16 in');
    expect(windows.at(['note'])).toBe('|\r\n  two\r\n  lines');
    expect(windows.at(['empty'])).toBe('empty');
  });

  it('is true behind a byte order mark', () => {
    const file = sourceFile('a.yaml', '\uFEFFkind: detail\nid: W-3\n');
    const [document] = readYaml(file, file.text).documents;
    expect(document?.data).toEqual({ kind: 'detail', id: 'W-3' });
    const span = document?.spanOf(['kind']);
    // On disk: the mark, then "kind: " in columns 2 to 7.
    expect(span && lineColumn(file, span.start)).toEqual({ line: 1, column: 8 });
  });
});
