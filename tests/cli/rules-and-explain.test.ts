import { describe, expect, it } from 'vitest';
import { lapwright } from '../support/command.js';

interface Card {
  readonly id: string;
  readonly title: string;
  readonly level: string;
  readonly summary: string;
  readonly parameters?: Readonly<Record<string, { readonly default: unknown; readonly meaning: string }>>;
}
const cards = async (): Promise<Card[]> => JSON.parse((await lapwright(['rules', '--format', 'json'])).out) as Card[];

describe('rules', () => {
  it('lists each rule once, in the order of its ids, with its level', async () => {
    const [{ status, out, err }, all] = await Promise.all([lapwright(['rules']), cards()]);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    const listed = out
      .split('\n')
      .flatMap((line) => /^(\S+\/\S+)\s+(error|warning|note)\b/.exec(line)?.slice(1, 3).join(' ') ?? []);
    expect(listed).toEqual(all.map(({ id, level }) => `${id} ${level}`));
    expect(listed.length).toBeGreaterThan(15);
    expect([...new Set(all.map(({ id }) => id))].sort()).toEqual(all.map(({ id }) => id));
  });

  it('every rule says in a whole sentence what must be true', async () => {
    for (const { id, title, summary } of await cards()) {
      expect(summary, id).toMatch(/^[A-Z].*\.$/);
      expect(title, id).not.toBe('');
    }
  });

  it('no title says how its check ends: it stands above passes and failures', async () => {
    // Checks that are told only when something is wrong may name the fault.
    const TOLD_WHEN_WRONG = /^(?:document|deviation|requirement|settings|pack|rule)\//;
    const good =
      /\b(?:is|are|exist|agree|agrees|match|matches|no|not|nothing|left|planned|sealed|complete|held|out|reinforced|tied|drawn|traced|accepted|behind|before it|past)\b/;
    const said = (await cards())
      .filter(({ id }) => !TOLD_WHEN_WRONG.test(id))
      .filter(({ title }) => good.test(title))
      .map(({ id, title }) => `${id}: ${title}`);
    // Places and directions, not verdicts.
    expect(said).toEqual(
      [
        'extension/past-jambs: Flashing reach past the jambs',
        'moisture/field-barrier: Drying behind a low-permeance exterior layer',
        'submittal/unasked-items: Items not required by the section',
        'veneer/way-out: Way out of the cavity',
        'sill/path-to-daylight: Way of water out of the pan',
      ].sort(),
    );
  });
});

describe('explain', () => {
  it('prints the page of a rule named in full', async () => {
    const { status, out, err } = await lapwright(['explain', 'extension/onto-wall']);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out).toContain('extension/onto-wall');
    expect(out).toContain('sheetReach');
  });

  it('finds it by its short name too', async () => {
    const [full, short] = await Promise.all([
      lapwright(['explain', 'lap/reverse-lap']),
      lapwright(['explain', 'reverse-lap']),
    ]);
    expect(short).toEqual(full);
    expect(full.out.length).toBeGreaterThan(300);
  });

  it.each([
    ['lap/revers-lap', 'lap/reverse-lap'],
    ['revrse-lap', 'reverse-lap'],
  ])('names the nearest for %s', async (typed, near) => {
    const { status, out, err } = await lapwright(['explain', typed]);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toBe(`lapwright: No rule is called "${typed}"; did you mean "${near}"?\n`);
  });

  it('prints the page as it is written with --markdown', async () => {
    const { out } = await lapwright(['explain', '--markdown', 'extension/onto-wall']);
    expect(out).toMatch(/^# /);
    expect(out).toMatch(/^```yaml/m);
  });

  it('has a page for every rule', async () => {
    const all = await cards();
    // A few at a time: each is a process of its own.
    for (let at = 0; at < all.length; at += 4) {
      await Promise.all(
        all.slice(at, at + 4).map(async ({ id, parameters }) => {
          const { status, out } = await lapwright(['explain', id]);
          expect(status, id).toBe(0);
          expect(out.length, id).toBeGreaterThan(80);
          for (const name of Object.keys(parameters ?? {})) expect(out, id).toContain(name);
        }),
      );
    }
  });
});
