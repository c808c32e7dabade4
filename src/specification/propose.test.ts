import { describe, expect, it } from 'vitest';
import { asked, BEFORE, readParagraph, told } from './testing/one-paragraph.js';
import { readSection } from './read.js';

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
    expect(reading.passedOver.map(({ value }) => value.text)).toEqual(['1.27 L/(s m2)']);
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
    ['Peel adhesion (ASTM D4541): 25 psi minimum.', ['method and property differ: ']],
    ['Width: minimum 3 inches maximum.', ['conflicting comparators: 3 in']],
    ['Flexibility at \ufffd20 degrees: pass.', ['lost sign: ']],
  ])('%s', (text, expected) => {
    expect(asked(text)).toEqual(expected);
    expect(told(text).filter((one) => !one.includes('25 psi') && !one.includes('pass'))).toEqual([]);
  });

  it('is asked by the title when the sentence does not name the property', () => {
    const source =
      'PART 1 GENERAL\n\n1.7 FIELD PEEL ADHESION TEST\n\nRecord the area which failed in accordance with ASTM D4541.\n';
    expect(readSection(source).questions.map(({ kind }) => kind)).toEqual(['method and property differ']);
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
