import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { flashingAt } from '../../src/model/order.js';
import { formatQuantity } from '../../src/quantity/format.js';
import { headFlashingNeeded, mayLeaveOutHead, WAIVER_RATIO } from '../../src/water/overhang.js';

const CODE: Source = {
  basis: 'code',
  citation: 'NBC / Ontario Building Code 9.27.3.8.(3)',
  codes: ['NBC'],
  provenance: 'seen',
  url: 'https://www.oncodes.ca/building-envelope/flashing-installation/',
};

/** Flashing over the head may be left out only under an eave that is deep enough. */
export default defineRule({
  id: 'lap/head-flashing-waiver',
  title: 'Head flashing under an eave',
  summary: 'Head flashing is left out only under an eave whose projection is four times the drop to the head.',
  level: 'warning',
  reads: ['openings.overhang', 'work.place'],
  sources: [CODE],
  *review({ detail }) {
    // Codes of the United States know no such exception: there the missing flashing is asked for as a step.
    if (detail.work.length === 0 || !mayLeaveOutHead(detail.project)) return;
    for (const opening of detail.openings) {
      const { overhang } = opening;
      if (overhang === undefined || flashingAt(detail, opening, ['head', 'flange head']).length > 0) continue;
      const { projectionMm, dropMm } = overhang;
      const most = formatQuantity(WAIVER_RATIO * projectionMm.value, 'length', { ...dropMm, toward: 'down' });
      const base = {
        at: dropMm.at,
        subject: `head of ${opening.id}`,
        required: `a drop of at most ${most}, or head flashing`,
        provided: dropMm.text,
        sources: [CODE],
      };
      const found = `"${opening.id}" has no head flashing; its head is ${dropMm.text} below an eave that projects ${projectionMm.text}`;
      if (headFlashingNeeded(projectionMm.value, dropMm.value)) {
        yield {
          kind: 'fail',
          message: `${found}, more than a quarter of the projection (${most}).`,
          ...base,
          correct: `Add a work with "place: head, of: ${opening.id}".`,
        };
      } else yield { kind: 'pass', message: `${found}, no more than a quarter of the projection (${most}).`, ...base };
    }
  },
});
