import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { dryFilm } from '../../src/film/film.js';
import { filmEnds, filmSubject, filmWorks, solidsOf } from '../../src/film/film-works.js';
import type { Apply, Measured } from '../../src/model/types.js';

const ASKED: Source = {
  basis: 'product data',
  citation: 'film range of the data sheet, or of the specification',
  provenance: 'project document',
};
const ARITHMETIC: Source = {
  basis: 'physics',
  citation: 'dry film = wet film x volume solids, thinner counted',
  provenance: 'computed',
};

/** Film to be put on lies within what data sheet and specification ask. */
export default defineRule({
  id: 'film/within-range',
  title: 'Film thickness',
  summary: 'Wet and dry film lie within what the data sheet and the specification ask.',
  level: 'error',
  reads: ['work.wetFilm', 'work.dryFilm', 'work.thinner', 'product.wetFilm', 'product.dryFilm', 'product.volumeSolids'],
  sources: [ASKED, ARITHMETIC],
  *review({ detail, limit }) {
    for (const work of filmWorks(detail)) {
      const { wetFilmUm: wet, dryFilmUm: dry } = work;
      if (wet === undefined && dry === undefined) {
        yield {
          kind: 'open',
          message: `"${work.id}" does not say how thick its film is; declare "wetFilm" or "dryFilm".`,
          at: work.at,
          subject: `film of ${work.id}`,
          missing: ['work.wetFilm', 'work.dryFilm'],
          sources: [ASKED],
        };
        continue;
      }
      const subjectOfWork = filmSubject(work);
      const query = { product: work.product, ...(subjectOfWork === undefined ? {} : { subject: subjectOfWork }) };
      let limits = 0;
      const held = function* (
        property: 'wet film' | 'dry film',
        ends: { leastUm: number; mostUm: number },
        stated: Measured,
        how: string,
        onlyLeast = false,
      ) {
        for (const comparison of onlyLeast ? (['at least'] as const) : (['at least', 'at most'] as const)) {
          const asked = limit({ ...query, property, comparison, bothEnds: !onlyLeast });
          if (asked === undefined) continue;
          limits += 1;
          yield againstLimit({
            subject: `${property} of ${work.id}`,
            at: stated.at,
            dimension: 'film',
            provided: comparison === 'at least' ? ends.leastUm : ends.mostUm,
            like: stated,
            comparison,
            limit: asked,
            sentence: (p) => `"${work.id}" ${how} ${p} ${property === 'wet film' ? 'wet' : 'dry'}`,
            correct: (required) => `Bring the ${property} of "${work.id}" to ${required}.`,
            missing: ['product.wetFilm'],
          });
        }
      };
      if (wet !== undefined) yield* held('wet film', filmEnds(wet), wet, 'goes on at');
      if (dry !== undefined) yield* held('dry film', filmEnds(dry), dry, 'is to leave');
      const known = solidsOf(work);
      // What the wet film leaves counts where no dry film is stated, and always where thinner is added.
      if (wet !== undefined && known !== undefined && (dry === undefined || known.thinner > 0)) {
        const ends = filmEnds(wet);
        const left = {
          leastUm: dryFilm(ends.leastUm, known.solids.value, known.thinner),
          mostUm: dryFilm(ends.mostUm, known.solids.value, known.thinner),
        };
        yield* held(
          'dry film',
          left,
          wet,
          `at ${wet.text} wet, ${known.solids.text} volume solids${thinnerText(work)}, leaves`,
          true,
        );
      }
      if (limits === 0) {
        yield {
          kind: 'open',
          message: `"${work.id}" states a film of ${(wet ?? dry)?.text ?? ''}, and no document in reach says how thick it has to be.`,
          at: (wet ?? dry)?.at ?? work.at,
          subject: `film of ${work.id}`,
          provided: (wet ?? dry)?.text ?? '',
          missing: ['product.wetFilm', 'product.dryFilm', 'a specification requirement for "wet film" or "dry film"'],
          sources: [ASKED],
        };
      }
    }
  },
});

function thinnerText(work: Apply): string {
  return work.thinner === undefined || work.thinner.value === 0 ? '' : `, ${work.thinner.text} thinner`;
}
