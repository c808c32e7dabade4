import { BRICK_FLASHING } from '../../src/engine/clauses.js';
import { againstLimit, statedSize } from '../../src/engine/against-limit.js';
import type { OfferedLimit } from '../../src/engine/limits.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { edgeOf, shedsWater } from '../../src/model/families.js';
import type { Apply, Detail, Measured, Place } from '../../src/model/types.js';

const BIA_DRIP: Source = {
  basis: 'guide',
  citation: 'BIA Technical Note 21B',
  provenance: 'seen',
};
const NBC: Source = {
  basis: 'code',
  citation: 'NBC, flashing beneath weep holes',
  codes: ['NBC'],
  provenance: 'seen',
  url: 'https://www.oncodes.ca/exterior-finishes/flashing-for-weep-holes-in-masonry-veneer/',
};
const GRAVITY: Source = {
  basis: 'physics',
  citation: 'water runs down, and inward where an upper edge is open',
  provenance: 'computed',
};
const UPSTAND: OfferedLimit = { value: 203.2, text: '8 in', source: BRICK_FLASHING };
const UPSTAND_NBC: OfferedLimit = { value: 150, text: '150 mm', source: NBC };
const LAP: OfferedLimit = { value: 101.6, text: '4 in', source: BRICK_FLASHING };
const DRIP: OfferedLimit = { value: 6.35, text: '1/4 in', source: BIA_DRIP };

/** Flashing on steel that carries a veneer: at a floor, over an opening. */
const ON_STEEL: ReadonlySet<Place> = new Set<Place>(['shelf angle', 'lintel']);

/** What laps over the upstand of the angle's flashing, as stated by later work. */
function lapOver(detail: Detail, angle: Apply): { by: Apply; lapMm: Measured } | undefined {
  for (const work of detail.work) {
    if (work.action !== 'apply') continue;
    const lap = work.lapsOnto.find((l) => l.onto === angle.id);
    if (lap !== undefined) return { by: work, lapMm: lap.lapMm };
  }
  return undefined;
}

/** The barrier that flashing was put on over, with its upper edge left open. */
function standsOpen(detail: Detail, angle: Apply): Apply | undefined {
  if (edgeOf(angle) !== 'open' || angle.tuckedUnder.length > 0) return undefined;
  return detail.work.find(
    (w): w is Apply =>
      w.action === 'apply' &&
      w.step < angle.step &&
      shedsWater(w.family) &&
      w.places.some((p) => p.value === 'field' || p.value === 'field above sill'),
  );
}

/** Flashing on a shelf angle or a lintel rises up the backing, is lapped by the barrier and drips clear. */
export default defineRule({
  id: 'extension/shelf-angle',
  title: 'Flashing on a shelf angle or a lintel',
  summary:
    'Flashing on a shelf angle or a lintel turns up the backing, the barrier laps over it, and its drip stands clear of the face.',
  level: 'error',
  reads: [
    'work.place',
    'work.upstand',
    'work.projects',
    'work.lapsOnto',
    'work.tuckedUnder',
    'work.edge',
    'project.code',
  ],
  sources: [BRICK_FLASHING, BIA_DRIP, NBC, GRAVITY],
  *review({ detail, limit }) {
    const offeredUpstand = detail.project?.code?.title === 'NBC' ? [UPSTAND_NBC, UPSTAND] : [UPSTAND];
    for (const work of detail.work) {
      if (work.action !== 'apply' || !shedsWater(work.family) || !work.places.some((p) => ON_STEEL.has(p.value)))
        continue;
      const common = { subject: 'through-wall flashing', product: work.product, comparison: 'at least' } as const;
      yield statedSize({
        work,
        field: 'upstand',
        size: work.upstandMm,
        what: 'how far it turns up the backing',
        limit: limit({ ...common, property: 'upstand', offered: offeredUpstand }),
        sentence: (p) => `"${work.id}" turns up ${p} on the backing`,
        correct: (r) => `Turn "${work.id}" up ${r} ("upstand").`,
      });
      const over = lapOver(detail, work);
      const behind = over === undefined ? standsOpen(detail, work) : undefined;
      if (behind !== undefined) {
        yield {
          kind: 'fail',
          subject: `lap over ${work.id}`,
          at: work.at,
          sources: [GRAVITY],
          required: 'a lap over its upper edge',
          provided: 'an open edge in front of the barrier',
          message: `"${work.id}" is put on over the barrier "${behind.id}", and nothing laps over its open upper edge: water on the barrier runs behind it.`,
          correct: `Put "${work.id}" on before "${behind.id}", or lap a strip over its upper edge ("lapsOnto: { ${work.id}: ... }").`,
          related: [{ message: 'the barrier behind it', at: behind.at }],
        };
      } else if (over === undefined) {
        yield {
          kind: 'open',
          subject: `lap over ${work.id}`,
          at: work.at,
          missing: ['work.lapsOnto'],
          message: `No work states how far the barrier laps over the upstand of "${work.id}"; add "lapsOnto: { ${work.id}: ... }" to the work of the barrier.`,
        };
      } else {
        yield againstLimit({
          subject: `lap over ${work.id}`,
          at: over.lapMm.at,
          dimension: 'length',
          comparison: 'at least',
          like: over.lapMm,
          provided: over.lapMm.value,
          limit: limit({ ...common, property: 'lap', product: over.by.product, offered: [LAP] }),
          sentence: (p) => `"${over.by.id}" laps ${p} over the upstand of "${work.id}"`,
          correct: (required) => `Lap "${over.by.id}" over "${work.id}" by ${required}.`,
          missing: [],
          related: [{ message: 'the flashing that is lapped', at: work.at }],
        });
      }
      yield statedSize({
        work,
        field: 'projects',
        size: work.projectsMm,
        what: 'how far its drip stands clear of the face',
        limit: limit({ ...common, property: 'drip projection', offered: [DRIP] }),
        sentence: (p) => `The drip of "${work.id}" stands ${p} clear of the face`,
        correct: (r) => `Let the drip stand clear by ${r} ("projects").`,
      });
    }
  },
});
