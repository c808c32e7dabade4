import { expect, it } from 'vitest';
import { filmEnds, filmSubject, filmWorks, solidsOf } from './film-works.js';
import { readPage } from '../../tests/support/documents.js';
import type { Apply } from '../model/types.js';

async function worksOf(...work: string[]): Promise<Apply[]> {
  const product = (id: string, family: string, more = ''): string =>
    `\`\`\`yaml product\nkind: product\nid: ${id}\nname: ${id}\nfamily: ${family}\n${more}\n\`\`\`\n`;
  const text = `\`\`\`yaml detail\nkind: detail\nid: D\ntitle: D\nopenings:\n  - { id: window, roughOpening: { width: 36 in, height: 48 in } }\nwork:\n${work.map((w) => `  - { ${w} }`).join('\n')}\n\`\`\`\n\n`;
  return filmWorks(
    (
      await readPage(
        [
          text,
          product('liquid', 'fluid-applied flashing', 'volumeSolids: 60 %'),
          product('sheet', 'flexible flashing'),
          product('none', 'fluid-applied flashing', 'volumeSolids: 0 %'),
        ].join('\n'),
      )
    ).detail(),
  );
}

it('looks at what goes on wet, and at whatever states a film', async () => {
  const works = await worksOf(
    'id: a, place: jambs, product: liquid',
    'id: b, place: head, product: sheet',
    'id: c, place: sill, product: sheet, dryFilm: 40 mil',
  );
  expect(works.map((w) => w.id)).toEqual(['a', 'c']);
});
it('names the work as a requirement does, by its first place', async () => {
  const works = await worksOf(
    'id: a, place: [sill, jambs], product: liquid',
    'id: b, place: field, product: liquid',
    'id: c, place: movement joint, product: liquid',
  );
  expect(works.map(filmSubject)).toEqual(['sill pan', 'field membrane', undefined]);
});
it('takes both ends of a range, and one value for both ends', async () => {
  const [range, single] = await worksOf(
    'id: a, place: head, product: liquid, wetFilm: 12-15 mil',
    'id: b, place: head, product: liquid, wetFilm: 10 mil',
  );
  expect(filmEnds(range!.wetFilmUm!)).toEqual({
    leastUm: expect.closeTo(304.8, 9) as number,
    mostUm: expect.closeTo(381, 9) as number,
  });
  expect(filmEnds(single!.wetFilmUm!)).toEqual({ leastUm: 254, mostUm: 254 });
});
it('gives no solids that arithmetic could not use', async () => {
  const [good, none] = await worksOf(
    'id: a, place: head, product: liquid, thinner: 5 %',
    'id: b, place: head, product: none',
  );
  expect(solidsOf(good!)).toMatchObject({ thinner: 0.05, solids: { value: 0.6 } });
  expect(solidsOf(none!)).toBeUndefined();
});
