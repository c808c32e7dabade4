/** The sentences of the format reference that no schema holds. Which fields size a place is found by trying, not here. */

/** What a work covers at each place. */
export const COVERS = {
  sill: 'A band under the opening, `ontoWall` high, from `pastJambs` beyond one jamb to `pastJambs` beyond the other; the sill inside, `intoOpening` deep. `endDams` turns the ends up: inside along each jamb, and on the face over the width of `pastJambs`.',
  jambs:
    'A band beside each jamb, `ontoWall` wide, from sill to head, longer by `belowSill` and `aboveHead`; each jamb inside, `intoOpening` deep.',
  'left jamb': 'As `jambs`, on the left side only, seen from outside.',
  'right jamb': 'As `jambs`, on the right side only, seen from outside.',
  head: 'A band over the opening, `ontoWall` high (`upstand` where there is no `ontoWall`), from `pastJambs` to `pastJambs`; its ends run `downJambs` down over the jamb flashing; the head inside, `intoOpening` deep.',
  'inside corners':
    'The four corners inside the opening, `extends` to each side, over the whole `depth` of the rough opening. Nothing on the face.',
  'opening edges': 'All four edges of the opening: `extends` (else `ontoWall`) out on the face and as far inside.',
  'sheathing joints':
    'A strip along every joint of each layer with a `sheet`, `extends` to each side of the line, moved by `offCenter`.',
  'fastener heads': 'The heads of the sheathing fasteners. They are not placed on the face.',
  field:
    'All of the wall face shown, openings and penetrations left out. Without `lapsOnto` it runs to the edge of the openings, over the flashing; with `lapsOnto: { opening flashing: ... }` it stops there, that far onto the flashing. A sheet with `roll` is cut into courses, each `courseLap` over the one below.',
  'field below sill': 'As `field`, only below the sill of its opening.',
  'field above sill': 'As `field`, from the sill of its opening up, starting `courseLap` below the sill.',
  opening: 'The opening as a whole, for work that has no band of its own.',
  'flange head':
    'A strip over the head flange of the set unit and `ontoWall` beyond the flange; its ends reach as far beyond the jambs as it is high, or `pastJambs` beyond the flange.',
  'flange jambs':
    'A strip over each jamb flange and `ontoWall` beyond it, from the sill to the top of the head flange, longer by `belowSill` and `aboveHead`.',
  'flange sill': 'A strip over the sill flange and `ontoWall` beyond it; its ends as at `flange head`.',
  'interior perimeter': 'The joint around the unit on its inside; see `sides`, `joint`, `sealPosition`.',
  'exterior perimeter': 'The joint around the unit on its outside; see `sides`, `joint`, `weeps`.',
  penetration: 'A collar `extends` beyond the penetration, all around (a square one, also around a pipe).',
  'base of wall': 'A band along the bottom of the face shown, `upstand` high (else `ontoWall`, else `bearing`).',
  'top of wall': 'A band along the top of the face shown, `bearing` high (else `ontoWall`).',
  'inside corner of building': 'A change of direction of the wall, turning in.',
  'outside corner of building': 'A change of direction of the wall, turning out.',
  'movement joint': 'A joint of the building that moves; see `bearing`, `slack`, `unbonded`, `movement`.',
  lintel:
    'The line over an opening in masonry veneer and its through-wall flashing; see `upstand`, `projects`, `pastJambs`, `endDams`, `weeps`.',
  'shelf angle':
    'The line of a shelf angle or relieving angle and its flashing; see `upstand`, `projects`, `endDams`, `weeps`.',
  'interior face': 'The inner face of the wall: interior board, vapor retarder, paint.',
};

/** What each subject of a requirement is. */
export const SUBJECT_MEANS = {
  'opening flashing': 'flashing at the sill, jambs and head of a rough opening',
  'sill pan': 'what lies at `sill`',
  'jamb flashing': 'what lies at `jambs`, `left jamb` or `right jamb`',
  'head flashing': 'what lies at `head`',
  counterflashing: 'what laps over the flange: `flange head`, `flange jambs`, `flange sill`',
  'field membrane': 'the membrane at `field`, `field below sill` or `field above sill`',
  'joint treatment': 'what lies at `sheathing joints` or `fastener heads`',
  'corner treatment': 'what lies at `inside corners` or `opening edges`',
  penetration: 'a collar or boot at `penetration`',
  'transition membrane': 'a transition at `base of wall`, `top of wall`, `movement joint` or a corner of the building',
  'base flashing': 'flashing at `base of wall`',
  'through-wall flashing': 'flashing that leads the cavity out, at `lintel`, `shelf angle` or `base of wall`',
  'interior seal': 'the seal at `interior perimeter`',
  'exterior seal': 'the seal at `exterior perimeter`',
};

/** Ways of writing a quantity: text, dimension, what it means. */
export const NOTATION = [
  ['5-1/2 in', 'length', 'a mixed number: whole number, hyphen, fraction'],
  ['5 1/2"', 'length', 'the same with a space and the inch mark'],
  ['4\'-6"', 'length', 'feet and inches'],
  ['100 mm', 'length', 'SI'],
  ['12-15 mil', 'film', 'a range'],
  ['15 mil (0.38 mm)', 'film', 'the same value in two units, as data sheets print it; the two have to agree'],
  ['1/4 to 1/2 in', 'length', 'a range of fractions'],
  ['1/4-1/2 in', 'length', 'the same with a hyphen'],
  ['>= 4 in', 'length', 'at least; also `4 in minimum`, `not less than 4 in`'],
  ['3/8 in max.', 'length', 'at most; also `up to 3/8 in`'],
  ['6 %', 'slope', 'a slope'],
  ['1/4 in per ft', 'slope', 'the same kind of slope, as rise and run'],
  ['1:48', 'slope', 'rise to run'],
  ['level', 'slope', 'no slope'],
  ['-2 %', 'slope', 'falls to the interior'],
  ['R-13', 'thermalResistance', 'US thermal resistance'],
  ['RSI 2.3', 'thermalResistance', 'SI thermal resistance'],
  ['70 F', 'temperature', 'a temperature'],
  ['1 h 30 min', 'time', 'hours and minutes'],
  ['2 wk', 'time', 'weeks'],
  ['60 %', 'fraction', 'a share'],
  ['0.6', 'fraction', 'the same share; the one case of a bare number'],
  ['+100/-50 %', 'movement', 'movement in two directions; the smaller one counts'],
];

const OPENING = 'openings:\n  - { id: window, roughOpening: { width: 36 in, height: 48 in, depth: 6 in } }\n';
const HEAD = 'kind: detail\nid: W-9\ntitle: Window\n';
const work = (...items) => `${HEAD}${OPENING}work:\n${items.map((item) => `  - ${item}\n`).join('')}`;

/** Mistakes with a document that holds each: what is shown of it, the whole, and what to know besides. */
export const MISTAKES = [
  {
    written: 'ontoWall: 6',
    text: work('{ id: pan, place: sill, material: flashing, ontoWall: 6 }'),
    says: 'Every quantity carries its unit.',
  },
  { written: 'ontoWall: 6 inn', text: work('{ id: pan, place: sill, material: flashing, ontoWall: 6 inn }'), says: '' },
  { written: 'wetFilm: 15 psf', text: work('{ id: pan, place: sill, material: flashing, wetFilm: 15 psf }'), says: '' },
  {
    written: 'ontoWal: 6 in',
    text: work('{ id: pan, place: sill, material: flashing, ontoWal: 6 in }'),
    says: 'Unknown fields are never passed over.',
  },
  { written: 'place: sil', text: work('{ id: pan, place: sil, material: flashing }'), says: '' },
  { written: '{ id: pan, place: sill }', text: work('{ id: pan, place: sill }'), says: '' },
  {
    written: '{ id: pan, material: ... }',
    text: work('{ id: pan, material: flashing }'),
    says: 'The key `place`, `set`, `close` or `hold` says what is done.',
  },
  {
    written: 'product: liquid-flahsing',
    text: `${work('{ id: pan, place: sill, product: liquid-flahsing }')}---\nkind: product\nid: liquid-flashing\nname: Fluid-applied flashing\nfamily: fluid-applied flashing\n`,
    says: '',
  },
  {
    written: 'product: liquid-flashing',
    text: work('{ id: pan, place: sill, product: liquid-flashing }'),
    says: 'See "How references are found" in writing-details.md.',
  },
  { written: 'of: windw', text: work('{ id: pan, place: sill, material: flashing, of: windw }'), says: '' },
  {
    written: 'tuckedUnder: field',
    text: work(
      '{ id: head, place: head, material: flashing, ontoWall: 6 in, tuckedUnder: field }',
      '{ id: field, place: field, material: housewrap }',
    ),
    says: '',
  },
  { written: 'id: 3.10', text: `kind: detail\nid: 3.10\ntitle: Window\n`, says: 'As a number it would become 3.1.' },
  {
    written: 'endDams: >= 4 in',
    text: `${HEAD}${OPENING}work:\n  - id: pan\n    place: sill\n    material: flashing\n    endDams: >= 4 in\n`,
    says: '',
  },
  {
    written: 'two openings without at',
    text: `${HEAD}openings:\n  - { id: left, roughOpening: { width: 36 in, height: 48 in } }\n  - { id: right, roughOpening: { width: 36 in, height: 48 in } }\n`,
    says: 'The first opening is the origin; every further one needs `at`.',
  },
  {
    written: 'two works called pan',
    text: work('{ id: pan, place: sill, material: flashing }', '{ id: pan, place: head, material: flashing }'),
    says: '',
  },
  { written: '&wall', text: `${HEAD}wall: &wall\n  - { id: board, material: gypsum board }\n`, says: '' },
  { written: 'kind: details', text: 'kind: details\nid: W-9\ntitle: Window\n', says: '' },
  { written: 'no kind', text: 'id: W-9\ntitle: Window\n', says: '' },
];
