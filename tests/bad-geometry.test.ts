/** What cannot exist on a wall gets a clear error at its line, and no other finding. */
import { describe, expect, it } from 'vitest';
import { runReview } from '../src/cli/run.js';
import { lineColumn } from '../src/reading/source.js';

const PRODUCT = '---\n{ kind: product, id: sheet, name: Sheet, family: mechanically fastened sheet }\n';
const HEAD = 'kind: detail\nid: d\ntitle: Test\n';

/** `line: rule: message` of everything found in a text. */
async function found(text: string): Promise<string[]> {
  const { review } = await runReview({
    inputs: ['-'],
    cwd: '/',
    stdin: { text: HEAD + text + PRODUCT },
    packs: [],
    allowPacks: false,
    today: '2026-01-15',
    skipOthers: false,
    dependents: false,
  });
  return review.results.map((r) => `${String(lineColumn(r.file, r.span.start).line)}: ${r.ruleId}: ${r.message}`);
}

describe('impossible geometry', () => {
  it('openings that overlap', async () => {
    const text =
      'openings:\n  - { id: a, roughOpening: { width: 40 in, height: 60 in } }\n  - { id: b, at: { right: 30 in, up: 0 in }, roughOpening: { width: 40 in, height: 60 in } }\n';
    expect(await found(text)).toEqual([
      '6: document/wrong-geometry: The openings "a" and "b" overlap; give "b" its place with "at: { right, up }" from the lower left corner of the first opening.',
    ]);
  });
  it('an opening without size', async () => {
    const [first, ...more] = await found('openings:\n  - { id: a, roughOpening: { width: 0 in, height: 60 in } }\n');
    expect(more).toEqual([]);
    expect(first).toMatch(/^5: document\/wrong-(geometry|value|unit): .*0 in/);
  });
  it('a penetration without size', async () => {
    const [first, ...more] = await found(
      'penetrations:\n  - { id: p, at: { right: 1 in, up: 1 in }, diameter: 0 in }\n',
    );
    expect(more).toEqual([]);
    expect(first).toMatch(/^5: document\/wrong-(geometry|value|unit): /);
  });
  it('a piece beyond the wall shown', async () => {
    const text =
      'face: { left: 4 in, right: 30 in, below: 30 in, above: 30 in }\nopenings:\n  - { id: a, roughOpening: { width: 40 in, height: 60 in } }\nwork:\n  - { id: jambs, place: jambs, of: a, product: sheet, ontoWall: 9 in }\n';
    expect(await found(text)).toEqual([
      '8: document/wrong-geometry: "jambs" reaches 5 in beyond the wall shown (left); show more wall with "face: { left: ... }", or correct the size.',
    ]);
  });
  it('a piece tucked under itself', async () => {
    const text = 'work:\n  - { id: wrap, place: field, product: sheet, tuckedUnder: wrap }\n';
    expect(await found(text)).toEqual([
      '5: document/wrong-geometry: "wrap" is tucked under "wrap", which is the same work: only what already hangs can be lifted. Put "wrap" earlier, or leave out "tuckedUnder": later work lies over earlier work by itself.',
    ]);
  });
  it('two pieces tucked under each other', async () => {
    const text =
      'openings:\n  - { id: a, roughOpening: { width: 40 in, height: 60 in } }\nwork:\n  - { id: one, place: jambs, of: a, product: sheet, ontoWall: 9 in, tuckedUnder: two }\n  - { id: two, place: head, of: a, product: sheet, ontoWall: 9 in, tuckedUnder: one }\n';
    const messages = await found(text);
    expect(messages).toEqual([
      '7: document/wrong-geometry: "one" is tucked under "two", which is not there yet: only what already hangs can be lifted. Put "two" earlier, or leave out "tuckedUnder": later work lies over earlier work by itself.',
    ]);
  });
});
