/** Tables of the fields of each kind of document, read off its schema: one for each map of fields. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { anchor, code, load, ROOT, table } from './documentation.mjs';

const KINDS = ['detail', 'product', 'project', 'specification', 'submittal', 'settings'];
const NEEDED = 'yes';
/** Longer examples tell less than the page they point to. */
const LONGEST_EXAMPLE = 90;

const schemas = new Map(
  ['common', ...KINDS].map((name) => [
    `${name}.schema.json`,
    JSON.parse(readFileSync(path.join(ROOT, 'schemas', `${name}.schema.json`), 'utf8')),
  ]),
);
const { DIMENSION_WORDS, FAMILIES, MEASURES, PLACES, SUBJECTS, written } = await load(`
  export { DIMENSION_WORDS } from './src/quantity/words.ts';
  export { FAMILIES, PLACES } from './src/model/types.ts';
  export { MEASURES, SUBJECTS } from './src/model/measures.ts';
  export { written } from './src/reading/schema-words.ts';`);

/** Long lists of words stand once, in a section of their own. */
const LISTED = [
  [PLACES, '[a place](#places)'],
  [FAMILIES, '[a family](#families)'],
  [Object.keys(MEASURES), '[a property](#properties)'],
  [SUBJECTS, '[a subject](#subjects)'],
];

/** What the shared definitions of texts are called in the tables; each is described once. */
const TEXTS = {
  id: 'id',
  ruleId: 'rule id',
  relativePath: 'path',
  sectionNumber: 'section number',
  word: 'words',
  prose: 'text',
  lapName: 'id',
  fieldName: 'field name',
};

/** A schema node with what its references say; what stands beside a reference comes first. */
function resolved(node, file) {
  if (node.$ref === undefined) return { node, file };
  const [name, pointer] = node.$ref.split('#');
  const target = name || file;
  const found = pointer
    .split('/')
    .slice(1)
    .reduce((inner, key) => inner[key], schemas.get(target));
  const base = resolved(found, target);
  const beside = Object.fromEntries(Object.entries(node).filter(([key]) => key !== '$ref'));
  return { node: { ...base.node, ...beside }, file: base.file, shared: base.shared ?? found };
}

const words = (values) => values.map((value) => code(written(value))).join(', ');

/** How a value is written. `link` names the table of a map of fields. */
function how(node, file, link) {
  const { node: n, file: f } = resolved(node, file);
  if (n.enum !== undefined)
    return (
      LISTED.find(([list]) => list.length === n.enum.length && list.every((word) => n.enum.includes(word)))?.[1] ??
      words(n.enum)
    );
  if (n.const !== undefined) return code(written(n.const));
  if (n.if !== undefined && n.then?.items !== undefined) return `${how(n.else, f, link)}, or a list of them`;
  if (n.if?.const !== undefined) return `[${DIMENSION_WORDS[n.else.format]}](#quantities), or ${code(n.if.const)}`;
  // One word that stands for a whole map.
  if (n.then?.const !== undefined)
    return `${link({ ...n.else, description: n.description, examples: n.examples.slice(1) }, f)}, or ${code(n.then.const)}`;
  if (n.properties !== undefined || n.if !== undefined) return link(node, file);
  if (n.additionalProperties !== undefined && n.type === 'object')
    return `a map: name, then ${how(n.additionalProperties, f, link)}`;
  if (n.type === 'array') return `list of: ${how(n.items, f, link)}`;
  if (n.format === 'thickness')
    return `[${DIMENSION_WORDS.length}](#quantities), of a film or sheet also [${DIMENSION_WORDS.film}](#quantities)`;
  if (n.format !== undefined && n.format !== 'date')
    return `[${DIMENSION_WORDS[n.format]}](#quantities)${[n.type].flat().includes('number') ? `, or a number from ${n.minimum} to ${n.maximum}` : ''}`;
  if (n.format === 'date') return 'a date, `YYYY-MM-DD`';
  if (n.type === 'boolean') return '`true` or `false`';
  if (n.type === 'integer') return `a whole number from ${n.minimum} to ${n.maximum}`;
  const shared = Object.entries(TEXTS).find(([name]) => node.$ref?.endsWith(`/${name}`));
  if (shared !== undefined) return `[${shared[1]}](#ids-texts-and-paths)`;
  if (Array.isArray(n.type))
    return n.type.map((type) => (type === 'integer' ? 'whole number' : type === 'string' ? 'text' : type)).join(' or ');
  if (n.type === 'string') return 'text';
  return 'as its property asks';
}

/** One of several fields, when exactly one must stand. */
function choices(node) {
  const keysOf = ({ oneOf }) => {
    const keys = oneOf?.map(({ required }) => required?.[0]);
    return keys?.every(Boolean) ? [keys] : [];
  };
  const given = [node, ...(node.allOf ?? []), ...(node.then?.allOf ?? [])].flatMap(keysOf);
  // What may stand alone, instead of the choices above.
  const alone = keysOf(node.else?.else ?? {})
    .flat()
    .filter((key) => !given.flat().includes(key));
  return [
    ...given.map((keys) => `Exactly one of ${words(keys)} is given.`),
    ...(alone.length > 0 ? [`Or none of them, and only ${words(alone)}.`] : []),
  ];
}

/** The shapes a node may take, each with the key it is told by; none when it has one shape only. */
function shapes(node) {
  if (node?.if?.required === undefined || node.then?.$ref === undefined) return [];
  return [{ key: node.if.required[0], form: node.then }, ...shapes(node.else)];
}

function kindSection(kind) {
  const file = `${kind}.schema.json`;
  const schema = schemas.get(file);
  const known = new Map();
  const parts = [];

  /** The heading of a map of fields; its table is written once, where it is first met. */
  const linkFrom = (where) => (node, from) => {
    const { node: target, file: f, shared } = resolved(node, from);
    const key = shared ?? node;
    if (!known.has(key)) {
      const heading = `${kind}: ${shared === undefined ? where : (shared.title ?? where)}`;
      known.set(key, heading);
      section(heading, where, shared ?? target, f, 3);
    }
    const heading = known.get(key);
    return `[${heading.slice(kind.length + 2)}](#${anchor(heading)})`;
  };

  function section(heading, where, node, from, depth) {
    const at = parts.length;
    parts.push('');
    const forms = shapes(node);
    if (forms.length > 0) {
      const links = forms.map(({ key, form }) => [code(key), linkFrom(where)(form, from)]);
      parts[at] = `${'#'.repeat(depth)} ${heading}\n\n${node.description}\n\n${table(['key', 'shape'], links)}`;
      return;
    }
    const rows = Object.entries(node.properties).map(([name, field]) => {
      const { node: n } = resolved(field, from);
      const inner = where === '' ? name : `${where}.${name}`;
      const link = (target, f) =>
        linkFrom(
          n.type === 'array'
            ? `${inner}[]`
            : n.properties === undefined && n.type === 'object'
              ? `${inner}.NAME`
              : inner,
        )(target, f);
      const shown = n.examples === undefined ? '' : written(n.examples[0]);
      return [
        code(name),
        n.description ?? '',
        how(field, from, link),
        shown === '' || shown.length > LONGEST_EXAMPLE ? '' : code(shown),
        node.required?.includes(name) ? NEEDED : '',
      ];
    });
    const head =
      node.examples?.[0] === undefined || written(node.examples[0]).length > LONGEST_EXAMPLE
        ? ''
        : `\n\nFor example ${code(written(node.examples[0]))}.`;
    parts[at] = [
      `${'#'.repeat(depth)} ${heading}`,
      `${node.description}${head}`,
      ...choices(node),
      table(['field', 'what it is', 'written as', 'example', 'required'], rows),
    ].join('\n\n');
  }
  section(kind, '', schema, file, 2);
  return parts.join('\n\n');
}

/** How ids, texts and paths are written. */
export function textTable() {
  const defs = Object.assign({}, ...[...schemas.values()].map((schema) => schema.$defs));
  const rows = Object.entries(TEXTS)
    .filter(([name]) => name !== 'lapName')
    .map(([name, title]) => [
      title,
      defs[name].description,
      (defs[name].examples ?? []).map((value) => code(written(value))).join(', '),
    ]);
  return `## ids, texts and paths\n\n${table(['written as', 'what it is', 'example'], rows)}`;
}

/** The sections of all kinds, in the order a reader meets them. */
export function kindSections() {
  return KINDS.map(kindSection);
}
