import { defineRule } from '../../src/engine/rule.js';
import { formatQuantity } from '../../src/quantity/format.js';

/** Water comes down the inner piece and goes behind the upper edge of the outer one. */
export default defineRule({
  id: 'lap/reverse-lap',
  title: 'Reverse lap',
  summary: 'At every lap that faces the water, the upper piece lies over the lower one.',
  level: 'error',
  reads: ['work.place', 'work.tuckedUnder', 'work.edge', 'work.edgeSeal', 'product.edge'],
  sources: [
    { basis: 'code', citation: 'IRC R703.2', provenance: 'seen', url: 'https://up.codes/s/water-resistive-barrier' },
    {
      basis: 'guide',
      citation: 'FEMA P-499, fact sheet 1.9',
      provenance: 'seen',
      url: 'https://www.yumpu.com/en/document/view/11684418/fema-p-499-home-builders-guide-to-coastal-construction/52',
    },
  ],
  *review({ detail, face }) {
    if (detail.work.length === 0) return;
    const open = face.reverseLaps.filter((lap) => lap.edge === 'open');
    for (const lap of open) {
      const width = formatQuantity(lap.u1 - lap.u0, 'length', { system: 'US' });
      yield {
        kind: 'fail',
        message: `Reverse lap: "${lap.over.id}" lies over "${lap.under.id}" and its open upper edge faces the water coming down "${lap.under.id}" over a width of ${width}.`,
        at: lap.over.at,
        subject: `${lap.over.id} over ${lap.under.id}`,
        required: 'upper piece over lower piece',
        provided: `lower piece "${lap.over.id}" outside, edge open`,
        correct: `Lap "${lap.under.id}" over "${lap.over.id}": do "${lap.over.id}" first, or slip it under with "tuckedUnder: ${lap.under.work.id}".`,
        sources: this.sources,
        related: [{ message: `water comes down "${lap.under.id}"`, at: lap.under.at }],
        flow: [
          { message: `Water runs down "${lap.under.id}".`, at: lap.under.at },
          {
            message: `It meets the open upper edge of "${lap.over.id}" and goes behind it.`,
            at: lap.over.at,
            essential: true,
          },
        ],
      };
    }
    if (open.length === 0 && face.laps.length > 0) {
      yield {
        kind: 'pass',
        message: `No open edge faces the water in ${face.laps.length} laps.`,
        at: detail.at,
        subject: 'all laps',
        sources: this.sources,
      };
    }
  },
});
