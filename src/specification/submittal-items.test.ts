import { describe, expect, it } from 'vitest';
import { readSection } from './read.js';

function items(text: string): string[] {
  return readSection(`PART 1   GENERAL\n\n${text}\n`).submittals.map(
    ({ number, item, of }) => `${number ?? '-'} ${item}${of === undefined ? '' : ` of ${of}`}`,
  );
}

describe('submittals', () => {
  it('have limits where words limit them, and numbers that are passed over', () => {
    const text =
      'SD-04 Samples\n    Beads on card, not shorter than 8 inches\n    Chips of each color, 2 inches wide\n';
    const reading = readSection(`PART 1   GENERAL\n\n1.3   SUBMITTALS\n\n${text}`);
    expect(reading.proposals.map(({ compare, value }) => `${compare ?? ''} ${value?.text ?? ''}`)).toEqual([
      'atLeast 8 in',
    ]);
    expect(reading.passedOver.map(({ value, reason }) => `${value.text}: ${reason}`)).toEqual([
      '2 in: in a list of submittals',
    ]);
  });

  it('of a federal guide stand in groups', () => {
    const text = [
      '1.3   SUBMITTALS',
      '',
      'Submit the following:',
      '',
      'SD-02 Shop Drawings',
      '    Barrier Shop Drawings; G[, [_____]]',
      'SD-03 Product Data',
      '    Membrane; G[, [_____]]',
      'SD-04 Samples',
      '    Membrane Mockup; G',
      'SD-06 Test Reports',
      '    Flame Propagation of Wall Assemblies; G',
      '',
      '1.4   OTHER',
    ].join('\n');
    expect(items(text)).toEqual([
      '1.3 shop drawings of Barrier',
      '1.3 product data of Membrane',
      '1.3 mock-up of Membrane Mockup',
      '1.3 test reports of Wall Assemblies',
    ]);
  });

  it('stand as labelled paragraphs', () => {
    const text =
      '1.03 ACTION SUBMITTALS\n\nA. Product Data: For each type of product.\nB. Samples for each color.\nC. Warranty, signed.\nD. Field quality-control plan.';
    expect(items(text)).toEqual([
      '1.03.A product data',
      '1.03.B samples of each color',
      '1.03.C warranty',
      '1.03.D field quality plan',
    ]);
  });

  it('are asked for in sentences', () => {
    const text =
      '1.4   REPORTS\n\nSubmit test reports for flame propagation of walls tested by others.  Keep the area clean.';
    expect(items(text)).toEqual(['1.4 test reports of flame propagation of walls']);
  });
});

it('thousands of items are found in a time that grows with their number', () => {
  const time = (count: number): number => {
    const items = Array.from({ length: count }, (_, i) => `Submit samples of sheet k${i}.\n\n`).join('');
    const start = performance.now();
    expect(readSection(`PART 1 GENERAL\n\n1.1 SUBMITTALS\n\n${items}`).submittals).toHaveLength(count);
    return performance.now() - start;
  };
  time(500);
  expect(time(20_000)).toBeLessThan(40 * Math.max(50, time(2_000)));
}, 60_000);
