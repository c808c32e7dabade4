import { defineRule } from '../../src/engine/rule.js';
import { flashingAt, inOrder, type Spot } from '../../src/model/order.js';

/** The last of some works; `undefined` when there is none. */
const last = (spots: readonly Spot[]): Spot | undefined =>
  spots.reduce<Spot | undefined>((a, b) => (a === undefined || a.rank <= b.rank ? b : a), undefined);

/** Flashing of the rough opening goes on from the bottom up, so that each piece laps over the one below. */
export default defineRule({
  id: 'sequence/sill-jamb-head',
  title: 'Order of sill, jambs and head',
  summary: 'Flashing of the rough opening goes on from the bottom up: sill, jambs, head.',
  level: 'warning',
  reads: ['work.place', 'work.of'],
  sources: [
    {
      basis: 'guide',
      citation: 'DOE Building America Solution Center, fully flashed window and door openings',
      provenance: 'seen',
      url: 'https://basc.pnnl.gov/resource-guides/fully-flashed-window-and-door-openings',
    },
    {
      basis: 'guide',
      citation: 'EPA Indoor airPLUS, technical guidance 1.6',
      provenance: 'seen',
      url: 'http://epa.gov/indoorairplus/technical/moisture/1_6.html',
    },
  ],
  *review({ detail }) {
    for (const opening of detail.openings) {
      const sill = last(flashingAt(detail, opening, ['sill']));
      const head = last(flashingAt(detail, opening, ['head']));
      const jambs = [
        last(flashingAt(detail, opening, ['jambs', 'left jamb'])),
        last(flashingAt(detail, opening, ['jambs', 'right jamb'])),
      ].filter((s) => s !== undefined);
      const lower = jambs.length > 0 || head === undefined ? jambs : [head];
      const pairs = [
        ...(sill === undefined ? [] : lower.map((upper) => ({ lower: sill, upper }))),
        ...(head === undefined ? [] : jambs.map((jamb) => ({ lower: jamb, upper: head }))),
      ];
      const seen = new Set<string>();
      let wrong = 0;
      for (const { lower: a, upper: b } of pairs) {
        const key = `${a.work.id} ${b.work.id}`;
        if (inOrder(a, b) || seen.has(key)) continue;
        seen.add(key);
        wrong += 1;
        const within = a.work === b.work;
        yield {
          kind: 'fail',
          message: within
            ? `"${a.work.id}" lists the ${b.place} before the ${a.place} of "${opening.id}": the upper strip would go on first and end up behind the lower one.`
            : `"${a.work.id}" at the ${a.place} of "${opening.id}" comes after "${b.work.id}" at the ${b.place}: the upper piece ends up behind the lower one.`,
          at: a.work.at,
          subject: `order of flashing at ${opening.id}`,
          sources: this.sources,
          required: `${a.place} before ${b.place}`,
          provided: `${b.place} before ${a.place}`,
          correct: within
            ? `List the places of "${a.work.id}" from the bottom up, or make them works of their own.`
            : `Put "${a.work.id}" before "${b.work.id}".`,
          ...(within ? {} : { related: [{ message: `"${b.work.id}" is done first`, at: b.work.at }] }),
        };
      }
      if (pairs.length > 0 && wrong === 0) {
        const ids = [sill, ...jambs, head].flatMap((s) => (s === undefined ? [] : [`"${s.work.id}"`]));
        yield {
          kind: 'pass',
          message: `Flashing of "${opening.id}" goes on from the bottom up: ${[...new Set(ids)].join(', ')}.`,
          at: opening.at,
          subject: `order of flashing at ${opening.id}`,
          sources: this.sources,
        };
      }
    }
  },
});
