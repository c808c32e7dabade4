/**
 * Writes a library of details to measure with: as varied as real ones (sizes, units, mountings, methods, several
 * openings, penetrations), some of them broken in the ways that details are. The same seed gives the same bytes.
 *
 *   node bench/generate.mjs COUNT FOLDER [SEED]
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';

/** Uniform in [0, 1) from a whole number (mulberry32): small, fast and the same everywhere. */
function random(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** What a detail draws from: all choices go through these, so that the order of draws is the order of the text. */
function chooser(seed) {
  const next = random(seed);
  return {
    oneOf: (list) => list[Math.floor(next() * list.length)],
    chance: (share) => next() < share,
    whole: (from, to) => from + Math.floor(next() * (to - from + 1)),
  };
}

const SETTINGS = 'kind: settings\ndocuments: [products/*.yaml]\n';

const PROJECT = `kind: project
id: bench-project
title: Three stories of offices
place: { zone: 5A }
code: { title: IBC, edition: 2021 }
height: 38 ft
stories: 3
wind: { designPressure: 30 psf }
standards: [AAMA 714, ASTM E2112]
documents: [specification.md]
`;

const SPECIFICATION = `# Section 07 27 26 - Air barriers

\`\`\`yaml specification
section: "07 27 26"
title: Air barriers
requirements:
  - { paragraph: "3.2.A", subject: joint treatment, property: cover each side, atLeast: 1 in }
  - { paragraph: "3.2.B", subject: opening flashing, property: extension onto wall, atLeast: 6 in }
  - { paragraph: "3.2.C", subject: sill pan, property: end dam height, atLeast: 4 in }
  - { paragraph: "3.3.A", subject: field membrane, property: lap, atLeast: 2 in }
\`\`\`
`;

const product = (id, family, more) =>
  `kind: product\nid: ${id}\nname: Product ${id}\nfamily: ${family}\nsection: "07 27 26"\n${more}`;
const PRODUCTS = [
  product(
    'permeable-membrane',
    'fluid-applied membrane',
    'standards: [ASTM E2178, ASTM E96]\nwetFilm: 14-18 mil\ndryFilm: 8-11 mil\nvolumeSolids: 60 %\npermeance: { dry: 12 perm, wet: 16 perm, atFilm: 9 mil }\nleast: { lap: 2 in }\nwaits: [{ before: cover, time: 24 h, at: 70 F }]\nexposureLimit: 180 d\n',
  ),
  product('sheet-barrier', 'mechanically fastened sheet', 'roll: 60 in\nleast: { lap: 6 in, endLap: 6 in }\n'),
  product(
    'joint-filler',
    'joint filler',
    'standards: [AAMA 714]\nwetFilm: 20-30 mil\nleast: { coverEachSide: 1 in, cornerLeg: 1 in }\nwaits: [{ before: cover, time: 1 h, at: 70 F }]\n',
  ),
  product(
    'liquid-flashing',
    'fluid-applied flashing',
    'standards: [AAMA 714]\nwetFilm: 12-15 mil\nleast: { ontoWall: 4 in, pastJambs: 4 in, lap: 2 in }\nwaits: [{ before: cover, time: 1 h, at: 70 F }, { before: unit, time: 1 h, at: 70 F }]\n',
  ),
  product('flashing-strip', 'self-adhered flashing', 'standards: [AAMA 711]\nleast: { ontoWall: 4 in, lap: 2 in }\n'),
  product('interior-sealant', 'sealant', 'standards: [ASTM C920]\nmovement: 50 %\njointWidth: 1/4-1 in\n'),
];

/** A length in the units of the detail. */
const lengthIn = (si) => (inches) =>
  si
    ? `${Math.round(inches * 25.4)} mm`
    : Number.isInteger(inches)
      ? `${inches} in`
      : `${inches.toFixed(3).replace(/0+$/, '')} in`;

function opening(pick, len, id, right) {
  const { oneOf, chance, whole } = pick;
  const width = whole(24, 120);
  const height = whole(30, 96);
  const flanged = chance(0.6);
  const unit = flanged
    ? `{ mounting: flange, flange: ${len(1.375)}, frameDepth: ${len(3.25)}, class: ${oneOf(['R', 'LC', 'CW'])}, grade: ${whole(15, 50)} psf, waterTest: ${oneOf(['2.9', '3.75', '4.5', '7.5'])} psf }`
    : `{ mounting: recessed, frameDepth: ${len(4.5)}, class: ${oneOf(['CW', 'AW'])}, grade: ${whole(30, 60)} psf, waterTest: ${oneOf(['6', '8', '12'])} psf }`;
  const lines = [
    `  - id: ${id}`,
    `    type: ${flanged ? 'window' : 'storefront'}`,
    `    roughOpening: { width: ${len(width)}, height: ${len(height)}, depth: ${len(7)} }`,
    ...(right > 0 ? [`    at: { right: ${len(right)}, up: ${len(whole(0, 24))} }`] : []),
    `    unit: ${unit}`,
  ];
  return { id, flanged, width, text: lines };
}

/** Steps of one opening; `broken` gives values and orders that a review finds. */
function steps(pick, len, { id, flanged }, sheet, broken) {
  const { oneOf, chance } = pick;
  const wrong = (good, bad) => (broken && chance(0.3) ? bad : good);
  const flashing = sheet ? 'flashing-strip' : 'liquid-flashing';
  const film = sheet ? '' : `, wetFilm: ${wrong('15 mil', '7 mil')}, wait: ${wrong('1 h', '10 min')}`;
  const name = (step) => `${step}-${id}`;
  const pan = `  - { id: ${name('pan')}, place: sill, of: ${id}, product: ${flashing}, ontoWall: ${len(wrong(6, 2))}, pastJambs: ${len(wrong(6, 1.5))}, intoOpening: full, slope: ${wrong('6 %', '1 %')}, backDam: ${len(wrong(2, 0.5))}, endDams: ${len(wrong(6, 1))}${film} }`;
  const jambs = `  - { id: ${name('jambs')}, place: jambs, of: ${id}, product: ${flashing}, ontoWall: ${len(wrong(6, 3))}, intoOpening: full${film} }`;
  const head = `  - { id: ${name('head')}, place: head, of: ${id}, product: ${flashing}, ontoWall: ${len(wrong(6, 3))}, pastJambs: ${len(7)}, downJambs: ${len(2)}, intoOpening: full${film} }`;
  const set = flanged
    ? `  - { id: ${name('set')}, set: unit, of: ${id}, bedding: { head: sealed, jambs: sealed, sill: ${wrong('open', 'sealed')} }, shims: { material: ${wrong('plastic', 'wood')}, gap: ${len(0.25)}, continuous: false }, anchors: head and jambs }`
    : `  - { id: ${name('set')}, set: unit, of: ${id}, bedding: { sill: open }, shims: { material: plastic, gap: ${len(0.25)}, continuous: false } }`;
  const counter = flanged
    ? [
        `  - { id: ${name('counter')}, place: [flange head, flange jambs], of: ${id}, product: ${flashing}, ontoWall: ${len(4)}${film} }`,
      ]
    : [];
  const sides = wrong('[head, jambs, sill]', '[head, jambs]');
  const seal = `  - { id: ${name('air-seal')}, place: interior perimeter, of: ${id}, product: interior-sealant, sides: ${sides}, joint: { width: ${len(0.375)}, depth: ${len(0.25)}, backerRod: ${len(0.5)} }, bondedFaces: ${wrong(2, 3)} }`;
  const around =
    broken && chance(0.25)
      ? oneOf([
          [head, jambs, pan],
          [jambs, pan, head],
        ])
      : [pan, jambs, head];
  return { before: around, after: [set, ...counter, seal] };
}

/** Text of one detail. */
export function detail(number, seed) {
  const pick = chooser(seed * 1_000_003 + number);
  const { chance, whole, oneOf } = pick;
  const len = lengthIn(chance(0.3));
  const sheet = chance(0.25);
  const broken = chance(0.35);
  const openings = [];
  let right = 0;
  for (let n = whole(1, 3); n > 0; n--) {
    const one = opening(pick, len, `opening-${openings.length + 1}`, right);
    openings.push(one);
    right += one.width + whole(24, 60);
  }
  const pipes = Array.from({ length: whole(0, 3) }, (_, n) => `pipe-${n + 1}`);
  const parts = openings.map((one) => steps(pick, len, one, sheet, broken));
  const field = sheet
    ? `  - { id: field, place: field, layer: membrane, roll: ${len(60)}, courseLap: ${len(6)}, endLap: ${len(6)} }`
    : `  - { id: field, place: field, layer: membrane, lapsOnto: { opening flashing: ${len(2)} }, wait: 24 h }`;
  const lines = [
    '# Written by bench/generate.mjs.',
    'kind: detail',
    `id: B-${number}`,
    `title: ${oneOf(['Window', 'Storefront', 'Row of openings'])} in framed wall, number ${number}`,
    'section: "07 27 26"',
    'project: ../project.yaml',
    'drawings: [head, jamb, sill, lower corner, sheathing joints]',
    'wall:                        # interior to exterior',
    `  - { id: board, material: gypsum board, thickness: ${len(0.625)}, finish: latex paint }`,
    `  - { id: studs, material: mineral wool batt, thickness: ${len(6)}, rValue: R-23, framing: { material: ${oneOf(['steel', 'wood'])}, spacing: ${len(16)}, depth: ${len(6)} } }`,
    `  - { id: sheathing, material: ${oneOf(['glass-mat gypsum sheathing', 'plywood'])}, thickness: ${len(0.625)}, sheet: { width: ${len(48)}, height: ${len(96)} } }`,
    sheet
      ? '  - { id: membrane, product: sheet-barrier }'
      : `  - { id: membrane, product: permeable-membrane, wetFilm: ${whole(11, 18)} mil }`,
    `  - { id: insulation, material: mineral wool board, thickness: ${len(whole(1, 4))}, rValue: R-8.4, continuous: true }`,
    `  - { id: cavity, material: air space, thickness: ${len(1)}, drained: true, vented: true }`,
    `  - { id: cladding, material: fiber cement panel, thickness: ${len(0.5)} }`,
    'openings:',
    ...openings.flatMap(({ text }) => text),
    ...(pipes.length > 0 ? ['penetrations:'] : []),
    ...pipes.map(
      (id, n) =>
        `  - { id: ${id}, type: pipe, at: { left: ${len(20 + 14 * n)}, up: ${len(whole(4, 40))} }, diameter: ${len(oneOf([1, 2, 4]))} }`,
    ),
    'work:                        # in the order the crew does it',
    `  - { id: seams, place: sheathing joints, product: joint-filler, extends: ${len(broken && chance(0.3) ? 0.25 : 1)}, wetFilm: 25 mil, wait: 1 h }`,
    ...parts.flatMap(({ before }) => before),
    ...pipes.map((id) => `  - { id: set-${id}, set: penetration, of: ${id} }`),
    field,
    ...pipes.map(
      (id) =>
        `  - { id: collar-${id}, place: penetration, of: ${id}, product: liquid-flashing, extends: ${len(4)}, wetFilm: 15 mil, wait: 1 h }`,
    ),
    ...parts.flatMap(({ after }) => after),
    '  - { id: outside-board, place: field, layer: insulation }',
    '  - { id: panels, place: field, layer: cladding }',
    '  - { id: drywall, place: interior face, layer: board }',
  ];
  return `${lines.join('\n')}\n`;
}

/** Writes a library of `count` details into a folder. */
export function generate(count, folder, seed = 1) {
  for (const name of ['details', 'products']) mkdirSync(path.join(folder, name), { recursive: true });
  const put = (name, text) => writeFileSync(path.join(folder, name), text);
  put('lapwright.yaml', SETTINGS);
  put('project.yaml', PROJECT);
  put('specification.md', SPECIFICATION);
  put('products/all.yaml', PRODUCTS.join('---\n'));
  for (let n = 1; n <= count; n++) put(`details/B-${String(n).padStart(5, '0')}.yaml`, detail(n, seed));
}

if (process.argv[1] === import.meta.filename) {
  const [count, folder, seed] = process.argv.slice(2);
  if (!(Number(count) > 0) || folder === undefined) {
    process.stderr.write('Usage: node bench/generate.mjs COUNT FOLDER [SEED]\n');
    process.exitCode = 2;
  } else generate(Number(count), folder, Number(seed ?? 1));
}
