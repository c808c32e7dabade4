import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { isFluid } from '../../src/model/families.js';
import type { Apply } from '../../src/model/types.js';

const PROGRAM: Source = {
  basis: 'guide',
  citation: 'air barrier association quality program: thickness tests rest with the installer',
  provenance: 'seen',
  url: 'http://coatingspromag.epubxp.com/i/796818-mar-2017/27',
};

/** Fluid-applied membranes and flashings are measured while they are wet, at a hold point. */
export default defineRule({
  id: 'film/readings-held',
  title: 'Plan of film readings',
  summary: 'Every fluid-applied membrane and flashing has a hold point for film readings.',
  level: 'note',
  reads: ['work.hold', 'work.of', 'work.product'],
  sources: [PROGRAM],
  *review({ detail }) {
    // Joint fillers are tooled into gaps and have no film to read.
    // Without a film stated there is nothing to hold a reading against.
    const coats = detail.work.filter(
      (w): w is Apply =>
        w.action === 'apply' &&
        isFluid(w.family) &&
        w.family !== 'joint filler' &&
        (w.wetFilmUm ?? w.dryFilmUm) !== undefined,
    );
    const holds = detail.work.filter((w) => w.action === 'hold' && w.holds.value === 'film readings');
    for (const work of coats) {
      // What is counterflashed after the unit is set is often too narrow for a reading area of its own.
      if (work.places.every((p) => p.value.startsWith('flange'))) continue;
      const hold = holds.find(
        (h) =>
          h.action === 'hold' && h.step > work.step && (h.of.length === 0 || h.of.some((o) => o.value === work.id)),
      );
      const subject = `film of ${work.id}`;
      if (hold !== undefined)
        yield {
          kind: 'pass',
          message: `The film of "${work.id}" is read at "${hold.id}".`,
          at: hold.at,
          subject,
          sources: [PROGRAM],
        };
      else if (!detail.work.some((w) => w.action === 'hold')) {
        yield {
          kind: 'open',
          message: `The work declares no hold points, so it is not known whether the film of "${work.id}" is read.`,
          at: work.at,
          subject,
          missing: ['work.hold'],
          sources: [PROGRAM],
        };
      } else {
        yield {
          kind: 'fail',
          message: `No hold point reads the film of "${work.id}" after it is put on.`,
          at: work.at,
          subject,
          required: 'a hold point for film readings',
          provided: 'none',
          sources: [PROGRAM],
          correct: `Add "{ hold: film readings, of: ${work.id}, by: ..., accept: ... }" after it, before anything covers it.`,
        };
      }
    }
  },
});
