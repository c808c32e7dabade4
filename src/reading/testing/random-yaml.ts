/** Random documents in many ways of writing, for tests of positions. */
import fc from 'fast-check';
import { dump } from 'js-yaml';
import type { Path } from '../types.js';

export type Plain = string | number | boolean | null | Plain[] | { [key: string]: Plain };

const word = fc.constantFrom(
  'sill',
  'W-3',
  '5/8 in',
  '1-3/8 in',
  '07 27 26',
  '3.10',
  'true',
  '~',
  '',
  'a: b',
  'x # y',
  '- z',
  '"q"',
  "it's",
  '{',
  ']',
  '6 %',
  '\u00B1 2 \u{1D6A2}',
  '>= 4 in',
  '&a',
  '|',
  ' led',
  'led ',
);
const text = fc.oneof(
  { weight: 6, arbitrary: word },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      'one\ntwo',
      'one\n\n  two\n',
      'end\n\n',
      '\ttab',
      'a long line of words that a printer may fold over several lines of its own making',
    ),
  },
);
const scalar = fc.oneof(
  { weight: 4, arbitrary: text },
  fc.integer({ min: -9999, max: 9999 }),
  fc.boolean(),
  fc.constant(null),
);
const name = fc.constantFrom(
  'id',
  'kind',
  'wall',
  'ontoWall',
  'opening flashing',
  '12',
  'constructor',
  'a b',
  'x:y',
  '# n',
  '',
);

/** Maps inside maps and lists, at most five deep. */
function maps(names: fc.Arbitrary<string>, values: fc.Arbitrary<Plain>): fc.Arbitrary<{ [key: string]: Plain }> {
  return fc.letrec<{ value: Plain; map: { [key: string]: Plain } }>((tie) => ({
    value: fc.oneof(
      { maxDepth: 4 },
      { weight: 3, arbitrary: values },
      fc.array(tie('value'), { maxLength: 4 }),
      tie('map'),
    ),
    map: fc.dictionary(names, tie('value'), { maxKeys: 5 }),
  })).map;
}

/** The names and texts that documents hold, and some that are hard to write. */
export const plainMap = maps(name, scalar);

interface Writing {
  readonly flowLevel: number;
  readonly lineWidth: number;
  readonly indent: number;
  readonly seqInlineFirst: boolean;
  readonly seqNoIndent: boolean;
  readonly flowBracketPadding: boolean;
  readonly forceQuotes: boolean;
  readonly quoteStyle: 'single' | 'double';
}

const writing: fc.Arbitrary<Writing> = fc.record({
  flowLevel: fc.constantFrom(-1, 0, 1, 2),
  lineWidth: fc.constantFrom(-1, 20),
  indent: fc.constantFrom(2, 4),
  seqInlineFirst: fc.boolean(),
  seqNoIndent: fc.boolean(),
  flowBracketPadding: fc.boolean(),
  forceQuotes: fc.boolean(),
  quoteStyle: fc.constantFrom('single', 'double'),
});

export interface Written {
  readonly data: { [key: string]: Plain };
  readonly text: string;
}

/** A document and one way of writing it. */
export const written: fc.Arbitrary<Written> = fc
  .tuple(plainMap, writing)
  .map(([data, style]) => ({ data, text: dump(data, { ...style, noRefs: true }) }));

/** Plain words only, so that each line is whole by itself and comments may stand behind and between all lines. */
export const commented: fc.Arbitrary<Written> = fc
  .tuple(
    maps(
      fc.constantFrom('id', 'wall', 'opening flashing', 'ontoWall'),
      fc.constantFrom('W-3', '5/8 in', 'a-b', 7, true, null),
    ),
    fc.boolean(),
    fc.boolean(),
  )
  .map(([data, seqNoIndent, seqInlineFirst]) => {
    const lines = dump(data, { noRefs: true, seqNoIndent, seqInlineFirst }).trimEnd().split('\n');
    return { data, text: `# before\n\n${lines.map((line) => `${line}  # remark: "x"\n\n   # between\n`).join('')}` };
  });

/** All paths of a document that lead to something below the root. */
export function pathsOf(value: Plain, path: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [path];
  const children = Array.isArray(value)
    ? value.map((item, index) => pathsOf(item, [...path, index]))
    : Object.entries(value).map(([key, item]) => pathsOf(item, [...path, key]));
  return [...(path.length > 0 ? [path] : []), ...children.flat()];
}

/** The value at a path. */
export function valueAt(data: Plain, path: Path): Plain {
  let value = data;
  for (const step of path) value = (value as Record<string | number, Plain>)[step] as Plain;
  return value;
}
