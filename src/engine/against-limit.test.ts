/** Values at, just below and just above a limit: the tolerance is that of the printed fractions, no more. */
import { describe, expect, it } from 'vitest';
import { againstLimit, type Comparison } from './against-limit.js';
import type { Limit } from './limits.js';

const at = {
  document: {
    kind: 'detail' as const,
    id: 'd',
    file: { uri: 'd.yaml', text: '' },
    data: {},
    spanOf: () => ({ start: 0, end: 0 }),
  },
  path: [],
};
const limit: Limit = {
  value: 101.6,
  text: '4 in',
  source: { basis: 'code', citation: 'the code', provenance: 'seen' },
  others: [],
};
const compare = (provided: number, more: Partial<Comparison> = {}) =>
  againstLimit({
    subject: 's',
    at,
    dimension: 'length',
    provided,
    comparison: 'at least',
    limit,
    missing: ['x'],
    sentence: (p) => `It reaches ${p}`,
    correct: (r) => `Make it ${r}.`,
    ...more,
  });

describe('a value against a limit', () => {
  it('passes at the limit and within a tenth of a millimeter of it', () => {
    expect(compare(101.6).kind).toBe('pass');
    expect(compare(101.51).kind).toBe('pass');
  });
  it('fails below, and never reads as if it were met', () => {
    const result = compare(101.4);
    expect(result.kind).toBe('fail');
    expect(result.message).toBe('It reaches 3.99 in; at least 4 in is required (the code).');
    expect(result.correct).toBe('Make it at least 4 in.');
  });
  it('turns around for an upper limit', () => {
    expect(compare(101.8, { comparison: 'at most' }).kind).toBe('fail');
    expect(compare(90, { comparison: 'at most' }).kind).toBe('pass');
  });
  it('is open without a limit, and names what would give one', () => {
    const result = compare(50, { limit: undefined });
    expect(result.kind).toBe('open');
    expect(result.missing).toEqual(['x']);
  });
  it('fails when another document allows less than the limit asks, whatever is provided', () => {
    const conflict = {
      value: 76.2,
      text: '3 in',
      source: {
        basis: 'product data' as const,
        citation: 'product data of x',
        provenance: 'project document' as const,
      },
    };
    const result = compare(101.6, { limit: { ...limit, conflict } });
    expect(result.kind).toBe('fail');
    expect(result.message).toContain('product data of x asks for no more than 3 in: no value meets both');
  });
});
