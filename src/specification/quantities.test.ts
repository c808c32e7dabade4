import { describe, expect, it } from 'vitest';
import { covered } from './masks.js';
import { quantitiesIn } from './quantities.js';
import { readSection } from './read.js';

/** `75 mm|length`, ranges with `..`, choices as `[1,1.5]`. */
function read(text: string): string[] {
  return quantitiesIn(covered(text)).map(({ number, upper, others, units, unknownUnit, unitText }) => {
    const figures = [number.text, ...(upper ? ['..', upper.text] : []), ...(others ?? []).map((one) => `,${one.text}`)];
    const choice = number.choices === undefined ? '' : `[${number.choices.join()}${number.blank === true ? ',_' : ''}]`;
    return `${choice || figures.join('')} ${unknownUnit ? `?${unitText}` : (units[0]?.spelling ?? '')}`.trim();
  });
}

describe('quantities in prose', () => {
  it.each([
    ['40 degrees F and 4 deg. C or 5°C', ['40 degF', '4 degC', '5 degC']],
    // Units of one letter, before words.
    ['a panel 3 m long, 24 h before work', ['3 m', '24 h']],
    ['30 m of joint, kept 2 m clear of the edge', ['30 m', '2 m']],
    ['above 5 C during work, 40 F when open', ['5 degC', '40 degF']],
    ['at least 2 h but less than 24 h', ['2 h', '24 h']],
    ['option 2 C of the guide, 2 C clips', ['2', '2']],
    ['minus 20 deg C, -5 °F and negative 4 F', ['-20 degC', '-5 degF', '-4 degF']],
    ['3/8-inch rod, a 4-inch strip, 1-1/2 in., 5½ inches', ['3/8 in', '4 in', '1-1/2 in', '5']],
    ['two weeks, forty-eight (48) hours, one-half inch', ['2 wk', '48 h', '1/2 in']],
    ['12 wet mils, 40 mils dry, 0.04 CFM per sf, 0.2 L/s-m2', ['12 mil', '40 mil', '0.04 cfm/ft2', '0.2 L/(s m2)']],
    ['570 ng/Pa s m2, 572 ng/(Pa x s x sq. m), 10 perms', ['570 ng/(Pa s m2)', '572 ng/(Pa s m2)', '10 perm']],
    ['between 40 and 100 degrees F; 12-15 mils; 4 to 6 in', ['40..100 degF', '12..15 mil', '4..6 in']],
    ['5, 50, and 95 percent of the work', ['5,50,95 %']],
    ['1,000 square feet and 100 sq. ft.', ['1000 ft2', '100 ft2']],
    [`4'-6" tall`, ['54 in']],
    ['25 pli, 5 lb/in, 0.88 N/mm, 50 g/L, 2.4 MPa', ['25 lbf/in', '5 lbf/in', '0.88 N/mm', '50 g/L', '2.4 MPa']],
    ['five working days and 3 years', ['5 working days', '3 years']],
    ['not less than [1][1.5][_____] mm', ['[1,1.5,_] mm']],
    ['150 qx/zz', ['150 ?qx/zz']],
    ['1/4 inch plus or minus 1/16 inch', ['0.1875..0.3125 in']],
  ])('%s', (text, expected) => {
    expect(read(text)).toEqual(expected);
  });

  it('reads no numbers out of designations, sections, classes and addresses', () => {
    expect(read('Section 07 92 00, Class 25, Type 2, Paragraph 3.4.B.2, SD-03, https://example.org/12 in')).toEqual([]);
  });

  it('takes the word "in" for inches only where nothing else can follow', () => {
    expect(read('Comply with 4 in accordance with the drawings')).toEqual(['4']);
    expect(read('4 in wide')).toEqual(['4 in']);
  });

  it.each(['1, ', '[1]', '1 a ', '5 mm (', 'ASTM E96 ', 'at least ', 'one ', '[', 'a: 1 ', '****\n', '| 1 ', 'A. 1\n'])(
    'reads 50,000 characters of "%s" in a time that grows with their length',
    (piece) => {
      const start = performance.now();
      readSection(`PART 1 GENERAL\n\n1.1 A\n\n${piece.repeat(50_000 / piece.length)}`);
      expect(performance.now() - start).toBeLessThan(5000);
    },
  );

  it.each(['Provide a coat of 40 mils wherever it is shown on the drawings. ', 'and the same '])(
    'reads eight times as much of "%s" in no more than twenty times the time',
    (piece) => {
      const time = (characters: number): number => {
        const start = performance.now();
        readSection(`PART 1 GENERAL\n\n1.1 A\n\n${piece.repeat(characters / piece.length)}`);
        return performance.now() - start;
      };
      time(20_000);
      expect(time(400_000)).toBeLessThan(20 * Math.max(20, time(50_000)));
    },
    30_000,
  );

  it('offers no value where the figures in a choice are no number', () => {
    expect(read('[5-1/0] inches')).toEqual(['[] in']);
    expect(read('at least [1/4][3/8] inch')).toEqual(['[0.25,0.375] in']);
  });
});
