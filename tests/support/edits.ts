/**
 * Edits of a detail that break it, made without knowing any rule: take a step out, swap two, halve an extent,
 * turn a lap around. Each gives the plain data of a new detail.
 */
import { buildFace } from '../../src/geometry/face.js';
import type { Detail } from '../../src/model/types.js';

type Plain = Record<string, unknown>;
type Step = Plain & { id: string };

export interface Edit {
  readonly name: string;
  /** Ids of the steps it touches. */
  readonly steps: readonly string[];
  readonly data: Plain;
}

const copy = (data: Plain): Plain => JSON.parse(JSON.stringify(data)) as Plain;
const stepsOf = (data: Plain): Step[] => (data['work'] ?? []) as Step[];
const asList = (value: unknown): unknown[] => (Array.isArray(value) ? value : value === undefined ? [] : [value]);

/** Every detail with one step less; mentions of the step elsewhere go with it, so that only the step is missing. */
export function withoutOneStep(data: Plain): Edit[] {
  return stepsOf(data).map(({ id }) => {
    const next = copy(data);
    next['work'] = stepsOf(next).filter((s) => s.id !== id);
    for (const step of stepsOf(next)) {
      for (const key of ['of', 'tuckedUnder']) {
        if (!asList(step[key]).includes(id)) continue;
        const rest = asList(step[key]).filter((x) => x !== id);
        if (rest.length > 0) step[key] = rest;
        else Reflect.deleteProperty(step, key);
      }
    }
    for (const edge of Object.values((next['edges'] ?? {}) as Record<string, Plain>))
      if (edge['tieIn'] === id) delete edge['tieIn'];
    return { name: `without "${id}"`, steps: [id], data: next };
  });
}

/** Every detail with two steps in each other's place. */
export function withTwoStepsSwapped(data: Plain): Edit[] {
  const ids = stepsOf(data).map((s) => s.id);
  return ids.flatMap((a, i) =>
    ids.slice(i + 1).map((b, k) => {
      const next = copy(data);
      const steps = stepsOf(next);
      const j = i + 1 + k;
      [steps[i], steps[j]] = [steps[j]!, steps[i]!];
      return { name: `"${a}" and "${b}" swapped`, steps: [a, b], data: next };
    }),
  );
}

/** Extents whose halving matters to the wall. Declared sizes of the opening itself are not among them. */
const EXTENTS = [
  'extends',
  'ontoWall',
  'pastJambs',
  'downJambs',
  'aboveHead',
  'belowSill',
  'backDam',
  'endDams',
  'upstand',
  'bearing',
  'ontoFoundation',
  'aboveGrade',
  'courseLap',
  'endLap',
  'projects',
  'slack',
];

/** Half of a length written as `6 in` or `1-1/4 in`, as a decimal. */
export function half(length: string): string {
  const match =
    /^(?:(?<whole>\d+(?:\.\d+)?)(?:-|\s+(?=\d)|(?=\s*[a-z])))?(?:(?<top>\d+)\/(?<bottom>\d+))?\s*(?<unit>[a-z]+)$/.exec(
      length,
    );
  if (match?.groups === undefined) throw new Error(`cannot halve "${length}"`);
  const { whole, top, bottom, unit } = match.groups;
  return `${(Number(whole ?? 0) + (top === undefined ? 0 : Number(top) / Number(bottom))) / 2} ${unit ?? ''}`;
}

/** Every detail with one extent halved. */
export function withOneExtentHalved(data: Plain): Edit[] {
  return stepsOf(data).flatMap((step, i) => {
    const edits: Edit[] = [];
    for (const key of EXTENTS) {
      if (typeof step[key] !== 'string') continue;
      const next = copy(data);
      stepsOf(next)[i]![key] = half(step[key]);
      edits.push({ name: `"${step.id}.${key}" halved from ${step[key]}`, steps: [step.id], data: next });
    }
    for (const onto of Object.keys(step['lapsOnto'] ?? {})) {
      const next = copy(data);
      const laps = stepsOf(next)[i]!['lapsOnto'] as Record<string, string>;
      laps[onto] = half(laps[onto]!);
      edits.push({ name: `"${step.id}.lapsOnto.${onto}" halved`, steps: [step.id], data: next });
    }
    return edits;
  });
}

/** Every detail with one lap turned around: the outer piece slipped under the inner one. */
export function withOneLapReversed(data: Plain, detail: Detail): Edit[] {
  const pairs = new Map<string, [string, string]>();
  for (const lap of buildFace(detail).laps) {
    const [over, under] = [lap.over.work, lap.under.work];
    if (over !== under && over.action === 'apply') pairs.set(`${over.id} ${under.id}`, [over.id, under.id]);
  }
  return [...pairs.values()].map(([over, under]) => {
    const next = copy(data);
    const step = stepsOf(next).find((s) => s.id === over)!;
    step['tuckedUnder'] = [...asList(step['tuckedUnder']), under];
    return { name: `"${over}" slipped under "${under}"`, steps: [over, under], data: next };
  });
}
