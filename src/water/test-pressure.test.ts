import { describe, expect, it } from 'vitest';
import { testPressureOf, type TestPressure } from './test-pressure.js';
import { readPage } from '../../tests/support/documents.js';

/** Pound-force per square foot, exact (NIST SP 811). */
const PSF = 4.4482216152605 / 0.3048 ** 2;

async function pressureOf(unit: string, project = ''): Promise<TestPressure | undefined> {
  const page = await readPage(
    `\`\`\`yaml detail\nkind: detail\nid: D\ntitle: D\nopenings:\n  - { id: window, roughOpening: { width: 36 in, height: 48 in }${unit} }\n\`\`\`\n\n\`\`\`yaml project\nkind: project\nid: P\ntitle: P\n${project}\n\`\`\`\n`,
  );
  const detail = page.detail();
  return testPressureOf(detail.openings[0]!, detail.project);
}
const psfOf = async (unit: string, project = ''): Promise<number> =>
  ((await pressureOf(unit, project))?.pressurePa ?? NaN) / PSF;

describe('the water test pressure of an opening', () => {
  it('is the one declared, whatever class and grade give', async () => {
    expect(await psfOf(', unit: { class: CW, grade: 30 psf, waterTest: 8 psf }')).toBeCloseTo(8, 9);
  });
  it('follows from class and grade: 4.5 psf for CW-PG30, 6 psf for AW-PG30 (shares seen)', async () => {
    expect(await psfOf(', unit: { class: CW, grade: 30 psf }')).toBeCloseTo(4.5, 9);
    expect(await psfOf(', unit: { class: AW, grade: 30 psf }')).toBeCloseTo(6, 9);
  });
  it('is capped higher where the Canadian code applies', async () => {
    expect(await psfOf(', unit: { class: AW, grade: 80 psf }', 'code: { title: NBC, edition: 2020 }')).toBeCloseTo(
      15,
      9,
    );
    expect(await psfOf(', unit: { class: AW, grade: 80 psf }', 'code: { title: IBC, edition: 2021 }')).toBeCloseTo(
      12,
      9,
    );
  });
  it('falls back on the design wind pressure, and says so', async () => {
    expect(await psfOf('', 'wind: { designPressure: 40 psf }')).toBeCloseTo(6, 9);
    expect((await pressureOf('', 'wind: { designPressure: 40 psf }'))?.from).toContain('design wind pressure 40 psf');
  });
  it('is unknown where nothing is declared, or a grade stands without its class', async () => {
    expect(await pressureOf('')).toBeUndefined();
    expect(await pressureOf(', unit: { grade: 30 psf }')).toBeUndefined();
  });
});
