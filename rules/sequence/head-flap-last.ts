import { defineRule } from '../../src/engine/rule.js';
import type { Outcome } from '../../src/engine/result.js';
import { isFluid } from '../../src/model/families.js';
import { barrierWorks, flashingAt, unitSet, worksNamed, type Spot } from '../../src/model/order.js';
import { fieldOfWork } from '../../src/model/named-field.js';
import type { Apply, Close, Detail, Opening } from '../../src/model/types.js';

/** The head flashing that a flap comes down over: the last piece at the head. */
function headFlashing(detail: Detail, opening: Opening): Spot | undefined {
  return flashingAt(detail, opening, ['head', 'flange head']).reduce<Spot | undefined>(
    (a, b) => (a === undefined || a.rank <= b.rank ? b : a),
    undefined,
  );
}

/** The sheet of the field whose lifted edge a head flashing was slipped under; liquid leaves no flap. */
function liftedSheet(detail: Detail, head: Apply): Apply | undefined {
  const meant = head.tuckedUnder.flatMap((t) => worksNamed(detail, t.value));
  return barrierWorks(detail).find((w) => !isFluid(w.family) && w.step < head.step && meant.includes(w));
}

/** With the barrier on the wall first, its flap at the head is lapped down last of all. */
export default defineRule({
  id: 'sequence/head-flap-last',
  title: 'Order of the head flap',
  summary:
    'Where the barrier was on the wall first, the unit is set, then the head flashing goes on, then the flap of the barrier is lapped down over it.',
  level: 'warning',
  reads: ['work.close', 'work.tuckedUnder', 'work.set', 'work.place'],
  sources: [
    {
      basis: 'guide',
      citation: 'DOE Building America Solution Center, fully flashed window and door openings',
      provenance: 'seen',
      url: 'https://basc.pnnl.gov/resource-guides/fully-flashed-window-and-door-openings',
    },
    { basis: 'standard', citation: 'ASTM E2112, methods A1 and B1', provenance: 'from memory, confirm' },
  ],
  *review({ detail }) {
    for (const opening of detail.openings) {
      const close = detail.work.find((w): w is Close => w.action === 'close' && w.openings.includes(opening));
      const head = headFlashing(detail, opening);
      const set = unitSet(detail, opening);
      const sheet = head === undefined ? undefined : liftedSheet(detail, head.work);
      // Whether there is head flashing at all is for `step-complete` and `nothing-floats` to say.
      if (head === undefined || (close === undefined && sheet === undefined)) continue;
      const base = { subject: `head flap at ${opening.id}`, sources: this.sources };
      if (close === undefined) {
        yield {
          kind: 'fail',
          ...base,
          at: head.work.tuckedUnder[0]?.at ?? head.work.at,
          message: `"${head.work.id}" is slipped under "${sheet?.id ?? ''}" at the head of "${opening.id}", but no step laps the lifted flap down again.`,
          required: `"close: head flap" after "${head.work.id}"`,
          provided: 'no such step',
          correct: `Add "{ close: head flap, of: ${opening.id} }" after "${head.work.id}".`,
        };
        continue;
      }
      const faults: Outcome[] = [];
      if (set !== undefined && opening.unit?.mounting?.value === 'flange' && head.work.step < set.step) {
        faults.push({
          kind: 'fail',
          ...base,
          at: head.work.at,
          message: `"${head.work.id}" at the head of "${opening.id}" is on the wall before "${set.id}" sets the unit, so no head flashing laps over the head flange.`,
          required: `"${set.id}" before "${head.work.id}"`,
          provided: `"${head.work.id}" is step ${head.work.step + 1}, "${set.id}" is step ${set.step + 1}`,
          correct: `Put "${head.work.id}" between "${set.id}" and "${close.id}".`,
          related: [{ message: 'the unit is set here', at: set.at }],
        });
      }
      for (const before of [head.work, set]) {
        if (before === undefined || before.step < close.step) continue;
        faults.push({
          kind: 'fail',
          ...base,
          at: close.at,
          message: `"${close.id}" laps the flap at the head of "${opening.id}" down before "${before.id}" is done.`,
          required: `"${close.id}" after "${before.id}"`,
          provided: `"${close.id}" is step ${close.step + 1}, "${before.id}" is step ${before.step + 1}`,
          correct: `Put "${close.id}" after "${before.id}".`,
          related: [{ message: `"${before.id}" comes later`, at: before.at }],
        });
      }
      yield* faults;
      if (faults.length === 0) {
        const order = [...(set === undefined ? [] : [set]), head.work, close]
          .sort((a, b) => a.step - b.step)
          .map((w) => `"${w.id}"`)
          .join(', ');
        yield {
          kind: 'pass',
          ...base,
          at: close.at,
          message: `The flap at the head of "${opening.id}" comes down last: ${order}.`,
        };
      }
      yield* ends(close, opening, this.sources);
    }
  },
});

/** The cut ends of the flap are sealed once it is down. */
function* ends(close: Close, opening: Opening, sources: Outcome['sources'] & object): Iterable<Outcome> {
  const base = {
    subject: `ends of the head flap at ${opening.id}`,
    sources: sources.slice(1),
    required: 'ends sealed',
  };
  if (close.endsSealed === undefined) {
    yield {
      kind: 'open',
      ...base,
      at: close.at,
      message: `"${close.id}" does not say whether the cut ends of the flap over "${opening.id}" are sealed; state "endsSealed".`,
      missing: [fieldOfWork(close, 'endsSealed')],
    };
  } else if (close.endsSealed.value) {
    yield {
      kind: 'pass',
      ...base,
      at: close.endsSealed.at,
      message: `The cut ends of the flap over "${opening.id}" are sealed.`,
      provided: 'ends sealed',
    };
  } else {
    yield {
      kind: 'fail',
      ...base,
      at: close.endsSealed.at,
      message: `The cut ends of the flap over "${opening.id}" are left open.`,
      provided: 'ends open',
      correct: 'Seal the diagonal cuts once the flap is down ("endsSealed: true").',
    };
  }
}
