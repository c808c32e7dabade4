/**
 * Where water ends that gets onto the sill: units leak at their lower corners sooner or later, and the pan is there
 * to bring that water out.
 *
 * @see IBC 1402.2, means of draining water to the exterior; Building Science information sheet 302 (seen)
 */
import { endsRight, type WaterEnd, type WaterPath, type WaterSource } from './types.js';
import { panOf } from '../at-opening.js';
import { blockedPassages, findWay, passagesFrom, type Note } from '../daylight.js';
import { effectiveDamMm } from '../head.js';
import { testPressureOf } from '../test-pressure.js';
import { openingRect } from '../../geometry/pieces.js';
import type { WallFace } from '../../geometry/types.js';
import type { Detail, Opening } from '../../model/types.js';

/** A path told in notes, because it runs over the pan and not down the wall face. */
export interface PanPath {
  readonly opening: Opening;
  readonly source: WaterSource;
  readonly notes: readonly Note[];
  readonly end: WaterEnd;
  /** Fields that would have to be told to be sure of the end. */
  readonly unknown: readonly Note[];
}

/** True when the barrier of the field is drawn, so that a bare place on the wall face is bare. */
export function showsField(face: WallFace): boolean {
  return face.pieces.some((p) => p.role === 'field' && p.sheds && p.face.length > 0);
}

/** A path that goes wrong on the wall face, one that gets behind the barrier before one that is held behind a veneer. */
function leastRight(paths: readonly WaterPath[]): WaterPath | undefined {
  const wrong = paths.filter((p) => !endsRight(p.end));
  return wrong.find((p) => p.end.kind !== 'behind veneer') ?? wrong[0];
}

/**
 * The way of a leak at the lower corners of the unit.
 *
 * In the order in which water finds them: no pan, a slope to the interior, ends or back dam lower than the head of
 * water at the test pressure, a way out that is blocked. Otherwise it leaves over the outer leg, and `faceEnd` tells
 * where the wall below leads it.
 *
 * @param facePaths paths of the source `pan` of this opening on the wall face
 */
export function panPath(detail: Detail, face: WallFace, opening: Opening, facePaths: readonly WaterPath[]): PanPath {
  const o = openingRect(opening);
  const at = { u: (o.u0 + o.u1) / 2, v: o.v0 };
  const source: WaterSource = {
    kind: 'unit corner',
    name: `a leak at the lower corners of the unit in "${opening.id}"`,
    opening,
  };
  const pan = panOf(detail, opening);
  const start: Note = {
    message: `The unit in "${opening.id}" leaks at its lower corners onto the sill.`,
    at: opening.unit?.at ?? opening.at,
  };
  const done = (end: Omit<WaterEnd, 'u' | 'v'>, notes: readonly Note[], unknown: readonly Note[] = []): PanPath => ({
    opening,
    source,
    notes: [start, ...notes],
    unknown,
    end: { ...at, opening, ...end },
  });
  if (pan === undefined) {
    return done({ kind: 'opening', why: 'no pan lines the sill' }, [
      { message: 'No pan lines the sill: the water runs into the framing.', at: opening.at },
    ]);
  }
  const slope = pan.slope?.value ?? 0;
  if (slope < 0) {
    return done({ kind: 'interior', why: 'the pan slopes to the interior' }, [
      {
        message: `The pan "${pan.id}" slopes to the interior: the water runs into the room.`,
        at: pan.slope?.at ?? pan.at,
      },
    ]);
  }
  const unknown: Note[] = [];
  const pressure = testPressureOf(opening, detail.project);
  if (pressure === undefined) unknown.push({ message: 'openings.unit.waterTest', at: opening.unit?.at ?? opening.at });
  else {
    const dam = pan.backDamMm;
    const damMm = effectiveDamMm(dam?.value ?? 0, slope, opening.unit?.frameDepthMm?.value ?? 0);
    if (dam === undefined && pan.slope === undefined) unknown.push({ message: 'work.backDam', at: pan.at });
    else if (damMm < pressure.headMm - 0.1) {
      return done(
        {
          kind: 'interior',
          why: dam === undefined || dam.value === 0 ? 'over the inboard edge of the pan' : 'over the back dam',
        },
        [
          {
            message:
              dam === undefined || dam.value === 0
                ? `At ${pressure.from} the water stands higher than the slope of "${pan.id}" holds, which has no back dam, and spills into the room.`
                : `At ${pressure.from} the water stands higher than the back dam of "${pan.id}" and spills into the room.`,
            at: dam?.at ?? pan.slope?.at ?? pan.at,
          },
        ],
      );
    }
    const ends = pan.endDamsMm;
    if (ends === undefined) unknown.push({ message: 'work.endDams', at: pan.at });
    else if (ends.value < Math.min(pressure.headMm, dam?.value ?? Infinity) - 0.1) {
      return done({ kind: 'interior', why: 'over the end dams' }, [
        { message: `The water stands higher than the ends of "${pan.id}" and spills into the jambs.`, at: ends.at },
      ]);
    }
  }
  const isShown = showsField(face);
  const wrong = isShown ? leastRight(facePaths) : undefined;
  const passages = passagesFrom(detail, face, opening, pan);
  const way = findWay(passages, (p) => p.blockers.length === 0);
  if (way === undefined) {
    const blocked = blockedPassages(passages);
    const notes = blocked.flatMap((p) => [
      p.step,
      ...p.blockers.map((b) => ({ message: `It is stopped by ${b.message}.`, at: b.at })),
    ]);
    // Off the outer leg it is out of the pan; where it went wrong there, the run down the wall face tells the end.
    if (blocked[0]?.from === 'outer leg' && wrong !== undefined)
      return { ...done(wrong.end, notes, unknown), end: wrong.end };
    return done({ kind: 'held in pan', why: blocked[0]?.blockers[0]?.message ?? 'no way out' }, notes);
  }
  unknown.push(...way.flatMap((p) => p.unknown));
  if (!isShown) unknown.push({ message: 'work.place: field', at: detail.at });
  const over = way.map((p) => p.step);
  if (wrong !== undefined) {
    const last: Note = { message: 'Below the pan it does not stay outside the barrier.', at: pan.at };
    return {
      ...done(
        { kind: wrong.end.kind, ...(wrong.end.why === undefined ? {} : { why: wrong.end.why }) },
        [...over, last],
        unknown,
      ),
      end: wrong.end,
    };
  }
  // Straight out at the sill it sees daylight there; down the wall, where the wall below leads it.
  const below = way.at(-1)?.from === 'drained space' ? facePaths.find((p) => p.end.kind === 'goes on') : undefined;
  return done(
    { kind: below === undefined ? 'daylight' : 'goes on', why: 'over the outer leg of the pan' },
    over,
    unknown,
  );
}
