import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import { isApplied } from '../../src/geometry/around-opening.js';
import type { JointCover } from '../../src/geometry/types.js';
import { isFluid } from '../../src/model/families.js';
import { HABIT, habit } from '../../src/water/laps.js';

const lesser = (c: JointCover): number => Math.min(...c.sideMm);

/** Joint treatment covers both sides of every sheathing joint. */
export default defineRule({
  id: 'extension/joint-cover',
  title: 'Cover of sheathing joints',
  summary: 'Joint treatment covers enough sheathing on each side of every joint.',
  level: 'error',
  reads: ['wall.sheet', 'work.place', 'work.extends', 'work.offCenter', 'product.least.coverEachSide'],
  sources: [HABIT],
  parameters: {
    tape: {
      type: 'length',
      default: '2 in',
      meaning: 'cover on each side by tape or sheet, where no document of the project states one',
      source: HABIT,
    },
    liquid: {
      type: 'length',
      default: '1 in',
      meaning: 'cover on each side by a fluid-applied treatment, where no document of the project states one',
      source: HABIT,
    },
  },
  *review({ face, limit, number }) {
    const treatments = face.pieces
      .filter(isApplied)
      .filter(
        (p) => p.role === 'joint treatment' && p.sheds && p.apply.places.some((x) => x.value === 'sheathing joints'),
      );
    // Whether the joints are treated at all is asked by the sequence rules.
    const main = treatments.at(-1);
    if (main === undefined) return;
    const unsized = treatments.find((p) => p.apply.extendsMm === undefined);
    if (unsized !== undefined) {
      yield {
        kind: 'open',
        at: unsized.at,
        subject: `joints covered by ${unsized.work.id}`,
        missing: ['work.extends'],
        message: `"${unsized.work.id}" does not say how far it covers each side of the sheathing joints; add "extends".`,
      };
      return;
    }
    const covers = face.jointCover((p) => p.role === 'joint treatment');
    for (const layer of new Set(covers.map((c) => c.joint.layer))) {
      // A joint with both sides cut off by an opening or the border of the face says nothing.
      const worst = covers
        .filter((c) => c.joint.layer === layer && lesser(c) < Infinity)
        .sort((a, b) => lesser(a) - lesser(b))[0];
      if (worst === undefined) continue;
      const piece = worst.pieces.filter(isApplied).at(-1) ?? main;
      const { apply } = piece;
      const off =
        Math.abs(worst.sideMm[0] - worst.sideMm[1]) > 0.1 && apply.offCenterMm !== undefined
          ? apply.offCenterMm
          : undefined;
      yield againstLimit({
        subject: `joints of ${layer.id}`,
        at: (off ?? apply.extendsMm)?.at ?? piece.at,
        dimension: 'length',
        comparison: 'at least',
        like: apply.extendsMm,
        provided: lesser(worst),
        limit: limit({
          property: 'cover each side',
          subject: 'joint treatment',
          product: piece.product,
          comparison: 'at least',
          offered: habit(number(isFluid(apply.family) ? 'liquid' : 'tape')),
        }),
        sentence: (p) =>
          `"${apply.id}" covers ${p} beside a ${worst.joint.orientation} joint of "${layer.id}"${off === undefined ? '' : `, on the narrower side (it sits ${off.text} off center)`}`,
        correct: (required) =>
          off === undefined
            ? `Widen "${apply.id}" to ${required} on each side ("extends").`
            : `Center "${apply.id}" on the joint, or widen it to ${required} on the narrower side.`,
        missing: ['product.least.coverEachSide'],
        related: [{ message: 'the sheathing', at: layer.at }],
      });
    }
  },
});
