import { describe, expect, it } from 'vitest';
import rule from './placeholder-text.js';
import { readPage, reviewWith } from '../../tests/support/documents.js';

/** The words found in one note, cut out of the file at the place reported. */
async function found(note: string): Promise<string[]> {
  const page = `\`\`\`yaml detail\nkind: detail\nid: d\ntitle: d\nnotes:\n  - ${note}\n\`\`\`\n`;
  const detail = (await readPage(page)).detail();
  return reviewWith(detail, [rule])
    .filter((r) => r.kind === 'fail')
    .map((r) => page.slice(r.span.start, r.span.end));
}

describe('placeholder text', () => {
  it.each([
    ['Lintel by others.', ['by others']],
    ['Lintel BY OTHERS.', ['BY OTHERS']],
    ['"Rod: TBD"', ['TBD']],
    ['"Rod: T.B.D."', ['T.B.D.']],
    ['Width to be determined', ['to be determined']],
    ['Field verify width', ['Field verify']],
    ['Verify in field', ['Verify in field']],
    ['Width (verify)', ['verify']],
    ['Width determined in the field', ['determined in the field']],
    ['Field-cut to suit', ['Field-cut']],
    ['Shim as required', ['as required']],
    ['Shim as needed, 12 mil film', ['as needed']],
    ['Sealant or equal', ['or equal']],
    ['Sealant or approved equal', ['or approved equal']],
    ['Install per manufacturer', ['per manufacturer']],
    ["Install per manufacturer's recommendations", ["per manufacturer's recommendations"]],
    ['TBD by others, TBD', ['TBD', 'by others', 'TBD']],
  ])('finds the words in: %s', async (note, words) => {
    expect(await found(note)).toEqual(words);
  });

  it('points at words that a folded text breaks over two lines', async () => {
    expect(await found('>\n      Trim to be set by\n      others.')).toEqual(['by\n      others']);
  });

  it('points at the second of two equal words, behind an escaped quote', async () => {
    expect(await found('"He said \\"by others\\", by others"')).toEqual(['by others', 'by others']);
  });

  it.each([
    'Field membrane laps 2 in onto the flashing',
    'Field quality control, readings verified by the installer',
    'Mock-up verification before the first opening',
    'Film greater than or equal to 12 mil',
    'Lap equal to the flange',
    'Brothers and standby crews',
    'Lap as required by IRC R703.2',
    "Install per manufacturer's data sheet of 2026-01",
    "Install per the manufacturer's instructions, sheet 4",
    'Apply in the field above 40 degF',
  ])('leaves alone: %s', async (note) => {
    expect(await found(note)).toEqual([]);
  });
});
