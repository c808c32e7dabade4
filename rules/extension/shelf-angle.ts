import { againstLimit, statedSize } from '../../src/engine/against-limit.js';
import type { OfferedLimit } from '../../src/engine/limits.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { shedsWater } from '../../src/model/families.js';
import type { Apply, Detail, Measured } from '../../src/model/types.js';

const BIA: Source = {
  basis: 'guide',
  citation: 'BIA Technical Note 28B',
  provenance: 'seen at second hand',
};
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
const UPSTAND: OfferedLimit = { value: 203.2, text: '8 in', source: BIA };
const UPSTAND_NBC: OfferedLimit = { value: 150, text: '150 mm', source: NBC };
const LAP: OfferedLimit = { value: 101.6, text: '4 in', source: BIA };
const DRIP: OfferedLimit = { value: 6.35, text: '1/4 in', source: BIA_DRIP };

/** What laps over the upstand of the angle's flashing, as stated by later work. */
function lapOver(detail: Detail, angle: Apply): { by: Apply; lapMm: Measured } | undefined {
  for (const work of detail.work) {
    if (work.action !== 'apply') continue;
    const lap = work.lapsOnto.find((l) => l.onto === angle.id);
    if (lap !== undefined) return { by: work, lapMm: lap.lapMm };
  }
  return undefined;
}

/** Flashing on a shelf angle rises up the backing, is lapped by the barrier and drips clear. */
export default defineRule({
  id: 'extension/shelf-angle',
  title: 'Flashing on a shelf angle',
  summary:
    'Flashing on a shelf angle turns up the backing, the barrier laps over it, and its drip stands clear of the face.',
  level: 'error',
  reads: ['work.place', 'work.upstand', 'work.projects', 'work.lapsOnto', 'project.code'],
  sources: [BIA, BIA_DRIP, NBC],
  *review({ detail, limit }) {
    const offeredUpstand = detail.project?.code?.title === 'NBC' ? [UPSTAND_NBC, UPSTAND] : [UPSTAND];
    for (const work of detail.work) {
      if (work.action !== 'apply' || !shedsWater(work.family) || !work.places.some((p) => p.value === 'shelf angle'))
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
      if (over === undefined) {
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
          related: [{ message: 'the flashing on the angle', at: work.at }],
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
