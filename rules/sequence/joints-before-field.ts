import { defineRule } from '../../src/engine/rule.js';
import type { Outcome, Source } from '../../src/engine/result.js';
import { meets } from '../../src/model/hiding.js';
import { barrierWorks, flashingAt, JAMB_PLACES, layerOf } from '../../src/model/order.js';
import { fieldOfLayer } from '../../src/model/named-field.js';
import type { Apply, Detail, Family, Place, Work } from '../../src/model/types.js';
import type { PieceRole, WallFace } from '../../src/geometry/types.js';

const TREATED: readonly Place[] = ['sheathing joints', 'fastener heads', 'inside corners', 'opening edges'];
const LINING: ReadonlySet<PieceRole> = new Set<PieceRole>([
  'sill flashing',
  'jamb flashing',
  'head flashing',
  'base flashing',
  'penetration collar',
]);
/** Barriers that span every joint of what they lie on, and tear or blister over an untreated one. */
const BONDED_FIELD: ReadonlySet<Family> = new Set<Family>(['fluid-applied membrane', 'self-adhered membrane']);
const PRACTICE: Source = {
  basis: 'practice',
  citation: 'joints, corners and fastener heads are treated before what covers them',
  provenance: 'common practice, no source',
};
const DRAWN: Source = {
  basis: 'guide',
  citation: 'public project section 07 27 00, shop drawings show the treatment of substrate joints',
  provenance: 'seen',
};

/** The first work that covers a treatment before it is done; `undefined` when all is in order. */
function tooEarly(detail: Detail, face: WallFace, work: Apply): Work | undefined {
  const field = barrierWorks(detail).find((f) => f !== work && f.step < work.step);
  const places = work.places.map((p) => p.value);
  const isAtCorners = places.includes('inside corners') || places.includes('opening edges');
  const lining = !isAtCorners
    ? []
    : work.openings
        .flatMap((o) => flashingAt(detail, o, ['sill', ...JAMB_PLACES, 'head']))
        .filter((s) => s.work !== work && s.work.step < work.step);
  const own = face.piecesOf(work.id).filter((p) => p.role === 'joint treatment');
  const over = face.pieces.filter((p) => LINING.has(p.role) && p.work.step < work.step && own.some((q) => meets(p, q)));
  return [...(field === undefined ? [] : [field]), ...lining.map((s) => s.work), ...over.map((p) => p.work)].sort(
    (a, b) => a.step - b.step,
  )[0];
}

/** Joints of the boards that a bonded field would have to span untreated. */
function* untreated(detail: Detail, face: WallFace): Iterable<Outcome> {
  const field = barrierWorks(detail).find((w) => BONDED_FIELD.has(w.family));
  if (
    field === undefined ||
    detail.work.some((w) => w.action === 'apply' && w.places.some((p) => p.value === 'sheathing joints'))
  )
    return;
  const within = layerOf(detail, field)?.index ?? Infinity;
  for (const layer of detail.layers) {
    if (layer.index >= within) continue;
    const subject = `joints of ${layer.id}`;
    if (layer.sheet === undefined && layer.family === 'sheathing') {
      yield {
        kind: 'open',
        subject,
        at: layer.at,
        message: `Nothing treats the joints of "${layer.id}" before "${field.id}", and the size of its boards is not given; state "sheet" so that the joints on the wall shown are known, or add the treatment.`,
        missing: [fieldOfLayer(layer, 'sheet')],
        sources: [PRACTICE],
      };
    } else if (layer.sheet !== undefined && face.joints.some((j) => j.layer === layer)) {
      yield {
        kind: 'fail',
        subject,
        at: field.at,
        message: `"${field.id}" goes over the joints of "${layer.id}" with no step that treats them.`,
        required: 'a work at "sheathing joints" before the field',
        provided: 'no such work',
        correct: `Add a work with "place: sheathing joints" before "${field.id}".`,
        sources: [PRACTICE, DRAWN],
        related: [{ message: 'boards with joints on the wall shown', at: layer.sheet.at }],
      };
    }
  }
}

/** What the field has to span is treated before the field, and before the flashing that goes over it. */
export default defineRule({
  id: 'sequence/joints-before-field',
  title: 'Order of joints and field',
  summary:
    'Sheathing joints, fastener heads, corners and edges of openings are treated before the field membrane and before the flashing over them.',
  level: 'warning',
  reads: ['work.place', 'wall.sheet'],
  sources: [PRACTICE, DRAWN],
  *review({ detail, face }) {
    if (detail.work.length === 0) return;
    for (const work of detail.work) {
      if (work.action !== 'apply') continue;
      const places = work.places.map((p) => p.value).filter((p) => TREATED.includes(p));
      if (places.length === 0) continue;
      const what = places.join(' and ');
      const subject = `${what} (${work.id})`;
      const covering = tooEarly(detail, face, work);
      if (covering === undefined) {
        yield {
          kind: 'pass',
          subject,
          at: work.at,
          message: `"${work.id}" treats the ${what} before anything covers them.`,
          sources: [PRACTICE],
        };
        continue;
      }
      yield {
        kind: 'fail',
        subject,
        at: work.at,
        message: `"${work.id}" treats the ${what} after "${covering.id}" has covered them.`,
        required: `"${work.id}" before "${covering.id}"`,
        provided: `"${covering.id}" is step ${covering.step + 1}, "${work.id}" is step ${work.step + 1}`,
        correct: `Put "${work.id}" before "${covering.id}".`,
        sources: [PRACTICE],
        related: [{ message: `"${covering.id}" comes first`, at: covering.at }],
      };
    }
    yield* untreated(detail, face);
  },
});
