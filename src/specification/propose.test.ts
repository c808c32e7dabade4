import { describe, expect, it } from 'vitest';
import { asked, BEFORE, readParagraph, told } from './testing/one-paragraph.js';
import { readSection } from './read.js';
import { unitsNamed } from './units.js';

/** Lengths are in millimeters or meters inside; the quantity room says which. */
const PER_MM =
  1 /
  (unitsNamed('mm')
    .find(({ kind }) => kind === 'length')
    ?.toBase(1) ?? NaN);

describe('requirements proposed from a sentence', () => {
  it.each([
    // Words before the value, and behind it.
    ['Lap membrane a minimum of 75 mm 3 inch over transition membrane.', ['lap atLeast 75 mm (3 in)']],
    ['Extend flashing no less than 6 inches onto the wall.', ['extension onto wall atLeast 6 in']],
    ['End dams: 6" high min.', ['end dam height atLeast 6 in']],
    [
      'Space weeps at 24 inches on center maximum, minimum two weeps per opening.',
      ['weep spacing atMost 24 in', 'weep count atLeast 2 weeps'],
    ],
    [
      'Air Permeance: ASTM E2178; 0.004 cfm/sq. ft. (0.02 L/s x sq. m) maximum at 1.57 psf (75 Pa).',
      ['air permeance atMost 0.004 cfm/ft2 (0.02 L/(s m2))'],
    ],
    ['Water vapor permeance per ASTM E96: 11 perms or greater.', ['permeance atLeast 11 perm']],
    ['Apply membrane at 12 mils wet, minimum.', ['wet film atLeast 12 mil']],
    ['Slope pan 6 percent minimum to the exterior.', ['sill slope atLeast 6 %']],
    ['Cover each sheathing joint 1 inch minimum on both sides.', ['cover each side atLeast 1 in']],
    ['Wait not less than 24 hours nor more than 14 days before covering.', ['wait atLeast 24 h', 'wait atMost 14 d']],
    // The words of one value hold for the next.
    [
      'Extend flashing at least 6 inches onto the wall and 4 inches into the opening.',
      ['extension onto wall atLeast 6 in', 'extension into opening atLeast 4 in'],
    ],
    [
      'Sealant joint depth shall be not less than 1/4 inch and not more than 1/2 inch.',
      ['joint depth atLeast 1/4 in', 'joint depth atMost 1/2 in'],
    ],
    // A prohibition turns the words around.
    [
      'Do not apply membrane when the temperature is below 40 degrees F.',
      ['"Do not apply membrane when the temperature" atLeast 40 degF'],
    ],
    ['Do not leave it exposed for more than 60 days.', ['"Do not leave it exposed" atMost 60 d']],
    ['Dry film thickness shall be between 40 and 60 mils.', ['dry film between 40 to 60 mil']],
    ['Provide 3/8-inch backer rod.', ['"Provide" equals 3/8 in']],
    ['Elongation, ASTM D 412: 300 percent, minimum.', ['"Elongation" atLeast 300 %']],
    ['Perform one test per 1,000 square feet of wall.', ['"frequency: Perform one test per" atLeast 1 per 1000 ft2']],
    ['Forward reports within five working days.', ['"Forward reports" atMost 5 working days']],
    ["Installer shall have a minimum of three years' experience.", ['"Installer shall have" atLeast 3 years']],
    ['Fire propagation (NFPA 285): Pass.', ['"Fire propagation" equals Pass']],
    [
      'The wall shall show no water leakage when tested per ASTM E1105 at 300 Pa for 15 minutes.',
      ['"water leakage" equals no water leakage'],
    ],
  ])('%s', (text, expected) => {
    expect(told(text)).toEqual(expected);
  });

  it.each([
    // A list that shares a unit is one value each; a choice is none.
    ['Test at 5, 50, and 95 percent completion.', ['"Test" equals 5 %', '"Test" equals 50 %', '"Test" equals 95 %']],
    ['Build a sample of 8 feet by 6 feet minimum.', ['"Build a sample" atLeast 8 ft', '"Build a sample" atLeast 6 ft']],
    [
      'Flash 6 inches onto the wall and 2 inches into the opening, minimum.',
      ['extension onto wall atLeast 6 in', 'extension into opening atLeast 2 in'],
    ],
    // Ratings and counts.
    ['Staining: rating of 0.', ['"Staining" equals 0']],
    ['Fungal growth (ASTM D5590): 0, No growth.', ['"Fungal growth" equals 0']],
    ['Apply the membrane in two coats.', ['"Apply the membrane" equals 2 coats']],
    ['Submit no fewer than 3 cured strips.', ['"cured strips" atLeast 3 cured strips']],
    ['Take one test per floor.', ['"Take" atLeast 1 test']],
    [
      'Inspect once per 1,000 square feet, but not less than 3 per elevation.',
      ['"frequency: Inspect once per" atLeast 1 per 1000 ft2', '"per elevation" atLeast 3'],
    ],
    ['The installer must have three or more years of experience.', ['"installer must have" atLeast 3 years']],
    // Comparators.
    ['Slope sills no flatter than 1:12.', ['sill slope atLeast 1:12']],
    ['Meet no later than 14 days before the work.', ['"Meet" atLeast 14 d']],
    ['Meet no later than 14 days after the award.', ['"Meet" atMost 14 d']],
    ['Film readings: none under 18 mils.', ['"Film readings" atLeast 18 mil']],
    ['Elongation: no less than 300 percent.', ['"Elongation" atLeast 300 %']],
    ['Fill gaps over 1/4 inch.', ['"Fill gaps over" atLeast 1/4 in']],
    ['Tape: 3/8-inch-wide minimum.', ['"Tape" atLeast 3/8 in']],
    ['Fill joints of 1/4 inch and up to 1/2 inch.', ['"Fill joints of 1/4 inch" atMost 1/2 in']],
    ['Turn the membrane 8" above finished grade (min.).', ['base flashing above grade atLeast 8 in']],
    // Numbers that only look like those of sheets and tables.
    ['Overlap sheets 2 inches minimum.', ['lap atLeast 2 in']],
    // "At least" is not the "at" of a test.
    [
      'Test in 3 places per 500 sq. ft.; each at least 15 psi.',
      ['"frequency: Test in 3 places per" atLeast 3 per 500 ft2', '"each" atLeast 15 psi'],
    ],
    ['Leakage is measured at a test pressure of 75 Pa.', ['"Leakage is measured at a test pressure" equals 75 Pa']],
  ])('%s', (text, expected) => {
    expect(told(text)).toEqual(expected);
  });

  it('keeps the size that a tolerance stands beside', () => {
    const [one] = readParagraph('Bite: 3/8 inch, plus or minus 1/8 inch.').proposals;
    // 3/8 in are 9.525 mm; 1/4 and 1/2 in are 6.35 and 12.7 mm.
    expect([one?.value?.nominalBase, one?.value?.base, one?.value?.upperBase].map((m) => (m ?? 0) * PER_MM)).toEqual([
      expect.closeTo(9.525),
      expect.closeTo(6.35),
      expect.closeTo(12.7),
    ]);
  });

  it('passes over definitions, wherever they stand, and says so', () => {
    const reasons = (text: string): string[] =>
      readParagraph(text).passedOver.map(({ value, reason }) => `${value.text} ${reason}`);
    for (const text of [
      '"Thick" means at least 60 mils.',
      'Vapor-open: refers to more than 5 perms.',
      'Retarders are divided into classes.\n\nClass II: 0.1 to 1.0 perm.',
    ])
      expect([told(text), reasons(text).map((reason) => reason.replace(/^.* in/, 'in'))], text).toEqual([
        [],
        ['in a definition'],
      ]);
    const article = readSection(
      'PART 1 GENERAL\n\n1.1 DEFINITIONS\n\nA. Thick film: at least 60 mils.\n\n1.2 WORK\n\nA. Lap at least 3 inches.\n',
    );
    expect(article.proposals.map(({ value }) => value?.text)).toEqual(['3 in']);
    // A class that is asked for is no definition.
    expect(told('Class II retarder: vapor permeance at least 0.1 perm.')).toEqual(['permeance atLeast 0.1 perm']);
  });

  it('loses no number: what is neither proposed nor asked about is passed over', () => {
    const reading = readParagraph('Depth: one half of the width; use mesh from row 12; mix at 300 rpm.');
    expect(reading.passedOver.map(({ value, reason }) => `${value.text}: ${reason}`)).toEqual([
      '1/2: a share of something else',
      '12: no unit',
      '300 rpm: no known unit',
    ]);
  });

  it('keeps the conditions of a test apart from the value', () => {
    const conditions = (text: string): string[] | undefined =>
      readParagraph(text).proposals[0]?.conditions.map((condition) => condition.text);
    expect(
      conditions('Leakage shall not exceed 0.2 L/s per square meter at 75 Pa 0.04 cfm per square foot at 1.57 psf.'),
    ).toEqual(['75 Pa', '1.57 psf']);
    expect(conditions('Crack bridging (ASTM C1305): Pass at minus 26 degrees C minus 15 degrees F.')).toEqual([
      '-26 degC',
      '-15 degF',
    ]);
    expect(conditions('Peel adhesion (ASTM D903): not less than 5 lb/in at 73 degrees F after 7 days.')).toEqual([
      '73 degF',
      '7 d',
    ]);
  });

  it('says how sure it is and why', () => {
    const trust = (text: string): string | undefined => readParagraph(text).proposals[0]?.confidence;
    expect(trust('Lap the membrane at least 3 inches.')).toBe('high');
    expect(trust('Notify the architect at least 48 hours prior to the test.')).toBe('medium');
    expect(trust('Reinforce all joints exceeding 1/4 inch with mesh.')).toBe('low');
    // Two heights are spoken of, so neither is sure.
    expect(trust('Sill pan: back dam, end dams 6 inches minimum.')).toBe('medium');
    expect(readParagraph('Lap the membrane at least 3 inches.').proposals[0]?.reasons).toEqual([
      'the comparator "at least"',
      'a known unit',
      'the words name lap',
    ]);
  });

  it('takes a threshold for no limit of a known property', () => {
    expect(told('Fill sheathing gaps between panels exceeding 1/4 inch.')).toEqual([
      '"Fill sheathing gaps between panels exceeding" atLeast 1/4 in',
    ]);
  });

  it('names the subject that is worked on, not what it reaches', () => {
    expect(readParagraph('Lap the field membrane 2 inches minimum onto opening flashing.').proposals[0]?.subject).toBe(
      'field membrane',
    );
    expect(readParagraph('Turn up the through-wall flashing at least 8 inches.').proposals[0]?.subject).toBe(
      'through-wall flashing',
    );
  });

  it('reads orders of work without values', () => {
    const [order] = readParagraph('Treat all joints prior to application of the membrane.').proposals;
    expect(order).toMatchObject({ sequence: 'prior to application of the membrane' });
    expect(order?.compare).toBeUndefined();
  });

  it('points at the value, through wrapped lines', () => {
    const source = `${BEFORE}Lap the membrane not less\n   than 75 mm\n   3 inches over it.\n`;
    const [proposal] = readSection(source).proposals;
    expect(source.slice(proposal!.span.start, proposal!.span.end)).toBe('75 mm\n   3 inches');
    expect(proposal?.number).toBe('3.1.A');
  });

  it('passes over quantities in text that asks for nothing, and counts them', () => {
    const reading = readParagraph('The rate of flow is driven by pressure (example: 1.27 L/s-m2 @ 75 Pa).');
    expect(reading.proposals).toEqual([]);
    expect(reading.passedOver.map(({ value }) => value.text)).toEqual(['1.27 L/(s m2)', '75 Pa']);
  });
});

describe('tables', () => {
  it('are read by their strokes', () => {
    const rows = [
      '| Property | Test Method | Minimum | Maximum | Units |',
      '|---|---|---|---|---|',
      '| Hardness | ASTM D2240 | 30 | 50 | Shore A |',
      '| Dry film | ASTM D6132 | 40 | | mils |',
    ];
    expect(told(`Properties:\n\n${rows.join('\n')}`)).toEqual([
      '"Hardness" atLeast 30 Shore A',
      '"Hardness" atMost 50 Shore A',
      'dry film atLeast 40 mil',
    ]);
  });

  it('take the unit that stands beside the name of the row', () => {
    const rows = [
      '| Property | Minimum | Maximum |',
      '|---|---|---|',
      '| Peel adhesion (lb/in) | at least 8 | |',
      '| Exposure (days) | | 120 |',
    ];
    expect(told(`Properties:\n\n${rows.join('\n')}`)).toEqual([
      '"Peel adhesion" atLeast 8 lbf/in',
      '"Exposure" atMost 120 d',
    ]);
  });

  it('are read by the columns of the page, with empty cells', () => {
    const rows = [
      'Property                     Method        Value',
      '---------------------------  ------------  -------------------',
      'Low temperature flexibility  ASTM C1305    Pass',
      'Elongation                                 300 percent minimum',
      'Vapor permeance              ASTM E96      10 perms, min.',
    ];
    const reading = readParagraph(`Properties:\n\n${rows.join('\n')}`);
    expect(
      reading.proposals.map(({ property, characteristic, value, methods }) => [
        property ?? characteristic,
        value?.text,
        methods[0],
      ]),
    ).toEqual([
      ['Low temperature flexibility', 'Pass', 'ASTM C1305'],
      ['Elongation', '300 %', undefined],
      ['permeance', '10 perm', 'ASTM E96'],
    ]);
  });

  it('are read by dot leaders', () => {
    expect(
      told('Properties:\n\nTensile strength ......... 350 psi minimum\nElongation ............... 250 percent minimum'),
    ).toEqual(['"Tensile strength" atLeast 350 psi', '"Elongation" atLeast 250 %']);
  });
});

describe('what is asked instead of decided', () => {
  it.each([
    ['Water vapor permeance: 570 ng/Pa s m2 10.0 perms.', ['no comparator: 570 ng/(Pa s m2), 10.0 perm']],
    ['Extend flashing 8 inches behind the membrane.', ['no comparator: 8 in']],
    [
      'Dry film thickness of not less than [1][1.5][_____] mm [40][60][_____] mils.',
      ['choice left open: 1 mm, 1.5 mm, 40 mil, 60 mil'],
    ],
    ['Provide a vapor[ permeable][ retarding] barrier.', ['choice left open: ']],
    ['Leakage: not more than 0.2 L/(s m2) 75 Pa.', ['lost sign: 0.2 L/(s m2)']],
    ['Low temperature flexibility: pass at not more than 26 degrees C.', ['lost sign: 26 degC']],
    ['Vapor permeance: not less than 570 ng/(Pa s m).', ['lost sign: 570 ng/(Pa s m)']],
    ['Corners: 12 to 6 inches each way.', ['reversed range: 12 to 6 in']],
    ['Strength: 150 qx/zz minimum.', ['unknown unit: 150 qx/zz']],
    ['Leakage shall not exceed 0.25 cfm/ft.', ['unknown unit: 0.25 cfm/ft']],
    ['Film thickness: minimum 40.', ['no unit: 40']],
    ['Maintain a minimum temperature of 40 degrees.', ['no unit: 40 deg']],
    ['Peel adhesion (ASTM D4541): 25 psi minimum.', ['method and property differ: 25 psi']],
    ['Width: minimum 3 inches maximum.', ['conflicting comparators: 3 in']],
    ['Flexibility at \ufffd20 degrees: pass.', ['lost sign: ']],
  ])('%s', (text, expected) => {
    expect(asked(text)).toEqual(expected);
    expect(told(text).filter((one) => !one.includes('25 psi') && !one.includes('pass'))).toEqual([]);
  });

  it('is asked for each value in an article whose bracket is open, and for none behind it', () => {
    const source =
      'PART 1 GENERAL\n\n[1.1 LEAKAGE\n\nA. Lap at least 3 inches.\n\nB. Turn up at least 8 inches.]\n\nC. Lap at least 5 inches.\n\n1.2 WORK\n\nA. Lap at least 4 inches.\n';
    const { questions, proposals } = readSection(source);
    const open = questions.filter(({ kind }) => kind === 'choice left open');
    expect(open.map(({ values }) => values.map(({ text }) => text).join())).toEqual(
      expect.arrayContaining(['', '3 in', '8 in']),
    );
    expect(open.some(({ values }) => values.some(({ text }) => ['4 in', '5 in'].includes(text)))).toBe(false);
    expect(proposals.map(({ value, confidence }) => `${value?.text ?? ''} ${confidence}`)).toEqual([
      '3 in medium',
      '8 in medium',
      '5 in high',
      '4 in high',
    ]);
  });

  it('names the values of a paragraph in brackets', () => {
    expect(asked('Lap.\n\n[B. Turn up at least 8 inches.]')).toEqual(['choice left open: 8 in']);
  });

  it('is asked by the title when the sentence does not name the property', () => {
    const source =
      'PART 1 GENERAL\n\n1.7 FIELD PEEL ADHESION TEST\n\nRecord the area which failed in accordance with ASTM D4541.\n';
    expect(readSection(source).questions.map(({ kind }) => kind)).toEqual(['method and property differ']);
  });

  it.each([
    ['Water vapor permeance (ASTM E96/E96M, Procedure B): minimum 10 perms.', 'ASTM E96/E96M Procedure B'],
    ['Water vapor permeance per ASTM E96, desiccant method A: 10 perms minimum.', 'ASTM E96 desiccant method A'],
    ['Water vapor permeance: minimum 10 perms, ASTM E96 (water method).', 'ASTM E96 water method'],
    ['Water vapor permeance: minimum 10 perms by Procedure BW of ASTM E96.', 'ASTM E96 Procedure BW'],
    ['Water vapor permeance by ASTM E96 Methods A and B: minimum 10 perms.', 'ASTM E96 Methods A and B'],
    ['Water vapor permeance per ASTM E96 method as reported: minimum 10 perms.', 'ASTM E96'],
  ])('keeps the procedure by which a permeance is asked: %s', (sentence, method) => {
    const [proposal] = readParagraph(sentence).proposals;
    expect(proposal?.methods).toEqual([method]);
  });

  it('does not doubt methods that fit', () => {
    for (const text of [
      'Elongation (ASTM D412): 300 percent minimum.',
      'Air leakage (ASTM E2357, ASTM E283/E283M): maximum 0.04 cfm/ft2 at 75 Pa.',
      'Pull adhesion (ASTM D4541): 16 psi minimum.',
      'Anything (ASTM Z9999): 16 psi minimum.',
    ])
      expect(asked(text)).toEqual([]);
  });
});

/** A value that is given to the wrong property would be confirmed quickly and checked everywhere. */
describe('the second value of a sentence', () => {
  it.each([
    [
      'Lap vertical seams at least 10 inches, and offset them no less than 20 inches.',
      ['lap atLeast 10 in', '"offset them" atLeast 20 in'],
    ],
    [
      'Lap sheets not less than 3 inches and space nails at most 8 inches.',
      ['lap atLeast 3 in', '"space nails" atMost 8 in'],
    ],
    // Words that belong to the second do not name the first.
    [
      'Run jamb flashing at least 1 inch above the head, and fold the strip into the opening 3 inches minimum.',
      ['"Run jamb flashing" atLeast 1 in', 'extension into opening atLeast 3 in'],
    ],
    [
      'Slope sill at least 1/4 inch per foot, with back dam not less than 1 inch.',
      ['sill slope atLeast 1/4 in/ft', 'back dam height atLeast 1 in'],
    ],
    [
      'Cover joints with tape at least 4 inches wide and be no thinner than 50 mils.',
      [expect.stringContaining('atLeast 4 in'), expect.stringContaining('thickness" atLeast 50 mil')],
    ],
    [
      'Allow primer to dry at least 30 minutes and hold rolls at a minimum of 50 degrees F.',
      ['wait atLeast 30 min', '"hold rolls" atLeast 50 degF'],
    ],
  ])('keeps what it is of: %s', (text, expected) => {
    expect(told(text)).toEqual(expected);
  });

  it('takes the cure of masonry for no time between coats', () => {
    expect(told('Masonry shall have cured not less than 21 days.')).toEqual([
      '"Masonry shall have cured" atLeast 21 d',
    ]);
    expect(told('Allow coating to cure at least 24 hours.')).toEqual(['wait atLeast 24 h']);
  });
});

describe('what lies at a lap or a dam has no such size', () => {
  it.each([
    ['Space nails at laps no more than 8 inches apart.', ['"Space nails at laps" atMost 8 in']],
    ['Keep fasteners at least 2 inches from end dams.', ['"Keep fasteners" atLeast 2 in']],
    ['Seal laps with a bead at least 1/4 inch wide.', ['"Seal laps with a bead" atLeast 1/4 in']],
    ['Roll laps with a roller at least 4 inches wide.', ['"Roll laps with a roller" atLeast 4 in']],
    ['Test adhesion not less than 24 hours after the coating has cured.', ['"Test adhesion" atLeast 24 h']],
    // The lap itself keeps its name.
    ['Laps shall be at least 3 inches wide.', ['lap atLeast 3 in']],
    ['Overlap sheets not less than 3 inches at end laps.', ['lap atLeast 3 in']],
  ])('%s', (text, expected) => {
    expect(told(text)).toEqual(expected);
  });
});
