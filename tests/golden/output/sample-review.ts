/**
 * A small review made by hand: every kind of result, an accepted deviation, a path of water, related places, a
 * rule that stopped, and a document whose text tries to break whatever prints it.
 */
import type { Result, Source } from '../../../src/engine/result.js';
import type { Review, RuleCard } from '../../../src/output/report.js';
import { sourceFile } from '../../../src/reading/source.js';
import type { Locus, Path, ReadDocument, SourceFile } from '../../../src/reading/types.js';

const WINDOW = sourceFile(
  'walls/w-3.yaml',
  `kind: detail
id: W-3
title: Punched window with flange, framed wall
openings:
  - id: window
    roughOpening: { width: 48 in, height: 60 in, depth: 7 in }
    unit: { mounting: flange, flange: 1-3/8 in, class: CW, grade: 30 psf }
work:
  - { id: pan,   place: sill,  of: window, product: liquid-flashing, ontoWall: 6 in, backDam: 1 in, endDams: 6 in, wetFilm: 15 mil }
  - { id: jambs, place: jambs, of: window, product: liquid-flashing, ontoWall: 1-1/2 in, wetFilm: 15 mil }
  - { id: field, place: field, layer: membrane, lapsOnto: { opening flashing: 1 in } }
  - { id: set,   place: opening, of: window, set: unit, bedding: { head: sealed, jambs: sealed, sill: sealed } }
`,
);

/** One hostile word of each kind: table bar, HTML, terminal color, direction override, backticks, link, line break. */
export const HOSTILE_TITLE = 'Base | of <script>alert(1)</script> wall \u001b[31mred\u001b[0m \u202edesrever `tick`\n# heading [link](http://example.com) {0}';

const BASE = sourceFile(
  'walls/b 1.md',
  '# Base of wall\r\n\r\n```yaml detail\r\nid: B|1\r\ntitle: "Base | of <script>alert(1)</script> wall \u001b[31mred \u202edesrever `tick`"\r\n```\r\n',
);

const SPEC = sourceFile('spec/07-27-26.md', '# Section 07 27 26\n\nB. Lap field membrane 2 in. onto opening flashing.\n');

const SETTINGS = sourceFile('lapwright.yaml', 'kind: settings\naccepted:\n  - id: mockup\n    reason: Mock-up M-1 passed\n');

/** A document in which each listed path stands where its words first occur. */
function readDocument(
  kind: ReadDocument['kind'],
  id: string,
  file: SourceFile,
  data: ReadDocument['data'],
  places: Readonly<Record<string, string>>,
): ReadDocument {
  return {
    kind,
    id,
    file,
    data,
    spanOf: (path: Path) => {
      const wanted = places[path.join('.')];
      const start = wanted === undefined ? -1 : file.text.indexOf(wanted);
      if (wanted === undefined || start < 0) throw new Error(`the sample has no place for ${path.join('.')}`);
      return { start, end: start + wanted.length };
    },
  };
}

const detail = readDocument(
  'detail',
  'W-3',
  WINDOW,
  { id: 'W-3', openings: [{ id: 'window' }], work: [{ id: 'pan' }, { id: 'jambs' }, { id: 'field' }, { id: 'set' }] },
  {
    title: 'Punched window with flange, framed wall',
    'openings.0.unit': '{ mounting: flange, flange: 1-3/8 in, class: CW, grade: 30 psf }',
    'work.0.backDam': 'backDam: 1 in',
    'work.0.endDams': '6 in, wetFilm',
    'work.1.ontoWall': '1-1/2 in',
    'work.2.lapsOnto': '{ opening flashing: 1 in }',
    'work.3.bedding.sill': 'sill: sealed',
    'work.3.bedding': '{ head: sealed, jambs: sealed, sill: sealed }',
  },
);
const base = readDocument('detail', 'B|1', BASE, { id: 'B|1' }, { title: '"Base | of <script>', '': 'id: B|1' });
const spec = readDocument('specification', '07 27 26', SPEC, {}, { 'requirements.0': 'Lap field membrane 2 in.' });
const settings = readDocument('settings', 'lapwright.yaml', SETTINGS, {}, { 'accepted.0': 'id: mockup' });

const at = (document: ReadDocument, ...path: (string | number)[]): Locus => ({ document, path });

const CODE: Source = { basis: 'code', citation: 'IRC R703.4', provenance: 'from memory, confirm' };
const BARRIER: Source = { basis: 'code', citation: 'IRC R703.2', provenance: 'seen' };
const GUIDE: Source = {
  basis: 'guide',
  citation: 'DOE Building America Solution Center, fully flashed openings',
  provenance: 'seen',
  url: 'https://basc.pnnl.gov/resource-guides/fully-flashed-window-and-door-openings',
};
const PROJECT: Source = {
  basis: 'specification',
  citation: 'Section 07 27 26, 3.4.B',
  provenance: 'project document',
  at: at(spec, 'requirements', 0),
};
const PRACTICE: Source = { basis: 'practice', citation: 'common practice', provenance: 'common practice, no source' };
const PHYSICS: Source = { basis: 'physics', citation: 'head of water, p = rho g h', provenance: 'computed' };

type Given = Omit<Result, 'documentId' | 'file' | 'span' | 'fingerprint'>;

function result(document: ReadDocument, given: Given): Result {
  const span = given.at.document.spanOf(given.at.path);
  return { ...given, documentId: document.id, file: given.at.document.file, span, fingerprint: `${given.ruleId}#${document.id}#${given.at.path.join('/')}` };
}

const results: Result[] = [
  result(base, {
    ruleId: 'document/wrong-value',
    kind: 'fail',
    level: 'error',
    message: `The title "${HOSTILE_TITLE}" is not a plain title.\nWrite one line of plain text.`,
    at: at(base, 'title'),
    provided: HOSTILE_TITLE,
  }),
  result(base, { ruleId: 'lap/reverse-lap', kind: 'notApplicable', level: 'none', message: 'The detail has no opening.', at: at(base) }),
  result(detail, {
    ruleId: 'water/back-dam',
    kind: 'open',
    level: 'none',
    message: 'The back dam cannot be held against the water-test pressure, because the detail does not state it.',
    at: at(detail, 'openings', 0, 'unit'),
    missing: ['openings[0].unit.waterTest'],
    sources: [PHYSICS],
  }),
  result(detail, {
    ruleId: 'water/end-dams',
    kind: 'pass',
    level: 'none',
    message: 'The pan has end dams at both jambs.',
    subject: 'pan of window',
    at: at(detail, 'work', 0, 'endDams'),
    required: 'end dams at both ends',
    provided: '6 in',
    sources: [GUIDE],
  }),
  result(detail, {
    ruleId: 'extend/onto-wall',
    kind: 'fail',
    level: 'warning',
    message: 'The jamb flashing reaches 1-1/2 in onto the wall.',
    subject: 'jamb flashing of window',
    at: at(detail, 'work', 1, 'ontoWall'),
    required: '4 in',
    provided: '1-1/2 in',
    correct: 'Extend the jamb flashing at least 4 in onto the wall.',
    sources: [PRACTICE],
    suppression: {
      justification: 'Mock-up M-1 passed its water test with this width',
      acceptedBy: 'architect of record',
      until: '2031-06-30',
      at: at(settings, 'accepted', 0),
    },
  }),
  result(detail, {
    ruleId: 'extend/field-lap',
    kind: 'fail',
    level: 'warning',
    message: 'The field membrane laps 1 in onto the jamb flashing.',
    subject: 'field membrane at window',
    at: at(detail, 'work', 2, 'lapsOnto'),
    required: '2 in',
    provided: '1 in',
    correct: 'Lap the field membrane at least 2 in onto the opening flashing.',
    sources: [PROJECT, CODE],
    related: [{ message: 'the jamb flashing', at: at(detail, 'work', 1, 'ontoWall') }],
  }),
  result(detail, {
    ruleId: 'water/sill-drains',
    kind: 'fail',
    level: 'error',
    message: 'Water that reaches the pan cannot leave it: the sill flange is sealed.',
    subject: 'sill of window',
    at: at(detail, 'work', 3, 'bedding', 'sill'),
    required: 'sill flange open to drain',
    provided: 'sealed',
    correct: 'Leave the sill flange open: `sill: open`.',
    sources: [GUIDE],
    related: [{ message: 'End of the back dam', at: at(detail, 'work', 0, 'backDam') }],
    flow: [
      { message: 'Rain enters at the lower corner of the unit.', at: at(detail, 'openings', 0, 'unit') },
      { message: 'It falls into the pan and runs outward.', at: at(detail, 'work', 0, 'backDam') },
      { message: 'The sealed flange stops it.', at: at(detail, 'work', 3, 'bedding', 'sill'), essential: true },
    ],
  }),
  result(detail, {
    ruleId: 'seal/bedding-compatible',
    kind: 'review',
    level: 'none',
    message: 'The bedding sealant and the flashing touch; judge the certificate of compatibility.',
    at: at(detail, 'work', 3, 'bedding'),
  }),
  result(detail, {
    ruleId: 'extend/onto-wall',
    kind: 'informational',
    level: 'none',
    message: 'The least width is found at the lower corners.',
    at: at(detail, 'work', 1, 'ontoWall'),
  }),
];

function card(id: string, title: string, summary: string, level: RuleCard['level'], sources: Source[], more: Partial<RuleCard> = {}): RuleCard {
  const page = `# ${title}\n\n${summary}\n\n## On the wall\n\nWater follows *gravity*; see [the guide](https://example.com/guide).\n\n\`\`\`yaml detail\nwork:\n  - { id: pan, place: sill }\n\`\`\`\n`;
  return { id, title, summary, level, sources, page: () => page, ...more };
}

export const sampleReview: Review = {
  toolVersion: '0.1.0',
  results,
  rules: [
    card('extend/field-lap', 'Lap of the field membrane', 'The field membrane laps the opening flashing as far as asked.', 'warning', [CODE]),
    card('extend/onto-wall', 'Width on the wall', 'Opening flashing reaches far enough onto the wall.', 'warning', [PRACTICE], {
      parameters: { least: { type: 'length', default: '4 in', meaning: 'Least width on the wall.', source: PRACTICE } },
    }),
    card('lap/reverse-lap', 'Reverse lap', 'No upward edge lies open over the piece below it.', 'error', [CODE, BARRIER, GUIDE]),
    card('seal/bedding-compatible', 'Bedding compatible', 'Sealants that touch are shown to be compatible.', 'note', []),
    card('water/back-dam', 'Back dam', 'The back dam is higher than the head of water of the test.', 'error', [PHYSICS]),
    card('water/end-dams', 'End dams', 'The pan is dammed at both ends.', 'error', [GUIDE]),
    card('water/sill-drains', 'Sill drains', 'Water in the pan can run out.', 'error', [GUIDE], {
      caution: 'Water held in a wall rots framing that carries load.',
    }),
  ],
  notifications: [
    { level: 'warning', message: 'Rule film/coverage stopped: the product has no volume solids.', ruleId: 'film/coverage', documentId: 'W-3', uri: 'walls/w-3.yaml' },
  ],
  details: [
    { id: 'B|1', title: HOSTILE_TITLE, uri: 'walls/b 1.md' },
    { id: 'W-3', title: 'Punched window with flange, framed wall', uri: 'walls/w-3.yaml' },
    { id: 'W-4', title: 'Storefront jamb', uri: 'walls/w-4.yaml' },
  ],
  failOn: 'error',
  exitCode: 1,
  commandLine: ['review', 'walls'],
};
