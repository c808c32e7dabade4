import { readFileSync, readdirSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { FAMILIES, HOLDS, PLACES } from '../model/types.js';
import { MEASURES, SUBJECTS } from '../model/measures.js';
import { BASE_UNITS } from '../quantity/types.js';
import { FORMATS } from './formats.js';
import { DOCUMENT_KINDS } from './types.js';

type Node = Readonly<Record<string, unknown>>;
interface Found {
  readonly file: string;
  readonly pointer: string;
  readonly node: Node;
  /** The name, when the node describes a field. */
  readonly field?: string;
}

const folder = new URL('../../schemas/', import.meta.url);
const schemas = new Map(
  readdirSync(folder).map((name) => [name, JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as Node]),
);
const ajv = new Ajv2020({
  strict: true,
  strictRequired: false,
  allowUnionTypes: true,
  formats: FORMATS,
  schemas: [...schemas.values()],
});

/** Every schema within a schema; `examples` and words are data and not entered. */
function* nodesOf(file: string, node: unknown, pointer = '', field?: string): Generator<Found> {
  if (typeof node !== 'object' || node === null) return;
  if (Array.isArray(node)) {
    for (const [index, entry] of node.entries()) yield* nodesOf(file, entry, `${pointer}/${index}`);
    return;
  }
  yield { file, pointer, node: node as Node, ...(field === undefined ? {} : { field }) };
  for (const [key, value] of Object.entries(node)) {
    if (key === 'examples' || key === 'enum' || key === 'const') continue;
    if (key === 'properties' || key === '$defs') {
      for (const [name, inner] of Object.entries(value as Node)) {
        const isField = key === 'properties' && !/\/(if|then|else)(\/|$)/.test(pointer);
        yield* nodesOf(file, inner, `${pointer}/${key}/${name}`, isField ? name : undefined);
      }
    } else yield* nodesOf(file, value, `${pointer}/${key}`);
  }
}
const nodes = [...schemas].flatMap(([file, schema]) => [...nodesOf(file, schema)]);
const where = ({ file, pointer }: Found): string => `${file}#${pointer}`;

/** The node at a pointer such as `detail.schema.json#/$defs/place`. */
function at(place: string): Node {
  const found = nodes.find((entry) => where(entry) === place);
  if (found === undefined) throw new Error(`no schema at ${place}`);
  return found.node;
}

describe('the schemas', () => {
  it('are one for each kind of document, and what they share', () => {
    expect([...schemas.keys()].sort()).toEqual(
      ['common', ...DOCUMENT_KINDS].map((name) => `${name}.schema.json`).sort(),
    );
  });

  it.each([...schemas.keys()])('%s compiles in strict mode', (name) => {
    expect(ajv.getSchema(name)).toBeTypeOf('function');
  });

  it('have an example of a whole document', () => {
    for (const kind of DOCUMENT_KINDS) expect(at(`${kind}.schema.json#`)['examples'], kind).toHaveLength(1);
  });

  it.each([...schemas.keys()])('%s holds to its own examples', (name) => {
    const wrong: string[] = [];
    for (const found of nodes.filter(({ file, node }) => file === name && 'examples' in node)) {
      const validate = ajv.compile({ $ref: where(found) });
      for (const example of found.node['examples'] as unknown[]) {
        if (!validate(example))
          wrong.push(`${where(found)}: ${JSON.stringify(example)}: ${ajv.errorsText(validate.errors)}`);
      }
    }
    expect(wrong).toEqual([]);
  });

  it('describe every field, with an example', () => {
    const bare = nodes.filter(
      ({ field, node }) => field !== undefined && !(node['description'] && (node['examples'] || node['const'])),
    );
    expect(bare.map(where)).toEqual([]);
  });

  it('give a name in trade words to every field whose key is two words', () => {
    const nameless = nodes.filter(({ field, node }) => /[A-Z]/.test(field ?? '') && typeof node['title'] !== 'string');
    expect(nameless.map(where)).toEqual([]);
  });

  it('use only formats that are a dimension, a thickness or a date', () => {
    const known = [...Object.keys(BASE_UNITS), 'thickness', 'date'];
    const used = nodes.flatMap(({ node }) => (typeof node['format'] === 'string' ? [node['format']] : []));
    expect(used.length).toBeGreaterThan(80);
    expect(used.filter((format) => !known.includes(format))).toEqual([]);
  });

  it('are closed: a map has its fields named, or its names checked', () => {
    const open = nodes.filter(
      ({ node }) =>
        node['type'] === 'object' && node['additionalProperties'] !== false && node['propertyNames'] === undefined,
    );
    // A work item is closed by the shape that its key chooses.
    expect(open.map(where)).toEqual(['detail.schema.json#/$defs/workItem']);
  });

  it('refuse names that reach into the machine in every map with free names', () => {
    const maps = nodes.filter(({ node }) => node['propertyNames'] !== undefined);
    expect(maps.map(where)).toHaveLength(4);
    for (const map of maps) {
      const names = ajv.compile({ $ref: `${where(map)}/propertyNames` });
      for (const name of ['__proto__', 'constructor', 'prototype'])
        expect(names(name), `${where(map)} ${name}`).toBe(false);
    }
  });

  it('bound every text and every list', () => {
    const bounded = (node: Node): boolean =>
      ['format', 'pattern', 'maxLength', 'if'].some((keyword) => keyword in node);
    const endless = nodes.filter(
      ({ node, pointer }) =>
        !pointer.endsWith('/if') &&
        (([node['type']].flat().includes('string') && !bounded(node)) ||
          (node['type'] === 'array' && node['maxItems'] === undefined)),
    );
    expect(endless.map(where)).toEqual([]);
  });
});

describe('the words of the schemas are those of the model', () => {
  it.each([
    ['detail.schema.json#/$defs/layer/properties/family', FAMILIES],
    ['product.schema.json#/properties/family', FAMILIES],
    ['detail.schema.json#/$defs/place', PLACES],
    ['detail.schema.json#/$defs/holding/properties/hold', HOLDS],
    ['specification.schema.json#/$defs/requirement/properties/property', Object.keys(MEASURES)],
    ['specification.schema.json#/$defs/requirement/properties/subject', SUBJECTS],
  ])('%s', (place, words) => {
    expect(at(place)['enum']).toEqual([...words]);
  });

  it('a requirement is measured in the dimension of its property', () => {
    const groups = at('specification.schema.json#/$defs/requirement')['allOf'] as {
      if: { properties: { property: { enum: string[] } } };
      then: { properties: { atLeast: { format?: string; type: string } } };
    }[];
    const dimensions = groups.flatMap((group) => {
      const { format, type } = group.then.properties.atLeast;
      return group.if.properties.property.enum.map((property) => [
        property,
        format ?? (type === 'integer' ? 'count' : type),
      ]);
    });
    expect(Object.fromEntries(dimensions)).toEqual(
      Object.fromEntries(Object.entries(MEASURES).map(([property, { dimension }]) => [property, dimension])),
    );
  });
});
