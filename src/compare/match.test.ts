import { describe, expect, it } from 'vitest';
import { matchResults } from './match.js';
import { Names } from './names.js';
import { differencesOf, progressOf } from './progress.js';
import type { Told } from './types.js';

/** A result of the rule `a/rule` on W-1; only what a case is about is given. */
function told(number: number, own: Partial<Told>): Told {
  return {
    number,
    detail: 'W-1',
    rule: 'a/rule',
    subject: 'pan of window',
    kind: 'pass',
    level: 'none',
    message: 'The pan is as asked.',
    required: undefined,
    provided: undefined,
    correct: undefined,
    missing: [],
    sources: [],
    accepted: undefined,
    path: 'W-1/work/pan',
    position: () => ({ uri: 'W-1.yaml', line: 1, column: 1 }),
    evidence: () => [],
    ...own,
  };
}

/** Pairs as `old number-new number`. */
function matched(before: readonly Partial<Told>[], after: readonly Partial<Told>[], ids?: readonly string[]): string[] {
  const [old, now] = [before.map((one, i) => told(i, one)), after.map((one, i) => told(i, one))];
  const known = ids === undefined ? undefined : new Set(ids);
  return matchResults(old, now, new Names(), () => known).map((pair) => `${pair.before.number}-${pair.after.number}`);
}

describe('which result is which', () => {
  it('is told of more results than a call can take arguments', () => {
    const many = Array.from({ length: 150_000 }, (_, i) => ({ message: `Layer ${i}.` }));
    expect(matched(many, [])).toEqual([]);
    expect(matched(many, many)).toHaveLength(150_000);
  });

  it('the subject decides, though another result says exactly what the old one said', () => {
    const message = 'The flashing reaches 6 in.';
    expect(
      matched(
        [
          { subject: 'head of window', message, provided: '6 in' },
          {
            subject: 'sill of window',
            message: 'Nothing covers it.',
            provided: 'nothing',
            path: 'W-1/openings/window',
          },
        ],
        [
          { subject: 'sill of window', message, provided: '6 in' },
          {
            subject: 'head of window',
            message: 'Nothing covers it.',
            provided: 'nothing',
            path: 'W-1/openings/window',
          },
        ],
      ),
    ).toEqual(['0-1', '1-0']);
  });

  it('a floor and a ceiling of one subject are told apart by what is required alone', () => {
    expect(
      matched(
        [
          { required: 'at least 12 mil', provided: '13 mil' },
          { required: 'at most 15 mil', provided: '13 mil' },
        ],
        [
          { required: 'at most 16 mil', provided: '9 mil' },
          { required: 'at least 10 mil', provided: '9 mil', kind: 'fail', level: 'error' },
        ],
      ),
    ).toEqual(['0-1', '1-0']);
  });

  it('a window that was taken out is not the door that was put in, alike as they are', () => {
    const of = (id: string): Partial<Told> => ({
      subject: `head of ${id}`,
      message: `The flashing at the head of "${id}" reaches 6 in onto the wall; at least 4 in is required.`,
      path: `W-1/openings/${id}`,
    });
    expect(matched([of('window')], [of('door')], ['window', 'door'])).toEqual([]);
  });

  it('a subject told in other words is found again at the same place', () => {
    expect(matched([{ subject: 'corners of window' }], [{ subject: 'lower corners of window' }])).toEqual(['0-0']);
    const apart = [
      { subject: 'lower corners of window', message: 'Slit where water collects.', path: 'W-1/work/head' },
    ];
    expect(matched([{ subject: 'corners of window' }], apart)).toEqual([]);
  });

  it('results of two rules or two details are never one', () => {
    expect(matched([{}], [{ rule: 'b/rule' }])).toEqual([]);
    expect(matched([{}], [{ detail: 'W-2' }])).toEqual([]);
  });
});

describe('what two results say differently', () => {
  const names = new Names();
  names.renameEntry('detail', 'W-1', 'pan', 'tray');
  const renames = names.within('detail', 'W-1');
  const between = (before: Partial<Told>, after: Partial<Told>): string[] =>
    differencesOf(told(0, before), told(0, after), renames).map((one) => one.what);

  it('items in another order, and new names of old things, are no difference', () => {
    expect(between({ provided: 'after "pan", "jambs"' }, { provided: 'after "tray", "jambs"' })).toEqual([]);
    expect(between({ provided: 'jambs, pan' }, { provided: 'jambs, tray' })).toEqual([]);
    expect(between({ provided: 'pan, jambs' }, { provided: 'jambs, tray' })).toEqual([]);
    expect(between({ provided: 'pan, jambs' }, { provided: 'jambs, head' })).toEqual(['provided']);
  });

  it('the words of a message count only where there are no values and something is asked', () => {
    const fail = { kind: 'fail', level: 'error' } as const;
    expect(between({ ...fail, message: 'a' }, { ...fail, message: 'b' })).toEqual(['message']);
    expect(between({ ...fail, message: 'a', provided: '1 in' }, { ...fail, message: 'b', provided: '1 in' })).toEqual(
      [],
    );
    expect(between({ message: 'a' }, { message: 'b' })).toEqual([]);
  });

  it('a finding that has become graver is another one', () => {
    expect(between({ kind: 'fail', level: 'warning' }, { kind: 'fail', level: 'error' })).toEqual(['level']);
  });
});

describe('what became of it', () => {
  const pass = told(0, {});
  const fail = told(0, { kind: 'fail', level: 'error' });
  const open = told(0, { kind: 'open' });
  const accepted = told(0, { kind: 'fail', level: 'error', accepted: 'by the architect' });

  it.each<[string, Told | undefined, Told | undefined, string]>([
    ['fail, pass', fail, pass, 'corrected'],
    ['pass, fail', pass, fail, 'newly broken'],
    ['nothing, fail', undefined, fail, 'new'],
    ['open, pass', open, pass, 'answered'],
    ['open, fail', open, fail, 'answered, and fails'],
    ['fail, open', fail, open, 'still open'],
    ['pass, open', pass, open, 'newly open'],
    ['fail, accepted', fail, accepted, 'accepted'],
    ['accepted, fail', accepted, fail, 'no longer accepted'],
    ['pass, nothing', pass, undefined, 'unchanged'],
  ])('%s', (_name, before, after, progress) => {
    expect(progressOf(before, after, () => true)).toBe(progress);
  });

  it('a finding that is not there any more is corrected only if it was looked for', () => {
    expect(progressOf(fail, undefined, () => true)).toBe('corrected');
    expect(progressOf(fail, undefined, () => false)).toBe('no longer checked');
    expect(progressOf(open, undefined, () => true)).toBe('answered');
    const accepted = told(0, { kind: 'fail', level: 'error', accepted: 'until May' });
    expect(progressOf(accepted, undefined, () => true)).toBe('corrected');
    expect(progressOf(accepted, undefined, () => false)).toBe('no longer checked');
  });
});
