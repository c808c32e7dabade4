import { defineRule } from '../../src/engine/rule.js';
import type { Outcome, Source } from '../../src/engine/result.js';
import { wetFilm } from '../../src/film/film.js';
import { filmEnds, filmWorks, solidsOf } from '../../src/film/film-works.js';
import { formatQuantity } from '../../src/quantity/format.js';
import type { Apply, Measured } from '../../src/model/types.js';

const ARITHMETIC: Source = {
  basis: 'physics',
  citation: 'wet film = dry film / volume solids, thinner counted',
  provenance: 'computed',
};
const BAND: Source = {
  basis: 'practice',
  citation: 'common practice: wet and dry film agree within 5 percent',
  provenance: 'common practice, no source',
};

interface Pair {
  readonly wet: Measured;
  readonly dry: Measured;
  readonly whose: string;
  readonly at: Outcome['at'];
}

/** Wet and dry film stated together: by the work (or its layer), and by the data sheet. */
function pairsOf(work: Apply): Pair[] {
  const { product } = work;
  return [
    ...(work.wetFilmUm !== undefined && work.dryFilmUm !== undefined
      ? [{ wet: work.wetFilmUm, dry: work.dryFilmUm, whose: `"${work.id}"`, at: work.wetFilmUm.at }]
      : []),
    ...(product?.wetFilmUm !== undefined && product.dryFilmUm !== undefined
      ? [
          {
            wet: product.wetFilmUm,
            dry: product.dryFilmUm,
            whose: `the data sheet of "${product.id}"`,
            at: work.productId?.at ?? work.at,
          },
        ]
      : []),
  ];
}

/** Wet film, dry film and volume solids agree. */
export default defineRule({
  id: 'film/wet-matches-dry',
  title: 'Wet film matches dry film',
  summary: 'The wet film stated dries to the dry film stated, by the volume solids of the product.',
  level: 'warning',
  reads: ['work.wetFilm', 'work.dryFilm', 'work.thinner', 'product.volumeSolids', 'product.wetFilm', 'product.dryFilm'],
  sources: [ARITHMETIC, BAND],
  parameters: {
    tolerance: {
      type: 'fraction',
      default: '5 %',
      meaning: 'greatest difference between the wet film stated and the one computed',
      source: BAND,
    },
  },
  *review({ detail, number }) {
    const said = new Set<string>();
    for (const work of filmWorks(detail)) {
      for (const pair of pairsOf(work)) {
        const ofSheet = pair.wet === work.product?.wetFilmUm;
        // A data sheet is checked once, where its product is first used.
        if (ofSheet && said.has(pair.whose)) continue;
        said.add(pair.whose);
        const subject = `film of ${ofSheet ? pair.whose : work.id}`;
        const known = solidsOf(work);
        if (known === undefined) {
          yield {
            kind: 'open',
            message: `${pair.whose} states wet film ${pair.wet.text} and dry film ${pair.dry.text}, but the volume solids are not declared${work.product === undefined ? '' : ` in product "${work.product.id}"`}, so they cannot be compared.`,
            at: pair.at,
            subject,
            missing: ['product.volumeSolids'],
            sources: [ARITHMETIC],
          };
          continue;
        }
        // Thinner is added on site; a data sheet speaks of the product as sold.
        const thinner = ofSheet ? 0 : known.thinner;
        const wet = filmEnds(pair.wet);
        const dry = filmEnds(pair.dry);
        const leastUm = wetFilm(dry.leastUm, known.solids.value, thinner);
        const mostUm = wetFilm(dry.mostUm, known.solids.value, thinner);
        const off = number('tolerance');
        const near = (a: number, b: number): boolean => Math.abs(a - b) <= off * b + 1e-9;
        // Range against range: both ends agree. One value against a range: it lies inside, within the tolerance.
        const ranges = [pair.wet, pair.dry].filter((q) => q.bound === 'between').length;
        const agree =
          ranges === 1
            ? wet.leastUm <= mostUm * (1 + off) + 1e-9 && wet.mostUm >= leastUm * (1 - off) - 1e-9
            : near(wet.leastUm, leastUm) && near(wet.mostUm, mostUm);
        const um = (value: number): string => formatQuantity(value, 'film', pair.wet);
        const expected = leastUm === mostUm ? um(leastUm) : `${um(leastUm)} to ${um(mostUm)}`;
        const solids = `${known.solids.text} volume solids${thinner > 0 ? `, ${work.thinner?.text ?? ''} thinner` : ''}`;
        const base = {
          at: pair.at,
          subject,
          required: `${expected} wet`,
          provided: `${pair.wet.text} wet`,
          sources: [ARITHMETIC, BAND],
          related: [
            { message: 'dry film', at: pair.dry.at },
            { message: 'volume solids', at: known.solids.at },
          ],
        };
        const sum = `${pair.whose} states ${pair.wet.text} wet for ${pair.dry.text} dry; with ${solids} that dry film takes ${expected} wet`;
        yield agree
          ? { kind: 'pass', message: `${sum}.`, ...base }
          : {
              kind: 'fail',
              message: `${sum}: the two do not agree.`,
              correct: ofSheet
                ? 'Ask for a data sheet whose film values and volume solids agree.'
                : `State ${expected} wet, or the dry film that ${pair.wet.text} leaves.`,
              ...base,
            };
      }
    }
  },
});
