import { defineRule } from '../../src/engine/rule.js';
import { flashingAt, JAMB_PLACES, unitSet, type Spot } from '../../src/model/order.js';

/** True for work that lines the rough opening, where nobody can reach once the unit stands in it. */
function linesOpening({ work, place }: Spot, isOnlySill: boolean): boolean {
  if (place === 'inside corners') return true;
  // Strips on the face alone can follow the unit: jamb and head strips over the flange, a trim at the sill.
  const turnsIn =
    work.intoOpeningMm !== undefined && work.intoOpeningMm !== 'full'
      ? work.intoOpeningMm.value > 0
      : work.intoOpeningMm !== undefined;
  return turnsIn || (place === 'sill' && isOnlySill);
}

/** The pan is complete, and all else that lines the opening is done, when the unit goes in. */
export default defineRule({
  id: 'sequence/pan-before-unit',
  title: 'Order of pan and unit',
  summary:
    'The sill pan with its corners, and all flashing that turns into the opening, is done before the unit is set.',
  level: 'error',
  reads: ['work.place', 'work.intoOpening', 'work.set'],
  sources: [
    {
      basis: 'physics',
      citation: 'the inside of an opening cannot be reached under a set unit',
      provenance: 'computed',
    },
    {
      basis: 'guide',
      citation: 'DOE Building America Solution Center, fully flashed window and door openings',
      provenance: 'seen',
      url: 'https://basc.pnnl.gov/resource-guides/fully-flashed-window-and-door-openings',
    },
  ],
  *review({ detail }) {
    for (const opening of detail.openings) {
      const set = unitSet(detail, opening);
      if (set === undefined) continue;
      const spots = flashingAt(detail, opening, ['sill', ...JAMB_PLACES, 'head', 'inside corners', 'opening edges']);
      const hasPan = spots.some((s) => s.place === 'sill' && s.work.step < set.step);
      const lining = spots.filter((s) => linesOpening(s, !hasPan));
      const late = lining.filter((s) => s.work.step > set.step);
      const base = { subject: `lining of ${opening.id} before its unit`, sources: this.sources };
      for (const work of new Set(late.map((s) => s.work))) {
        const places = late
          .filter((s) => s.work === work)
          .map((s) => s.place)
          .join(', ');
        yield {
          kind: 'fail',
          ...base,
          at: work.at,
          message: `"${work.id}" lines the opening "${opening.id}" (${places}) after "${set.id}" has set the unit: it can no longer be reached, formed or tested.`,
          required: `"${work.id}" before "${set.id}"`,
          provided: `"${set.id}" is step ${set.step + 1}, "${work.id}" is step ${work.step + 1}`,
          correct: `Put "${work.id}" before "${set.id}".`,
          related: [{ message: 'the unit is set here', at: set.at }],
        };
      }
      if (late.length === 0 && lining.length > 0) {
        const ids = [...new Set(lining.map((s) => `"${s.work.id}"`))].join(', ');
        yield {
          kind: 'pass',
          ...base,
          at: set.at,
          message: `The opening "${opening.id}" is lined before "${set.id}" sets the unit: ${ids}.`,
          required: 'lining before unit',
          provided: `${ids} before "${set.id}"`,
        };
      }
    }
  },
});
