import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { coatsNeeded } from '../../src/film/film.js';
import { filmEnds, filmWorks } from '../../src/film/film-works.js';

const SHEET: Source = { basis: 'product data', citation: 'greatest wet film per coat', provenance: 'project document' };

/** There are enough coats that none is thicker than the product stands. */
export default defineRule({
  id: 'film/coats',
  title: 'Number of coats',
  summary: 'The film is put on in enough coats that none is thicker than the data sheet allows.',
  level: 'error',
  reads: ['work.wetFilm', 'work.coats', 'product.maxWetPerCoat'],
  sources: [SHEET],
  *review({ detail }) {
    for (const work of filmWorks(detail)) {
      const most = work.product?.maxWetPerCoatUm;
      // Only a data sheet can say what one coat stands.
      if (most === undefined || !(most.value > 0) || work.wetFilmUm === undefined) continue;
      const totalUm = filmEnds(work.wetFilmUm).mostUm;
      const needed = coatsNeeded(totalUm, most.upper ?? most.value);
      const source: Source = {
        ...SHEET,
        citation: `product data of ${work.product?.id ?? ''}, ${most.text} wet per coat`,
        at: most.at,
      };
      const subject = `coats of ${work.id}`;
      if (work.coats === undefined && needed > 1) {
        yield {
          kind: 'open',
          message: `"${work.id}" goes on at ${work.wetFilmUm.text} wet, which takes ${needed} coats of at most ${most.text}, but the number of coats is not declared; declare "coats".`,
          at: work.wetFilmUm.at,
          subject,
          required: `at least ${needed}`,
          missing: ['work.coats'],
          sources: [source],
        };
        continue;
      }
      yield againstLimit({
        subject,
        at: work.coats?.at ?? work.wetFilmUm.at,
        dimension: 'count',
        provided: work.coats?.value ?? 1,
        comparison: 'at least',
        limit: { value: needed, text: String(needed), source, others: [] },
        sentence: (p) =>
          `"${work.id}" goes on at ${work.wetFilmUm?.text ?? ''} wet in ${p} ${p === '1' ? 'coat' : 'coats'}`,
        correct: (required) => `Put it on in ${required} coats, each after the recoat time.`,
        missing: ['work.coats'],
      });
    }
  },
});
