/** Commented starting documents for `lapwright new`. Each reviews without an error as it stands. */
import { SPECIFICATION, SUBMITTAL } from './starting-texts.js';

const DETAIL = `# A wall detail. Lengths and other quantities carry their unit, as on the drawing: 6 in, 5-1/2 in, 150 mm, 15 mil.
# lapwright review THIS-FILE
kind: detail
id: W-1
title: Window with mounting flange, framed wall
section: "07 27 26"                    # specification section the submittal answers
project: project-1                     # id of a project below, or a path such as ../project.yaml
drawings: [head, jamb, sill, lower corner, sheathing joints]

wall:                                  # layers, interior to exterior
  - { id: board, material: gypsum board, thickness: 5/8 in, finish: latex paint }
  - { id: studs, material: mineral wool batt, thickness: 5-1/2 in, rValue: R-21, framing: { material: wood, spacing: 16 in } }
  - { id: sheathing, material: glass-mat gypsum sheathing, thickness: 5/8 in, sheet: { width: 48 in, height: 96 in } }
  - { id: membrane, product: field-membrane, wetFilm: 15 mil }
  - { id: insulation, material: mineral wool board, thickness: 2 in, rValue: R-8.4, continuous: true }
  - { id: cavity, material: air space, thickness: 1 in, drained: true, vented: true }
  - { id: cladding, material: fiber cement panel, thickness: 5/16 in }

openings:
  - id: window
    type: window
    roughOpening: { width: 48 in, height: 60 in, depth: 6-1/2 in }
    unit: { mounting: flange, flange: 1-3/8 in, frameDepth: 3-1/4 in, class: LC, grade: 25 psf, waterTest: 3.75 psf }

edges: same wall                       # or, for each side: { top: { meets: roof, tieIn: id-of-a-work-or-detail } }

work:                                  # in the order the crew does it
  - { id: seams, place: sheathing joints, product: joint-filler, extends: 1 in, wetFilm: 25 mil, wait: 1 h }
  - { id: ro-corners, place: [inside corners, opening edges], of: window, product: joint-filler, extends: 1 in, wetFilm: 25 mil, wait: 1 h }
  - { id: pan, place: sill, of: window, product: opening-flashing, ontoWall: 6 in, pastJambs: 6 in, intoOpening: full, slope: 6 %, backDam: 1-1/4 in, endDams: 6 in, corners: fluid-applied, fasteners: none, wetFilm: 15 mil, wait: 1 h }
  - { id: jambs, place: jambs, of: window, product: opening-flashing, ontoWall: 6 in, intoOpening: full, wetFilm: 15 mil, wait: 1 h }
  - { id: head, place: head, of: window, product: opening-flashing, ontoWall: 6 in, pastJambs: 7 in, downJambs: 2 in, intoOpening: full, wetFilm: 15 mil, wait: 1 h }
  - { id: flashing-check, hold: film readings, of: [pan, jambs, head], by: installer, accept: 12 mil wet minimum }
  - { id: field, place: field, layer: membrane, lapsOnto: { opening flashing: 2 in }, wait: 24 h }
  - { id: field-check, hold: film readings, of: field, by: installer, accept: 14 mil wet minimum }
  - { id: set, set: unit, of: window, bedding: { head: sealed, jambs: sealed, sill: open }, shims: { material: plastic, gap: 1/4 in, continuous: false }, anchors: head and jambs }
  - { id: counter-jambs, place: flange jambs, of: window, product: opening-flashing, ontoWall: 4 in, wetFilm: 15 mil, wait: 1 h }
  - { id: counter-head, place: flange head, of: window, product: opening-flashing, ontoWall: 4 in, wetFilm: 15 mil, wait: 1 h }
  - { id: air-seal, place: interior perimeter, of: window, product: perimeter-sealant, sides: [head, jambs, sill], cornersContinuous: true, sealPosition: inboard of back dam, joint: { width: 3/8 in, depth: 1/4 in, backerRod: 1/2 in, back: backer rod }, bondedFaces: 2, wait: 24 h }
  - { id: wet-check, hold: water test, of: [pan, air-seal], by: independent agency, accept: no water inside the back dam, method: AAMA 502 }
  - { id: outside-board, place: field, layer: insulation }
  - { id: panels, place: field, layer: cladding }
  - { id: drywall, place: interior face, layer: board }
`;

const PROJECT = `# A project: what is true of the whole building.
kind: project
id: project-1
title: Name the building by what it is
place: { zone: 5A }                    # climate zone of the code, 1A to 8
code: { title: IBC, edition: 2021 }    # IRC, IBC or NBC
height: 38 ft
stories: 3
wind: { designPressure: 30 psf }
standards: [AAMA 714, ASTM E2112]      # standards that the contract cites
# documents: [specification.md, products/*.yaml]   # what every detail of the project may refer to
`;

const PRODUCT = (id: string, name: string, family: string, more: string): string => `kind: product
id: ${id}
name: ${name}
family: ${family}
section: "07 27 26"
dataSheet: Title and date of the data sheet
${more}`;

const MEMBRANE = PRODUCT(
  'field-membrane',
  'Vapor-permeable fluid-applied membrane',
  'fluid-applied membrane',
  `standards: [ASTM E2178, ASTM E96]
wetFilm: 14-18 mil
dryFilm: 8-11 mil
volumeSolids: 60 %
permeance: { dry: 12 perm, wet: 16 perm, atFilm: 9 mil }
airPermeance: 0.004 L/(s m2)           # at 75 Pa
airPermeanceMethod: ASTM E2178
least: { lap: 2 in }                   # least sizes that the data sheet asks for
waits: [{ before: cover, time: 24 h, at: 70 F }]
exposureLimit: 180 d
temperature: { min: 40 F, max: 100 F }
substrates: [glass-mat gypsum sheathing, plywood, concrete]
compatibleWith: [joint-filler, opening-flashing]
`,
);

const OTHERS = [
  PRODUCT(
    'joint-filler',
    'Fluid-applied joint filler',
    'joint filler',
    'standards: [AAMA 714]\nwetFilm: 20-30 mil\nleast: { coverEachSide: 1 in, cornerLeg: 1 in }\nwaits: [{ before: cover, time: 1 h, at: 70 F }]\n',
  ),
  PRODUCT(
    'opening-flashing',
    'Fluid-applied flashing',
    'fluid-applied flashing',
    'standards: [AAMA 714]\nwetFilm: 12-15 mil\nleast: { ontoWall: 4 in, pastJambs: 4 in, lap: 2 in }\nwaits: [{ before: cover, time: 1 h, at: 70 F }, { before: unit, time: 1 h, at: 70 F }]\n',
  ),
  PRODUCT(
    'perimeter-sealant',
    'Interior perimeter sealant',
    'sealant',
    'standards: [ASTM C920]\nmovement: 50 %\njointWidth: 1/4-1 in\nwaits: [{ before: water test, time: 24 h, at: 70 F }]\n',
  ),
];

const SETTINGS = `# Settings of a library of details: put this file at its root as lapwright.yaml.
kind: settings
# documents: [products/*.yaml]         # found by every detail of the library
# ignore: [drafts/**]                  # not reviewed
failOn: error                          # error, warning, note or never
# rules:
#   lap/course-lap: { level: warning }              # error, warning, note or off
#   extension/onto-wall: { parameters: { sheetReach: 12 in } }
# deviations:                          # differences that somebody with the authority accepted
#   - { id: D-1, detail: W-1, rule: sill/weeps, reason: Weeps are in the frame, acceptedBy: architect, until: 2027-06-30 }
`;

export const STARTING_DOCUMENTS: Readonly<Record<string, string>> = {
  detail: [DETAIL, PROJECT, MEMBRANE, ...OTHERS].join('---\n'),
  product: `# A product: what its data sheet declares. Leave out what the sheet does not say.\n${MEMBRANE}sources: { wetFilm: "sheet 2", permeance: "sheet 3, table 1" }   # where the sheet says it\n`,
  project: PROJECT,
  specification: SPECIFICATION,
  submittal: SUBMITTAL,
  settings: SETTINGS,
};
