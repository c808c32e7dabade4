import { statedSize } from '../../src/engine/against-limit.js';
import type { Limit, OfferedLimit } from '../../src/engine/limits.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import type { Detail } from '../../src/model/types.js';
import { HABIT } from '../../src/water/laps.js';

const NBC: Source = {
  basis: 'code',
  citation: 'NBC 9.27.3.8 (4)',
  codes: ['NBC'],
  provenance: 'seen',
  url: 'https://www.oncodes.ca/building-envelope/flashing-installation/',
};
const BACK_SLOPE: Source = { basis: 'physics', citation: 'water runs down', provenance: 'computed' };
const BIA: Source = { basis: 'guide', citation: 'BIA Technical Note 21B', provenance: 'seen' };

/** Least size of a metal head flashing: as the Canadian code prints it, and what is asked for elsewhere. */
interface Size {
  readonly canada: { readonly value: number; readonly text: string };
  readonly elsewhere: OfferedLimit;
}
const UPSTAND: Size = {
  canada: { value: 50, text: '50 mm (2 in)' },
  elsewhere: { value: 50, text: '2 in', source: HABIT },
};
const SLOPE: Size = { canada: { value: 0.06, text: '6 %' }, elsewhere: { value: 0.02, text: '2 %', source: HABIT } };
const PROJECTION: Size = {
  canada: { value: 5, text: '5 mm' },
  elsewhere: { value: 6, text: '1/4 in', source: BIA },
};

function offer(detail: Detail, size: Size): OfferedLimit {
  return detail.project?.code?.title === 'NBC' ? { ...size.canada, source: NBC } : size.elsewhere;
}

/** Upstand, slope and projection of metal head flashing. */
export default defineRule({
  id: 'lap/head-flashing-shape',
  title: 'Shape of metal head flashing',
  summary: 'Metal head flashing turns up behind the barrier, slopes to the exterior and throws the water clear.',
  level: 'error',
  reads: ['work.place', 'work.upstand', 'work.slope', 'work.projects', 'project.code'],
  sources: [NBC, HABIT, BIA, BACK_SLOPE],
  *review({ detail, limit }) {
    for (const work of detail.work) {
      if (work.action !== 'apply' || work.family !== 'metal flashing' || !work.places.some((p) => p.value === 'head'))
        continue;
      const upstand = work.upstandMm ?? work.ontoWallMm;
      const alone = (o: OfferedLimit): Limit => ({ ...o, others: [] });
      yield statedSize({
        work,
        name: 'upstand',
        field: 'upstand',
        size: upstand,
        dimension: 'length',
        limit: limit({
          property: 'upstand',
          subject: 'head flashing',
          product: work.product,
          comparison: 'at least',
          offered: [offer(detail, UPSTAND)],
        }),
        sentence: (p) => `"${work.id}" turns up ${p} behind the barrier`,
        correct: (r) => `Turn "${work.id}" up ${r} ("upstand").`,
        what: 'its upstand',
      });
      const slope = work.slope;
      if (slope !== undefined && slope.value < 0) {
        yield {
          kind: 'fail',
          subject: `slope of ${work.id}`,
          at: slope.at,
          sources: [BACK_SLOPE, NBC],
          message: `"${work.id}" falls to the interior (${slope.text}), so water on it runs into the wall.`,
          required: 'slope to the exterior',
          provided: slope.text,
          correct: `Slope "${work.id}" to the exterior by at least ${offer(detail, SLOPE).text}.`,
        };
      } else {
        yield statedSize({
          work,
          name: 'slope',
          field: 'slope',
          size: slope,
          dimension: 'slope',
          limit: alone(offer(detail, SLOPE)),
          sentence: (p) => `"${work.id}" slopes ${p} to the exterior`,
          correct: (r) => `Slope "${work.id}" by ${r}, after shrinkage of the framing ("slope").`,
          what: 'its slope',
        });
      }
      yield statedSize({
        work,
        name: 'drip',
        field: 'projects',
        size: work.projectsMm,
        dimension: 'length',
        limit: limit({
          property: 'drip projection',
          subject: 'head flashing',
          product: work.product,
          comparison: 'at least',
          offered: [offer(detail, PROJECTION)],
        }),
        sentence: (p) => `The drip of "${work.id}" stands ${p} clear of the surface below`,
        correct: (r) => `Let the drip stand clear by ${r} ("projects").`,
        what: 'its drip',
      });
    }
  },
});
