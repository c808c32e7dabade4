import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { barrierWorks, baseIndex, claddingWorks, isField, layerOf, penetrationSet } from '../../src/model/order.js';
import type { Apply, Detail } from '../../src/model/types.js';

const RESEAL: Source = {
  basis: 'practice',
  citation: 'what is driven through a finished barrier is sealed before it is covered',
  provenance: 'common practice, no source',
};
const PATHS: Source = {
  basis: 'guide',
  citation:
    'Air Barrier Association of America, master specification 07 27 26 (2014): ties, screws and pipes among the leakage paths',
  provenance: 'seen',
};

/** Layers that are fixed through what lies behind them. */
const FIXED_THROUGH = /\b(ties|tie|clips?|furring|girts?|battens?|brackets?|anchors?|rails?|strapping)\b/i;

/** Works that hang ties or furring through the barrier once it is on. */
function fixedThrough(detail: Detail, barrierStep: number): Apply[] {
  const base = baseIndex(detail);
  return detail.work.filter((w): w is Apply => {
    if (w.action !== 'apply' || w.step < barrierStep || !isField(w)) return false;
    const layer = layerOf(detail, w);
    return (
      layer !== undefined &&
      layer.index > base &&
      FIXED_THROUGH.test(`${layer.material?.value ?? ''} ${layer.product?.name ?? ''}`)
    );
  });
}

/** What goes through a finished barrier is sealed to it before anything hides the place. */
export default defineRule({
  id: 'sequence/later-penetrations',
  title: 'Seal of later penetrations',
  summary: 'What is put through the finished barrier is sealed to it before the cladding, or is shown to seal itself.',
  level: 'warning',
  reads: ['work.set', 'work.place', 'penetrations.selfSealing', 'wall.material'],
  sources: [RESEAL, PATHS],
  *review({ detail }) {
    const barrier = barrierWorks(detail)[0];
    if (barrier === undefined) return;
    const coverStep = Math.min(...claddingWorks(detail).map((w) => w.step), Infinity);
    for (const penetration of detail.penetrations) {
      const set = penetrationSet(detail, penetration.id);
      if (set === undefined || set.step < barrier.step) continue;
      const base = {
        subject: `seal of ${penetration.id}`,
        sources: [RESEAL, PATHS],
        required: `a seal after "${set.id}" and before the cladding`,
      };
      const collars = detail.work.filter(
        (w): w is Apply => w.action === 'apply' && w.penetrations.includes(penetration) && w.family !== 'primer',
      );
      const good = collars.find((w) => w.step > set.step && w.step < coverStep);
      if (penetration.selfSealing !== undefined) {
        yield {
          kind: 'pass',
          ...base,
          at: penetration.selfSealing.at,
          message: `"${penetration.id}" goes through "${barrier.id}" later and is declared to seal itself (${penetration.selfSealing.value}).`,
          provided: penetration.selfSealing.value,
        };
      } else if (good !== undefined) {
        yield {
          kind: 'pass',
          ...base,
          at: good.at,
          message: `"${penetration.id}" goes through "${barrier.id}" with "${set.id}" and is sealed by "${good.id}".`,
          provided: `"${good.id}"`,
        };
      } else {
        const [wrong] = collars;
        // That there is no collar at all is reported by the rule on collars.
        if (wrong === undefined) continue;
        const isBefore = wrong.step < set.step;
        yield {
          kind: 'fail',
          ...base,
          at: wrong.at,
          provided: isBefore ? `"${wrong.id}" before "${set.id}"` : `"${wrong.id}" after the cladding`,
          message: isBefore
            ? `"${set.id}" puts "${penetration.id}" through the finished barrier after "${wrong.id}" has sealed the place.`
            : `"${wrong.id}" seals "${penetration.id}" only after the cladding has hidden the place.`,
          correct: isBefore ? `Put "${wrong.id}" after "${set.id}".` : `Put "${wrong.id}" before the cladding.`,
          related: [{ message: `"${penetration.id}" goes through here`, at: set.at }],
        };
      }
    }
    for (const work of fixedThrough(detail, barrier.step)) {
      const layer = layerOf(detail, work);
      const base = {
        subject: `fixings of ${layer?.id ?? work.id}`,
        sources: [RESEAL, PATHS],
        required: 'the fixings sealed before the cladding, or a test that they seal themselves',
      };
      const seal = detail.work.find(
        (w) =>
          w.action === 'apply' &&
          w.step > work.step &&
          w.step < coverStep &&
          w.places.some((p) => p.value === 'penetration' || p.value === 'fastener heads'),
      );
      const tested = detail.penetrations.find(
        (p) => p.selfSealing !== undefined && (p.type === 'tie' || p.type === 'bracket' || p.type === 'other'),
      );
      if (seal !== undefined)
        yield {
          kind: 'pass',
          ...base,
          at: seal.at,
          message: `The fixings of "${work.id}" through "${barrier.id}" are sealed by "${seal.id}".`,
          provided: `"${seal.id}"`,
        };
      else if (tested?.selfSealing !== undefined)
        yield {
          kind: 'pass',
          ...base,
          at: tested.selfSealing.at,
          message: `The fixings of "${work.id}" through "${barrier.id}" are declared to seal themselves (${tested.selfSealing.value}).`,
          provided: tested.selfSealing.value,
        };
      else
        yield {
          kind: 'fail',
          ...base,
          at: work.at,
          provided: 'neither',
          message: `"${work.id}" is fixed through the finished barrier "${barrier.id}", and nothing seals its fixings.`,
          correct: `Add a work with "place: fastener heads" after "${work.id}", or declare a tie under "penetrations" with the test that shows it "selfSealing".`,
          related: [{ message: 'the barrier', at: barrier.at }],
        };
    }
  },
});
