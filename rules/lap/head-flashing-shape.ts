import { statedSize } from '../../src/engine/against-limit.js';
import type { Limit, OfferedLimit } from '../../src/engine/limits.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import type { Detail } from '../../src/model/types.js';

const NBC: Source = {
  basis: 'code',
  citation: 'NBC 9.27.3.8 (4)',
  provenance: 'seen',
  url: 'https://www.oncodes.ca/building-envelope/flashing-installation/',
};
const BACK_SLOPE: Source = { basis: 'physics', citation: 'water runs down', provenance: 'computed' };
/** Least sizes of a metal head flashing, as the source prints them. */
const UPSTAND = { value: 50, text: '50 mm (2 in)' } as const;
const SLOPE = { value: 0.06, text: '6 %' } as const;
const PROJECTION = { value: 5, text: '5 mm' } as const;

/** Binding under the NBC; elsewhere the same figures are a guide. */
function offer(detail: Detail, figure: { readonly value: number; readonly text: string }): OfferedLimit {
  return { ...figure, source: detail.project?.code?.title === 'NBC' ? NBC : { ...NBC, basis: 'guide' } };
}

/** Upstand, slope and projection of metal head flashing. */
export default defineRule({
  id: 'lap/head-flashing-shape',
  title: 'Shape of metal head flashing',
  summary: 'Metal head flashing turns up behind the barrier, slopes to the exterior and throws the water clear.',
  level: 'error',
  reads: ['work.place', 'work.upstand', 'work.slope', 'work.projects', 'project.code'],
  sources: [NBC, BACK_SLOPE],
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
          correct: `Slope "${work.id}" to the exterior by at least ${SLOPE.text}.`,
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
