import { BRICK_FLASHING } from '../../src/engine/clauses.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { anchoredVeneer, cavityFeet, wayOut, type CavityFoot } from '../../src/model/veneer.js';
import { runOfWater } from '../../src/water/run/run.js';
import { stepsOf } from '../../src/water/run/tell.js';

const PHYSICS: Source = {
  basis: 'physics',
  citation: 'water that runs down a cavity stays in it where nothing leads it out',
  provenance: 'computed',
};
const PLACES: Source = {
  basis: 'guide',
  citation: 'trade question and answer on IRC R703.8.5 and R703.8.6, places of flashing and weeps in masonry veneer',
  provenance: 'seen at second hand',
  url: 'https://www.jlconline.com/how-to/exteriors/weep-holes-in-brick-and-stone-veneer_o',
};

const FLASHING: Record<CavityFoot['kind'], string> = {
  base: 'Add work with "place: base of wall" that runs out to the face of the veneer ("projects"), with its "weeps".',
  opening:
    'Add work with "place: lintel" over the opening that runs out to the face of the veneer ("projects"), with its "endDams" and "weeps".',
  'shelf angle': 'Lead the flashing on the angle out to the face of the veneer ("projects"), with its "weeps".',
};

/** Water behind a masonry veneer is led to the face at each place where the cavity ends. */
export default defineRule({
  id: 'veneer/way-out',
  title: 'Way out of the cavity',
  summary:
    'Behind a masonry veneer, flashing and weeps bring the water out at the base, over each opening and at each shelf angle.',
  level: 'error',
  reads: ['wall.material', 'work.place', 'work.projects', 'work.weeps', 'work.layer', 'edges.bottom', 'openings'],
  sources: [PHYSICS, PLACES, BRICK_FLASHING],
  *review({ detail, face }) {
    const veneer = anchoredVeneer(detail);
    if (veneer === undefined || detail.work.length === 0) return;
    const sources = this.sources;
    for (const foot of cavityFeet(detail)) {
      const { state, why, missing } = wayOut(detail, foot);
      const { flashing } = foot;
      const common = { subject: `way out of the cavity ${foot.name}`, at: flashing?.at ?? foot.at, sources };
      if (state === 'shown') {
        yield {
          kind: 'pass',
          ...common,
          message: `Water behind the veneer "${veneer.layer.id}" gets out ${foot.name} ${why}.`,
        };
      } else if (state === 'not told') {
        yield {
          kind: 'open',
          ...common,
          missing,
          message: `Whether water behind the veneer "${veneer.layer.id}" gets out ${foot.name} cannot be told: ${why}. ${flashing === undefined ? FLASHING[foot.kind] : `Declare "${missing.map((m) => m.replace(/^work\./, '')).join('", "')}".`}`,
        };
      } else {
        const path = runOfWater(detail, face).face.find(
          (p) => p.end.kind === 'behind veneer' && p.end.opening === foot.opening,
        );
        yield {
          kind: 'fail',
          ...common,
          message: `Water behind the veneer "${veneer.layer.id}" has no way out ${foot.name}: ${why}.`,
          required: 'flashing to the face, with weeps on it',
          provided: flashing === undefined ? 'no through-wall flashing' : 'no weeps',
          correct:
            flashing === undefined
              ? FLASHING[foot.kind]
              : `Leave weeps directly above "${flashing.id}" ("weeps: { type, spacing, size }").`,
          related: [{ message: 'the veneer', at: veneer.layer.at }],
          ...(path === undefined ? {} : { flow: stepsOf(path, detail.at) }),
        };
      }
    }
  },
});
