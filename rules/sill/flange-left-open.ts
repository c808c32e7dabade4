import { CANADA_SILLS } from '../../src/engine/clauses.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { panOf, unitSetIn, worksAt } from '../../src/water/at-opening.js';
import { closesSillFlange } from '../../src/water/daylight.js';

const PHYSICS: Source = { basis: 'physics', citation: 'a sealed sill holds water in the pan', provenance: 'computed' };
const E2112: Source = {
  basis: 'standard',
  citation: 'ASTM E2112, bead interrupted at a sill with a pan',
  provenance: 'seen at second hand',
};
/** The line between pan and unit stays open at the sill. */
export default defineRule({
  id: 'sill/flange-left-open',
  title: 'Sill flange',
  summary: 'At the sill the bed of the unit is open or interrupted, and nothing seals over the flange.',
  level: 'error',
  reads: ['work.bedding.sill', 'work.openLength', 'work.place'],
  sources: [PHYSICS, E2112, CANADA_SILLS],
  *review({ detail }) {
    const sources = [PHYSICS, E2112, CANADA_SILLS];
    for (const opening of detail.openings) {
      const pan = panOf(detail, opening);
      if (pan === undefined) continue;
      const subject = `sill of ${opening.id}`;
      const required = 'sill open, or interrupted with its open length';
      const related = [{ message: `the pan "${pan.id}" that has to drain`, at: pan.at }];
      for (const cover of worksAt(detail, opening, 'flange sill')) {
        const at = cover.places.find((p) => p.value === 'flange sill')?.at ?? cover.at;
        if (closesSillFlange(cover)) {
          yield {
            kind: 'fail',
            message: `"${cover.id}" seals over the sill flange of "${opening.id}": water on the pan "${pan.id}" cannot get out.`,
            at,
            subject: `sill flange of ${opening.id}`,
            required: 'nothing sealed over the sill flange',
            provided: `${cover.family} over the sill flange`,
            correct: `Leave the sill flange uncovered: take "flange sill" out of "${cover.id}".`,
            sources,
            related,
          };
        } else {
          yield {
            kind: 'pass',
            message: `"${cover.id}" over the sill flange of "${opening.id}" leaves its edge open.`,
            at,
            subject: `sill flange of ${opening.id}`,
            sources,
          };
        }
      }
      const set = unitSetIn(detail, opening);
      const bed = set?.bedding.sill;
      if (set === undefined) {
        yield {
          kind: 'open',
          message: `No work sets the unit in "${opening.id}", so how it is bedded at the sill cannot be seen; add a "set: unit" item with "bedding".`,
          at: opening.at,
          subject,
          required,
          missing: ['work.set', 'work.bedding.sill'],
          sources,
        };
      } else if (bed === undefined) {
        yield {
          kind: 'open',
          message: `"${set.id}" does not say how the unit of "${opening.id}" is bedded at the sill; declare "bedding: { sill: open }", sealed or interrupted.`,
          at: set.at,
          subject,
          required,
          missing: ['work.bedding.sill'],
          sources,
        };
      } else if (bed.value === 'sealed') {
        yield {
          kind: 'fail',
          message: `"${set.id}" seals the sill of "${opening.id}" on its whole length: water on the pan "${pan.id}" cannot get out.`,
          at: bed.at,
          subject,
          required,
          provided: 'sealed',
          correct:
            'Leave the bead out at the sill ("sill: open"), or interrupt it and say how much of it stays open ("openLength").',
          sources,
          related,
        };
      } else if (bed.value === 'open') {
        yield {
          kind: 'pass',
          message: `"${set.id}" leaves the sill of "${opening.id}" open.`,
          at: bed.at,
          subject,
          required,
          provided: 'open',
          sources,
        };
      } else if (set.openLengthMm === undefined) {
        yield {
          kind: 'open',
          message: `"${set.id}" interrupts the bead at the sill of "${opening.id}" without saying how much of it stays open; declare "openLength".`,
          at: bed.at,
          subject,
          required,
          provided: 'interrupted',
          missing: ['work.openLength'],
          sources,
        };
      } else if (set.openLengthMm.value > 0) {
        yield {
          kind: 'pass',
          message: `"${set.id}" leaves ${set.openLengthMm.text} of the sill of "${opening.id}" open.`,
          at: bed.at,
          subject,
          required,
          provided: `${set.openLengthMm.text} open`,
          sources,
        };
      } else {
        yield {
          kind: 'fail',
          message: `"${set.id}" calls the bead at the sill of "${opening.id}" interrupted but leaves ${set.openLengthMm.text} open.`,
          at: set.openLengthMm.at,
          subject,
          required,
          provided: `${set.openLengthMm.text} open`,
          correct: 'Give the length that stays open, above zero.',
          sources,
          related,
        };
      }
    }
  },
});
