import { defineRule } from '../../src/engine/rule.js';
import type { Outcome, Source } from '../../src/engine/result.js';
import type { WallFace } from '../../src/geometry/types.js';
import { shedsWater } from '../../src/model/families.js';
import { showsWholeWall } from '../../src/model/drawn.js';
import { meets } from '../../src/model/hiding.js';
import { flashingAt, JAMB_PLACES, layerOf, unitSet } from '../../src/model/order.js';
import { fieldOfOpening } from '../../src/model/named-field.js';
import type { Apply, Detail, Family, Opening, Place, SetIn, Side } from '../../src/model/types.js';
import { mayLeaveOutHead } from '../../src/water/overhang.js';

const SOLUTION_CENTER: Source = {
  basis: 'guide',
  citation: 'DOE Building America Solution Center, fully flashed window and door openings',
  provenance: 'seen',
  url: 'https://basc.pnnl.gov/resource-guides/fully-flashed-window-and-door-openings',
};
const INDOOR_AIR: Source = {
  basis: 'guide',
  citation: 'EPA Indoor airPLUS, technical guidance 1.6',
  provenance: 'seen',
  url: 'http://epa.gov/indoorairplus/technical/moisture/1_6.html',
};
const FLANGE: Source = {
  basis: 'standard',
  citation: 'ASTM E2112, flange lapped at head and jambs (steps in a public extract)',
  provenance: 'seen at second hand',
};
const FIELD: Source = {
  basis: 'practice',
  citation: 'each layer drawn is put on by a step',
  provenance: 'common practice, no source',
};

const JOINT: Source = {
  basis: 'practice',
  citation: 'the joint of a recessed unit is closed outside at head and jambs',
  provenance: 'common practice, no source',
};

const MEMBRANES: ReadonlySet<Family> = new Set<Family>([
  'fluid-applied membrane',
  'self-adhered membrane',
  'mechanically fastened sheet',
  'building paper',
]);

/** One step that an opening needs; `by` is the first work that provides it. */
interface Step {
  readonly name: string;
  readonly by: string | undefined;
  readonly sources: readonly Source[];
  readonly correct: string;
}

/** Steps of the flashing itself. A detail that names a method may do with the strips over the flange alone. */
function flashingSteps(detail: Detail, opening: Opening): Step[] {
  const overFlange = detail.method !== undefined;
  const first = (...places: Place[]): string | undefined => flashingAt(detail, opening, places)[0]?.work.id;
  const left = first('jambs', 'left jamb', ...(overFlange ? ['flange jambs' as const] : []));
  const right = first('jambs', 'right jamb', ...(overFlange ? ['flange jambs' as const] : []));
  const sources = [SOLUTION_CENTER, INDOOR_AIR];
  const jambs = (name: string, by: string | undefined, place: string): Step => ({
    name,
    by,
    sources,
    correct: `Add a work with "place: ${place}, of: ${opening.id}".`,
  });
  return [
    ...(left === undefined && right === undefined
      ? [jambs('flashing at the jambs', undefined, 'jambs')]
      : [
          jambs('flashing at the left jamb', left, 'left jamb'),
          jambs('flashing at the right jamb', right, 'right jamb'),
        ]),
    // In Canada the head flashing may be left out under a deep eave; lap/head-flashing-waiver decides.
    ...(opening.overhang !== undefined && mayLeaveOutHead(detail.project) && first('head', 'flange head') === undefined
      ? []
      : [headStep(detail, opening, overFlange, first, sources)]),
    {
      name: 'setting of the unit',
      by: unitSet(detail, opening)?.id,
      sources: [SOLUTION_CENTER],
      correct: `Add a step "{ set: unit, of: ${opening.id} }".`,
    },
  ];
}

function headStep(
  detail: Detail,
  opening: Opening,
  overFlange: boolean,
  first: (...places: Place[]) => string | undefined,
  sources: readonly Source[],
): Step {
  return {
    name: 'flashing at the head',
    by: first('head', ...(overFlange ? ['flange head' as const] : [])) ?? lintel(detail, opening),
    sources,
    correct: `Add a work with "place: head, of: ${opening.id}".`,
  };
}

/** A recessed unit has no flange to lap: its joint to the wall is closed outside by a seal or by its bedding. */
function recessedSteps(detail: Detail, opening: Opening, set: SetIn): Step[] {
  const seals = detail.work.filter(
    (w): w is Apply =>
      w.action === 'apply' && w.openings.includes(opening) && w.places.some((p) => p.value === 'exterior perimeter'),
  );
  const step = (name: string, bedded: boolean, sides: readonly Side[]): Step => ({
    name,
    sources: [JOINT],
    correct: `Add a work with "place: exterior perimeter, of: ${opening.id}", or bed the unit there.`,
    by: bedded
      ? set.id
      : seals.find((w) => w.sides.length === 0 || sides.every((side) => w.sides.some((s) => s.value === side)))?.id,
  });
  return [
    step('seal outside the unit at the head', set.bedding.head?.value === 'sealed', ['head']),
    step('seal outside the unit at the jambs', set.bedding.jambs?.value === 'sealed', ['left jamb', 'right jamb']),
  ];
}

/** Over a recessed unit in masonry the flashing of the lintel takes the place of head flashing. */
function lintel(detail: Detail, opening: Opening): string | undefined {
  return opening.unit?.mounting?.value === 'recessed'
    ? detail.work.find((w) => w.action === 'apply' && w.places.some((p) => p.value === 'shelf angle'))?.id
    : undefined;
}

/** The flange at head and jambs is lapped by a later piece, or bedded on jamb flashing where the method says so. */
function flangeSteps(detail: Detail, face: WallFace, opening: Opening, set: SetIn): Step[] {
  const flange = face.pieces.filter((p) => p.role === 'unit flange' && p.work === set && p.opening === opening);
  const later = detail.work.filter((w): w is Apply => w.action === 'apply' && w.step > set.step);
  const lappedBy = (places: readonly Place[]): string | undefined =>
    flashingAt(detail, opening, places).find((s) => s.work.step > set.step)?.work.id ??
    later.find((w) => face.piecesOf(w.id).some((p) => p.role === 'field' && flange.some((f) => meets(p, f))))?.id;
  const isBedded =
    (detail.method?.value === 'B' || detail.method?.value === 'B1') && set.bedding.jambs?.value === 'sealed';
  const step = (name: string, by: string | undefined, place: Place): Step => ({
    name,
    by,
    sources: [FLANGE, SOLUTION_CENTER],
    correct: `Add a work with "place: ${place}, of: ${opening.id}" after "${set.id}".`,
  });
  return [
    step('lap over the flange at the head', lappedBy(['flange head', 'head']), 'flange head'),
    step(
      'lap over the flange at the jambs',
      lappedBy(['flange jambs', ...JAMB_PLACES]) ?? (isBedded ? set.id : undefined),
      'flange jambs',
    ),
  ];
}

/** Each membrane of the wall is put on by some work, above and below the sill. */
function* fieldSteps(detail: Detail): Iterable<Outcome> {
  for (const layer of detail.layers) {
    const isBarrier =
      MEMBRANES.has(layer.family) ||
      (shedsWater(layer.family) && layer.controls.some((c) => c.value === 'water' || c.value === 'air'));
    if (!isBarrier) continue;
    const works = detail.work.filter((w): w is Apply => w.action === 'apply' && layerOf(detail, w) === layer);
    const places = new Set(works.flatMap((w) => w.places.map((p) => p.value)));
    const base = {
      subject: `work that puts on ${layer.id}`,
      sources: [FIELD],
      required: `a work that puts on "${layer.id}"`,
    };
    const missing = places.has('field')
      ? undefined
      : !places.has('field below sill') && !places.has('field above sill')
        ? 'nowhere'
        : !places.has('field above sill')
          ? 'only below the sill'
          : !places.has('field below sill')
            ? 'only above the sill'
            : undefined;
    if (missing === undefined) {
      yield {
        kind: 'pass',
        ...base,
        at: layer.at,
        message: `"${layer.id}" is put on by ${works.map((w) => `"${w.id}"`).join(', ')}.`,
        provided: works.map((w) => w.id).join(', '),
      };
    } else if (places.size > 0 && !showsWholeWall(detail)) {
      yield {
        kind: 'open',
        ...base,
        at: layer.at,
        message: `The work puts "${layer.id}" on ${missing}, and the drawing does not show the whole wall; show the rest of the field.`,
        missing: ['work.place: field'],
      };
    } else {
      yield {
        kind: 'fail',
        ...base,
        at: layer.at,
        provided: missing,
        message: `The wall has the membrane "${layer.id}", and the work puts it on ${missing}.`,
        correct: `Add a work with "place: field, layer: ${layer.id}" at its turn.`,
      };
    }
  }
}

/** The work holds every step that the drawn wall needs. */
export default defineRule({
  id: 'sequence/step-complete',
  title: 'Steps of the work',
  summary:
    'The work lists flashing at jambs and head, the setting of the unit, the lap over its flange and the field of the barrier.',
  level: 'warning',
  reads: ['work.place', 'work.set', 'work.bedding', 'wall', 'openings.unit.mounting', 'method'],
  sources: [SOLUTION_CENTER, INDOOR_AIR, FLANGE, JOINT, FIELD],
  *review({ detail, face }) {
    if (!detail.work.some((w) => w.action !== 'hold')) return;
    for (const opening of detail.openings) {
      const mounting = opening.unit?.mounting;
      // Without a unit the drawing shows the opening alone, as for a mock-up of the flashing.
      if (opening.unit === undefined || !detail.work.some((w) => w.action !== 'hold' && w.openings.includes(opening)))
        continue;
      const set = unitSet(detail, opening);
      const steps = [
        ...flashingSteps(detail, opening),
        ...(set !== undefined && mounting?.value === 'flange' ? flangeSteps(detail, face, opening, set) : []),
        ...(set !== undefined && mounting?.value === 'recessed' ? recessedSteps(detail, opening, set) : []),
      ];
      for (const { name, by, sources, correct } of steps) {
        if (by !== undefined) continue;
        yield {
          kind: 'fail',
          at: opening.at,
          subject: `${name} of ${opening.id}`,
          sources,
          required: name,
          provided: 'no such step',
          message: `No step of the work provides the ${name} of "${opening.id}".`,
          correct,
        };
      }
      if (steps.every((s) => s.by !== undefined)) {
        yield {
          kind: 'pass',
          at: opening.at,
          subject: `steps at ${opening.id}`,
          sources: this.sources,
          message: `The work at "${opening.id}" is complete: ${steps.map((s) => `${s.name} by "${s.by ?? ''}"`).join(', ')}.`,
        };
      }
      if (mounting === undefined) {
        yield {
          kind: 'open',
          at: opening.unit.at,
          subject: `lap over the flange of ${opening.id}`,
          message: `The unit in "${opening.id}" does not say how it is mounted, so it is not known whether a flange has to be lapped; state "mounting".`,
          missing: [fieldOfOpening(opening, 'unit.mounting')],
          sources: [FLANGE],
        };
      }
    }
    yield* fieldSteps(detail);
  },
});
