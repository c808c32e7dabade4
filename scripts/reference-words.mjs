/** The words of the format outside the schemas: quantities, places, families and messages. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { code, load, ROOT, sameWords, table } from './documentation.mjs';
import { COVERS, MISTAKES, NOTATION } from './reference-texts.mjs';

const {
  BASE_UNITS,
  DIMENSION_WORDS,
  EXAMPLES,
  FAMILIES,
  PLACES,
  buildDetail,
  buildFace,
  defaultEdge,
  familyNames,
  isProblem,
  parseQuantity,
  readDocuments,
  shedsWater,
  sourceFile,
  unitsOf,
} = await load(`
  export { BASE_UNITS } from './src/quantity/types.ts';
  export { DIMENSION_WORDS, EXAMPLES } from './src/quantity/words.ts';
  export { isProblem, parseQuantity } from './src/quantity/parse.ts';
  export { unitsOf } from './src/quantity/units.ts';
  export { FAMILIES, PLACES } from './src/model/types.ts';
  export { defaultEdge, familyOfMaterial as familyNames, shedsWater } from './src/model/families.ts';
  export { buildDetail } from './src/model/detail.ts';
  export { buildFace } from './src/geometry/face.ts';
  export { readDocuments } from './src/reading/documents.ts';
  export { sourceFile } from './src/reading/source.ts';`);

const schemaText = readdirSync(path.join(ROOT, 'schemas'))
  .map((name) => readFileSync(path.join(ROOT, 'schemas', name), 'utf8'))
  .join('\n');

export function quantityTables() {
  const used = Object.keys(BASE_UNITS).filter((dimension) => schemaText.includes(`"format": "${dimension}"`));
  const units = used.map((dimension) => [
    DIMENSION_WORDS[dimension],
    unitsOf(dimension)
      .map(
        (unit) =>
          code(unit.spelling) +
          (unit.aliases.length === 0 ? '' : ` (also ${unit.aliases.slice(0, 2).map(code).join(', ')})`),
      )
      .join(', '),
    code(EXAMPLES[dimension]),
  ]);
  const notation = NOTATION.map(([text, dimension, says]) => {
    const q = parseQuantity(text, dimension);
    if (isProblem(q)) throw new Error(`scripts/reference-texts.mjs: ${text} is not read: ${q.message}`);
    const unit = BASE_UNITS[dimension];
    const number = (x) => String(Number(x.toPrecision(6)));
    return [
      code(text),
      says,
      `${q.bound === 'exactly' || q.bound === 'between' ? '' : `${q.bound} `}${number(q.value)}${q.upper === undefined ? '' : ` to ${number(q.upper)}`} ${unit}`,
    ];
  });
  return `## Quantities

A quantity is a number with its unit, US or SI, as on the drawing. A bare number is refused, except for a fraction from 0
to 1. Capitals, plurals, dots and powers do not matter: \`Mils\`, \`sq. ft\`, \`m²\` are read. Only temperature and slope may
be negative. A value that begins with \`<\`, \`>\`, \`%\` or a quotation mark needs quotes in YAML: \`">= 4 in"\`.

${table(['dimension', 'units, commonest first', 'example'], units)}

${table(['written', 'what it means', 'read as'], notation)}`;
}

const EXTENTS = [
  'extends',
  'offCenter',
  'ontoWall',
  'intoOpening',
  'pastJambs',
  'aboveHead',
  'belowSill',
  'downJambs',
  'endDams',
  'upstand',
  'bearing',
  'lapsOnto',
  'courseLap',
  'roll',
  'slope',
  'backDam',
  'projects',
  'aboveGrade',
  'ontoFoundation',
  'endLap',
];

/** The rectangles that a work at a place covers, as text. */
function shapeOf(place, extents) {
  const work = [
    { id: 'flash', place: ['sill', 'head'], material: 'housewrap', ontoWall: '5 in' },
    { id: 'piece', place, material: 'housewrap', ...extents },
  ];
  const data = {
    id: 'probe',
    title: 'probe',
    face: { left: '40 in', right: '40 in', below: '40 in', above: '40 in' },
    wall: [
      {
        id: 'board',
        material: 'sheathing',
        sheet: { width: '20 in', height: '30 in', from: { right: '-7 in', up: '11 in' } },
      },
    ],
    openings: [
      {
        id: 'o',
        roughOpening: { width: '30 in', height: '40 in', depth: '8 in' },
        unit: { mounting: 'flange', flange: '1 in' },
      },
    ],
    penetrations: [{ id: 'p', at: { left: '20 in', up: '20 in' }, diameter: '3 in' }],
    work,
  };
  const document = {
    kind: 'detail',
    id: 'probe',
    file: sourceFile('probe.yaml', ''),
    data,
    spanOf: () => ({ start: 0, end: 0 }),
  };
  const { detail, problems } = buildDetail(document, { products: new Map(), specifications: [] });
  if (detail === undefined) throw new Error(problems.map((p) => p.message).join(' '));
  const pieces = buildFace(detail).pieces.filter((p) => p.work.id === 'piece');
  return JSON.stringify(pieces.map((p) => [p.face, p.returns]));
}

const SIZE = (name) => (name === 'lapsOnto' ? { 'opening flashing': '2 in' } : name === 'roll' ? '30 in' : '3 in');

/** Fields whose value moves the edges of the piece: tried one by one, alone and beside all others. */
function sizedBy(place) {
  const every = Object.fromEntries(EXTENTS.map((name) => [name, SIZE(name)]));
  return EXTENTS.filter((name) => {
    const others = Object.fromEntries(Object.entries(every).filter(([other]) => other !== name));
    return (
      shapeOf(place, { [name]: SIZE(name) }) !== shapeOf(place, {}) || shapeOf(place, every) !== shapeOf(place, others)
    );
  });
}

export function placeTable() {
  sameWords('places', COVERS, PLACES);
  return `## Places

What a work covers at each place, and the fields that size it there. Lengths are measured on the wall face from the edge
of the rough opening, or inward from the face. A place without sizing fields takes up no room on the face; it counts for
the order of work, and for the checks of seals, joints and transitions.

${table(
  ['place', 'what the work covers', 'sized by'],
  PLACES.map((place) => [code(place), COVERS[place], sizedBy(place).map(code).join(', ')]),
)}

Only families that shed water take up room on the face (see [families](#families)), and layers whose \`controls\` name
water: board insulation and cladding hung over a barrier hide it, but take no part in its laps.`;
}

export function familyTable() {
  const yes = (truth) => (truth ? 'yes' : '');
  return `## Families

The family of a product is stated; that of a layer or work with a generic \`material\` is found by known words in it
(${['clay brick', 'housewrap', 'mineral wool batt', 'plywood'].map((name) => `${code(name)}: ${familyNames(name)}`).join(', ')}) and is \`other\` when there are none; a layer may then state \`family\`.

${table(
  ['family', 'sheds water', 'edge when neither work nor product states one'],
  FAMILIES.map((family) => [code(family), yes(shedsWater(family)), shedsWater(family) ? defaultEdge(family) : '']),
)}`;
}

export async function messageSection() {
  const rows = [];
  for (const { written: shown, text, says } of MISTAKES) {
    const file = sourceFile('example.yaml', text);
    const { documents, problems } = await readDocuments(file, { named: true });
    const detail = documents.find((d) => d.kind === 'detail');
    const products = new Map(documents.filter((d) => d.kind === 'product').map((d) => [d.id, d]));
    const found =
      problems[0] ??
      (detail === undefined ? undefined : buildDetail(detail, { products, specifications: [] }).problems[0]);
    if (found === undefined) throw new Error(`scripts/reference-texts.mjs: nothing is wrong with ${shown}.`);
    rows.push([code(shown), code(`document/${found.code}`), found.message, says]);
  }
  return `## Messages

What is said of the commonest mistakes, each message as printed.

${table(['written', 'check', 'message', 'remark'], rows)}`;
}
