import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { wetFilm } from '../../src/film/film.js';
import { filmEnds, filmWorks, solidsOf } from '../../src/film/film-works.js';
import { formatQuantity } from '../../src/quantity/format.js';

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

/** Wet film, dry film and volume solids agree. */
export default defineRule({
  id: 'film/wet-matches-dry',
  title: 'Wet film against dry film',
  summary: 'The wet film stated dries to the dry film stated, by the volume solids of the product.',
  level: 'warning',
  reads: ['work.wetFilm', 'work.dryFilm', 'work.thinner', 'product.volumeSolids'],
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
    for (const work of filmWorks(detail)) {
      // Whether a data sheet agrees with itself is a check of the product, not of each work.
      const { wetFilmUm, dryFilmUm } = work;
      if (wetFilmUm === undefined || dryFilmUm === undefined) continue;
      const at = wetFilmUm.at;
      const subject = `film of ${work.id}`;
      const known = solidsOf(work);
      if (known === undefined) {
        yield {
          kind: 'open',
          message: `"${work.id}" states wet film ${wetFilmUm.text} and dry film ${dryFilmUm.text}, but the volume solids are not declared${work.product === undefined ? '' : ` in product "${work.product.id}"`}, so they cannot be compared.`,
          at,
          subject,
          missing: ['product.volumeSolids'],
          sources: [ARITHMETIC],
        };
        continue;
      }
      const { solids, thinner } = known;
      const wet = filmEnds(wetFilmUm);
      const dry = filmEnds(dryFilmUm);
      const leastUm = wetFilm(dry.leastUm, solids.value, thinner);
      const mostUm = wetFilm(dry.mostUm, solids.value, thinner);
      const off = number('tolerance');
      const near = (a: number, b: number): boolean => Math.abs(a - b) <= off * b + 1e-9;
      // Range against range: both ends agree. One value against a range: it lies inside, within the tolerance.
      const ranges = [wetFilmUm, dryFilmUm].filter((q) => q.bound === 'between').length;
      const agree =
        ranges === 1
          ? wet.leastUm <= mostUm * (1 + off) + 1e-9 && wet.mostUm >= leastUm * (1 - off) - 1e-9
          : near(wet.leastUm, leastUm) && near(wet.mostUm, mostUm);
      const um = (value: number): string => formatQuantity(value, 'film', wetFilmUm);
      const expected = leastUm === mostUm ? um(leastUm) : `${um(leastUm)} to ${um(mostUm)}`;
      const share = `${solids.text} volume solids${thinner > 0 ? `, ${work.thinner?.text ?? ''} thinner` : ''}`;
      const base = {
        at,
        subject,
        required: `${expected} wet`,
        provided: `${wetFilmUm.text} wet`,
        sources: [ARITHMETIC, BAND],
        related: [
          { message: 'dry film', at: dryFilmUm.at },
          { message: 'volume solids', at: solids.at },
        ],
      };
      const sum = `"${work.id}" states ${wetFilmUm.text} wet for ${dryFilmUm.text} dry; with ${share} that dry film takes ${expected} wet`;
      yield agree
        ? { kind: 'pass', message: `${sum}.`, ...base }
        : {
            kind: 'fail',
            message: `${sum}: the two do not agree.`,
            correct: `State ${expected} wet, or the dry film that ${wetFilmUm.text} leaves.`,
            ...base,
          };
    }
  },
});
