/** Every example of every rule page, in the words of the letter: no field, no id of a step, no line of a file. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { FIELD_NAMES } from '../generated/field-names.js';
import { BUILT_IN_RULES } from '../generated/rules.js';
import type { Result } from '../src/engine/result.js';
import { buildDetail } from '../src/model/detail.js';
import { inTradeWords, subjectInWords } from '../src/output/letter/trade-words.js';
import { readPage, reviewWith } from './support/documents.js';
import { ROOT } from './support/command.js';

const told: { id: string; from: string; text: string; ids: readonly string[] }[] = [];
for (const rule of BUILT_IN_RULES) {
  const page = readFileSync(path.join(ROOT, 'rules', `${rule.id}.md`), 'utf8');
  const read = await readPage(page, `${rule.id}.md`);
  for (const document of read.documents.filter((d) => d.kind === 'detail')) {
    const { detail } = buildDetail(document, read.reach(document));
    if (detail === undefined) continue;
    const ids = detail.work.map((w) => w.id);
    for (const r of reviewWith(detail, [rule]).filter((one) => one.kind === 'fail' || one.kind === 'open'))
      for (const from of [r.message, r.correct ?? ''].filter(Boolean))
        told.push({ id: rule.id, from, text: inTradeWords(from, r), ids });
  }
}

const at = (data: Record<string, unknown>): Pick<Result, 'at'> => ({
  at: {
    document: {
      kind: 'detail',
      id: 'd',
      file: { uri: 'd.yaml', text: '' },
      data,
      spanOf: () => ({ start: 0, end: 0 }),
    },
    path: [],
  },
});
const WINDOW = at({
  wall: [{ id: 'membrane' }],
  openings: [{ id: 'office-window' }],
  work: [
    { id: 'pan', place: 'sill' },
    { id: 'jambs', place: 'jambs' },
    { id: 'set', set: 'unit' },
    { id: 'air-seal', place: 'interior perimeter' },
    { id: 'rod-a', place: 'penetration' },
    { id: 'rod-b', place: 'penetration' },
  ],
});

describe('a sentence in the words of the letter', () => {
  it.each([
    [
      '"set" seals the sill of "office-window": water cannot get out.',
      'The setting of the unit seals the sill of office-window: water cannot get out.',
    ],
    ['Widen "jambs" to at least 6 in ("ontoWall").', 'Widen the jamb flashing to at least 6 in.'],
    ['Put "pan" before "jambs".', 'Put the sill flashing before the jamb flashing.'],
    [
      'The sill flashing "pan" lies outside the jamb flashing "jambs" at the left.',
      'The sill flashing lies outside the jamb flashing at the left.',
    ],
    ['The sealant of joint "air-seal" is deep.', 'The sealant of the interior seal is deep.'],
    ['"pan" does not say how far it turns up; add "upstand".', 'The sill flashing does not say how far it turns up.'],
    ['Send it in. List it under "contains" with "answers: [\'1.3.E\']".', 'Send it in.'],
    ['Send it in. List it under "contains", and the other under "sentWith".', 'Send it in.'],
    ['Name the role that accepted it under "acceptedBy".', 'Name the role that accepted it.'],
    ['Plan a test. Add "{ hold: water test, by: ... }" there.', 'Plan a test.'],
    ['Declare "waterTest".', 'Declare water test.'],
    ['"Air leakage of the membrane" reports on ASTM E2178.', '"Air leakage of the membrane" reports on ASTM E2178.'],
    ['Carry "rod-a" farther.', 'Carry the collar of the penetration (rod-a) farther.'],
    [
      'Add "{ close: head flap, of: window }" after "pan".',
      'Add the closing of the head flap after the sill flashing.',
    ],
    ['It hangs on wall[0].finish.', 'It hangs on the finish of the membrane.'],
    [
      'It cannot be told: openings.unit.waterTest is not declared.',
      'It cannot be told: the water test of the unit is not declared.',
    ],
    ['"counter#flange head" covers the flange.', 'The flashing over the head flange covers the flange.'],
    ['The dam is 1.5 in high.', 'The dam is 1.5 in high.'],
  ])('%s', (from, text) => {
    expect(inTradeWords(from, WINDOW)).toBe(text);
  });

  it('names what was checked without fields', () => {
    expect(subjectInWords('ontoWall of jambs', WINDOW)).toBe('onto wall of the jamb flashing');
    expect(subjectInWords('sill of office-window', WINDOW)).toBe('sill of office-window');
  });
});

describe('the sentences of all rule pages', () => {
  it('are there', () => {
    expect(told.length).toBeGreaterThan(300);
  });
  it('name no field and hold no piece of a document', () => {
    const fields = new Set(FIELD_NAMES.filter((name) => /[A-Z]/.test(name)));
    const left = told.filter(
      ({ text }) => /[{}[\]]|\w: \.\.\./.test(text) || (text.match(/\w+/g) ?? []).some((word) => fields.has(word)),
    );
    expect(left.map(({ id, text }) => `${id}: ${text}`)).toEqual([]);
  });
  it('put no id of a step in quotation marks', () => {
    const left = told.filter(({ text, ids }) => ids.some((id) => text.includes(`"${id}"`)));
    expect(left.map(({ id, text }) => `${id}: ${text}`)).toEqual([]);
  });
  it('keep a sentence: a capital, words and an end', () => {
    const left = told.filter(({ text }) => !/^(?:"|\(?[A-Z0-9]).{8,}[.?!]$/s.test(text));
    expect(left.map(({ id, from, text }) => `${id}: ${from} -> ${text}`)).toEqual([]);
  });
});
