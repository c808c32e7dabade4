import { defineRule } from '../../src/engine/rule.js';
import type { Outcome, Source } from '../../src/engine/result.js';
import { isFluid, shedsWater } from '../../src/model/families.js';
import {
  baseIndex,
  barrierWorks,
  flashingAt,
  FLANGE_PLACES,
  hangsOver,
  isField,
  JAMB_PLACES,
  layerOf,
  penetrationSet,
  spotsAt,
  unitSet,
  worksNamed,
} from '../../src/model/order.js';
import type { Apply, Detail, Place, Work } from '../../src/model/types.js';

/** That one work needs another in place first; `on` is absent when no work provides it. */
interface Need {
  readonly work: Work;
  readonly on?: Work;
  /** Ends the sentence `"counter" ...`: `covers the flange of "window", which "set" puts in`. */
  readonly because: string;
}

const BUILDABLE: Source = {
  basis: 'physics',
  citation: 'a piece can only bear on what is already there',
  provenance: 'computed',
};
const STEPS: Source = { basis: 'standard', citation: 'AAMA 2400-10, 5.7.3 (order of the steps)', provenance: 'seen' };

/** Places on the plane of the barrier, out of reach once insulation or cladding hangs. */
const BEHIND_CLADDING: readonly Place[] = [
  'sill',
  ...JAMB_PLACES,
  'head',
  'inside corners',
  'opening edges',
  'sheathing joints',
  'fastener heads',
  ...FLANGE_PLACES,
  'penetration',
  'base of wall',
  'lintel',
  'shelf angle',
  'top of wall',
  'movement joint',
  'inside corner of building',
  'outside corner of building',
];

/** What lies over or against a unit needs the unit. Where the unit is drawn but never set, `step-complete` says so. */
function* unitNeeds(detail: Detail): Iterable<Need> {
  for (const opening of detail.openings) {
    const on = unitSet(detail, opening);
    if (on === undefined && opening.unit !== undefined) continue;
    const done = new Set<Work>();
    for (const { work, place } of spotsAt(detail, opening, [
      ...FLANGE_PLACES,
      'interior perimeter',
      'exterior perimeter',
    ])) {
      if (done.has(work)) continue;
      done.add(work);
      const what = place.startsWith('flange')
        ? `covers the flange of "${opening.id}"`
        : `seals against the unit in "${opening.id}"`;
      yield {
        work,
        ...(on === undefined ? {} : { on }),
        because: `${what}, which ${on === undefined ? 'no step sets' : `"${on.id}" sets`}`,
      };
    }
  }
}

/** A flap that comes down needs a sheet above the sill that holds it, and a head flashing to come down over. */
function* flapNeeds(detail: Detail): Iterable<Need> {
  const field = barrierWorks(detail).find(
    (w) => !isFluid(w.family) && w.places.some((p) => p.value === 'field' || p.value === 'field above sill'),
  );
  for (const work of detail.work) {
    if (work.action !== 'close') continue;
    yield {
      work,
      ...(field === undefined ? {} : { on: field }),
      because:
        field === undefined
          ? 'laps down the flap of a sheet barrier, which no step puts on'
          : `laps down a flap of "${field.id}"`,
    };
    for (const opening of work.openings) {
      if (opening.unit === undefined && flashingAt(detail, opening, ['head', 'flange head']).length === 0) {
        yield { work, because: `laps a flap over the head flashing of "${opening.id}", which no step puts on` };
      }
    }
  }
}

/** A collar needs its penetration. One that comes after the barrier is the business of `later-penetrations`. */
function* collarNeeds(detail: Detail): Iterable<Need> {
  const [field] = barrierWorks(detail);
  for (const penetration of detail.penetrations) {
    const on = penetrationSet(detail, penetration.id);
    if (on === undefined || (field !== undefined && field.step < on.step)) continue;
    for (const work of detail.work) {
      if (work.action === 'apply' && work.penetrations.includes(penetration) && work.family !== 'primer') {
        yield { work, on, because: `closes around "${penetration.id}", which "${on.id}" puts in` };
      }
    }
  }
}

/** From the sheathing outward each worked layer needs the one inboard of it, and the barrier needs the sheathing. */
function* layerNeeds(detail: Detail): Iterable<Need> {
  const base = baseIndex(detail);
  const worked = detail.work.flatMap((work) => {
    const layer = work.action === 'apply' && isField(work) ? layerOf(detail, work) : undefined;
    return layer === undefined || layer.index < base ? [] : [{ work, layer }];
  });
  for (const outer of worked) {
    const inboard = worked.filter((w) => w.layer.index < outer.layer.index);
    const next = Math.max(...inboard.map((w) => w.layer.index));
    for (const inner of inboard) {
      if (inner.layer.index === next)
        yield {
          work: outer.work,
          on: inner.work,
          because: `puts on "${outer.layer.id}", which lies on "${inner.layer.id}" from "${inner.work.id}"`,
        };
    }
  }
  const sheathing = worked.filter((w) => w.layer.index === base);
  const hanging = detail.work.filter((w): w is Apply => w.action === 'apply' && isField(w));
  for (const work of detail.work) {
    if (
      work.action !== 'apply' ||
      !shedsWater(work.family) ||
      !work.places.some((p) => BEHIND_CLADDING.includes(p.value))
    )
      continue;
    for (const { work: on, layer } of sheathing) yield { work, on, because: `lies on "${layer.id}" from "${on.id}"` };
    for (const hung of hanging)
      if (hangsOver(detail, hung, work)) yield { work: hung, on: work, because: `hides the place of "${work.id}"` };
  }
}

/** Boards inside hide the joint between unit and wall, so its seal is in before them. */
function* interiorNeeds(detail: Detail): Iterable<Need> {
  for (const work of detail.work) {
    if (work.action !== 'apply' || !work.places.some((p) => p.value === 'interior face')) continue;
    for (const on of detail.work) {
      if (on.action === 'apply' && on.places.some((p) => p.value === 'interior perimeter'))
        yield { work, on, because: `hides the joint that "${on.id}" seals` };
    }
  }
}

/** Laps the author declares, rods behind their sealant, primer under what it primes. */
function* declaredNeeds(detail: Detail): Iterable<Need> {
  for (const work of detail.work) {
    if (work.action !== 'apply') continue;
    for (const { onto } of work.lapsOnto) {
      const lower =
        onto === 'opening flashing'
          ? detail.openings.flatMap((o) => flashingAt(detail, o, ['sill', ...JAMB_PLACES, 'head'])).map((s) => s.work)
          : worksNamed(detail, onto);
      // Of several pieces one that is there is enough to lap onto; a piece slipped under was there before.
      const [first] = lower.filter((w) => w !== work).sort((a, b) => a.step - b.step);
      if (first !== undefined && work.tuckedUnder.length === 0)
        yield {
          work,
          on: first,
          because: `laps onto ${onto === 'opening flashing' ? `the opening flashing, of which "${first.id}" is the first piece` : `"${first.id}"`}`,
        };
    }
    for (const other of detail.work) {
      if (other.action !== 'apply' || other === work) continue;
      const shared = work.places.some((p) => other.places.some((q) => q.value === p.value)) && sameOpening(work, other);
      if (shared && work.family === 'sealant' && other.family === 'backer rod')
        yield { work, on: other, because: `is tooled against the backer rod "${other.id}"` };
    }
    if (work.family === 'primer') {
      const over = detail.work.filter(
        (w) =>
          w.action === 'apply' &&
          w !== work &&
          w.family !== 'primer' &&
          sameOpening(work, w) &&
          w.places.some((p) => work.places.some((q) => q.value === p.value)),
      );
      const last = over.at(-1);
      if (last !== undefined) yield { work: last, on: work, because: `goes onto the primer "${work.id}"` };
    }
  }
}

function sameOpening(a: Apply, b: Apply): boolean {
  if (a.penetrations.length > 0 || b.penetrations.length > 0)
    return a.penetrations.some((p) => b.penetrations.includes(p));
  return a.openings.length === 0 || b.openings.length === 0 || a.openings.some((o) => b.openings.includes(o));
}

/** One finding for all that a work comes before, so that one misplaced step is one thing to correct. */
function* tooEarly(
  work: Work,
  unmet: readonly Need[],
  base: Pick<Outcome, 'at' | 'subject' | 'sources'>,
): Iterable<Outcome> {
  const needs = unmet
    .flatMap((n) => (n.on === undefined ? [] : [{ on: n.on, because: n.because }]))
    .sort((a, b) => a.on.step - b.on.step);
  const [first] = needs;
  const last = needs.at(-1);
  if (first === undefined || last === undefined) return;
  const others = [...new Set(needs.map((n) => n.on))].filter((on) => on !== first.on);
  const also = others.length === 0 ? '' : ` It also has to wait for ${others.map((on) => `"${on.id}"`).join(', ')}.`;
  yield {
    kind: 'fail',
    ...base,
    message: `"${work.id}" comes before "${first.on.id}", yet it ${first.because}.${also}`,
    required: `"${last.on.id}" before "${work.id}"`,
    provided: `"${work.id}" is step ${work.step + 1}, "${last.on.id}" is step ${last.on.step + 1}`,
    correct: `Put "${work.id}" after "${last.on.id}".`,
    related: [first.on, ...others].map((on) => ({ message: `"${on.id}" comes later`, at: on.at })),
  };
}

/** Each step bears on, covers or seals to something that is already in place. */
export default defineRule({
  id: 'sequence/nothing-floats',
  title: 'What each step bears on',
  summary: 'Each step finds in place what it bears on, covers or seals to.',
  level: 'error',
  reads: ['work', 'work.place', 'work.layer', 'work.lapsOnto', 'work.set', 'work.close', 'wall'],
  sources: [BUILDABLE, STEPS],
  *review({ detail }) {
    const byWork = new Map<Work, Need[]>();
    for (const need of [
      ...unitNeeds(detail),
      ...flapNeeds(detail),
      ...collarNeeds(detail),
      ...layerNeeds(detail),
      ...interiorNeeds(detail),
      ...declaredNeeds(detail),
    ]) {
      byWork.set(need.work, [...(byWork.get(need.work) ?? []), need]);
    }
    for (const [work, needs] of [...byWork].sort(([a], [b]) => a.step - b.step)) {
      const unmet = needs.filter((n) => n.on === undefined || n.on.step > work.step);
      const base = { at: work.at, subject: `what "${work.id}" bears on`, sources: this.sources };
      for (const { because } of unmet.filter((n) => n.on === undefined)) {
        yield {
          kind: 'fail',
          ...base,
          message: `"${work.id}" has nothing to bear on: it ${because}.`,
          required: 'a step that puts it there first',
          provided: 'no such step',
          correct: `Add the missing step before "${work.id}".`,
        } satisfies Outcome;
      }
      yield* tooEarly(work, unmet, base);
      if (unmet.length === 0) {
        const found = new Set(needs.flatMap((n) => (n.on === undefined ? [] : [n.on])));
        const on = [...found].sort((a, b) => a.step - b.step).map((w) => `"${w.id}"`);
        yield {
          kind: 'pass',
          ...base,
          message: `"${work.id}" comes after what it bears on: ${on.join(', ')}.`,
          required: 'after what it bears on',
          provided: `after ${on.join(', ')}`,
        };
      }
    }
  },
});
