import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { anchoredVeneer, cavityFeet } from '../../src/model/veneer.js';
import type { Apply, Detail } from '../../src/model/types.js';
import { formatQuantity } from '../../src/quantity/format.js';

const GUIDE: Source = {
  basis: 'guide',
  citation: 'BIA Technical Note 28B, soft joint below a shelf angle',
  provenance: 'from memory, confirm',
};
const STRAIN: Source = {
  basis: 'physics',
  citation: 'width of a joint = movement / what its sealant takes up, as a share of the width',
  provenance: 'computed',
};

/** The soft joint under an angle: a sealant at the shelf angle. One that names several places is not counted. */
function softJoint(detail: Detail): Apply | undefined {
  return detail.work.find(
    (w): w is Apply =>
      w.action === 'apply' && w.family === 'sealant' && w.places.some((p) => p.value === 'shelf angle'),
  );
}

/** Below a shelf angle the veneer stops short, and the joint is soft, so that the angle can come down. */
export default defineRule({
  id: 'veneer/soft-joint',
  title: 'Soft joint below a shelf angle',
  summary: 'Below each shelf angle the veneer has a soft joint, wide enough for the movement that is declared.',
  level: 'error',
  reads: ['work.place', 'work.joint.width', 'work.movement', 'product.movement', 'work.layer'],
  sources: [STRAIN, GUIDE],
  *review({ detail }) {
    const veneer = anchoredVeneer(detail);
    const angles = cavityFeet(detail).filter((f) => f.kind === 'shelf angle');
    const [angle] = angles;
    if (veneer === undefined || angle?.flashing === undefined) return;
    const joint = softJoint(detail);
    const subject = `soft joint below ${angle.flashing.id}`;
    if (joint === undefined) {
      const message = `No soft joint is drawn below the shelf angle of "${angle.flashing.id}": when the floor comes down or the veneer grows, the angle bears on the veneer below it.`;
      const correct =
        'Add a joint of sealant below the angle ("place: shelf angle") with its width ("joint") and the movement it has to take ("movement").';
      const common = { subject, at: angle.at, sources: [GUIDE] };
      yield veneer.laidBy === undefined
        ? { kind: 'open', ...common, missing: ['work.place: shelf angle'], message: `${message} ${correct}` }
        : { kind: 'fail', ...common, required: 'a soft joint', provided: 'none', message, correct };
      return;
    }
    const width = joint.joint?.widthMm;
    const takes = joint.product?.movement;
    const missing = [
      ...(width === undefined ? ['work.joint.width'] : []),
      ...(joint.movementMm === undefined ? ['work.movement'] : []),
      ...(takes === undefined ? ['product.movement'] : []),
    ];
    if (width === undefined || joint.movementMm === undefined || takes === undefined || takes.value <= 0) {
      yield {
        kind: 'open',
        subject,
        at: joint.at,
        missing,
        message: `Whether the soft joint "${joint.id}" has room for the angle to come down cannot be told; declare ${missing.join(', ')}.`,
      };
      return;
    }
    const needed = joint.movementMm.value / takes.value;
    const text = `${formatQuantity(needed, 'length', width)} (${joint.movementMm.text} of movement at ${takes.text})`;
    yield againstLimit({
      subject,
      at: width.at,
      dimension: 'length',
      comparison: 'at least',
      like: width,
      provided: width.value,
      limit: { value: needed, text, source: STRAIN, others: [] },
      sentence: (p) => `The soft joint "${joint.id}" is ${p} high`,
      correct: (required) => `Leave ${required} below the angle.`,
      missing: [],
    });
  },
});
