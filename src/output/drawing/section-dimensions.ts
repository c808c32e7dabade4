/** What a section measures: reach of each piece, laps in the depth of the wall, dam, pan and frame. */
import { baseWorks } from '../../geometry/section/build.js';
import { depthLaps, sealAgainstDam } from '../../geometry/section/laps.js';
import type { Strip } from '../../geometry/section/types.js';
import { lengthText, type Dimension, type DimensionGroup } from './dimensions.js';
import type { SectionMap } from './section-map.js';
import type { DrawingSubject } from './subject.js';
import type { Quantity } from '../../quantity/types.js';

type Like = Pick<Quantity, 'unit' | 'system'> | undefined;
const LEAST_MM = 0.5;

export interface SectionDimensions {
  /** Along the wall, on its outside. */
  readonly outside: DimensionGroup[];
  /** Along the wall, on its inside. */
  readonly inside: DimensionGroup[];
  /** Through the wall, on the side of the opening. */
  readonly through: DimensionGroup[];
}

/** The field that tells how far a piece reaches onto the wall at this place. */
function reachField(strip: Strip): { field: string; like: Like; from: number } | undefined {
  const { apply, role, opening } = strip.piece;
  if (apply === undefined) return undefined;
  if (strip.overLintel === true)
    return { field: 'upstand', like: apply.upstandMm, from: Math.min(...strip.runs.map((r) => r.fromMm)) };
  switch (role) {
    case 'sill flashing':
    case 'jamb flashing':
      return { field: 'ontoWall', like: apply.ontoWallMm, from: 0 };
    case 'head flashing':
      return apply.ontoWallMm === undefined
        ? { field: 'upstand', like: apply.upstandMm, from: 0 }
        : { field: 'ontoWall', like: apply.ontoWallMm, from: 0 };
    case 'counterflashing':
      return { field: 'ontoWall', like: apply.ontoWallMm, from: opening?.unit?.flangeMm?.value ?? 0 };
    case 'base flashing':
      return {
        field: apply.upstandMm !== undefined ? 'upstand' : apply.ontoWallMm !== undefined ? 'ontoWall' : 'bearing',
        like: apply.upstandMm ?? apply.ontoWallMm ?? apply.bearingMm,
        from: 0,
      };
    default:
      return undefined;
  }
}

/** All dimensions of a section. */
export function sectionDimensions(subject: DrawingSubject, map: SectionMap): SectionDimensions {
  const found: SectionDimensions = { outside: [], inside: [], through: [] };
  const { section } = map;
  const isPlan = map.alongAxis === 'x';
  const onAxis = (p: readonly [number, number], axis: 'x' | 'y'): number => (axis === 'x' ? p[0] : p[1]);
  const across = isPlan ? 'y' : 'x';
  const like = section.opening?.widthMm ?? subject.detail.layers.find((l) => l.thicknessMm !== undefined)?.thicknessMm;
  const along = (from: number, to: number, depth: number, of: string, mmLike: Like): Dimension[] => {
    if (to - from < LEAST_MM || to > section.toMm + LEAST_MM || from < section.fromMm - LEAST_MM) return [];
    const [a, b] = [map.point(from, depth), map.point(to, depth)];
    const mm = to - from;
    return [
      {
        from: onAxis(a, map.alongAxis),
        to: onAxis(b, map.alongAxis),
        edge: onAxis(a, across),
        text: lengthText(mm, mmLike),
        of,
        mm,
      },
    ];
  };
  /** Drawn depths, and the true length between them. */
  const through = (from: number, to: number, mm: number, a: number, of: string, mmLike: Like): Dimension[] => {
    if (mm < LEAST_MM) return [];
    const [p, q] = [map.point(a, from), map.point(a, to)];
    return [
      {
        from: onAxis(p, across),
        to: onAxis(q, across),
        edge: onAxis(p, map.alongAxis),
        text: lengthText(mm, mmLike),
        of,
        mm,
      },
    ];
  };
  const add = (side: keyof SectionDimensions, step: number | undefined, dimensions: readonly Dimension[]): void => {
    if (dimensions.length > 0) found[side].push({ ...(step === undefined ? {} : { step }), dimensions });
  };
  for (const strip of section.strips) {
    const { piece } = strip;
    const reach = reachField(strip);
    const runs = strip.runs.filter((r) => r.on === 'face' && r.fromMm >= 0);
    const to = Math.max(0, ...runs.map((r) => r.toMm));
    const id = piece.work.id;
    if (reach !== undefined && runs.length > 0) {
      const far = runs.find((r) => r.toMm === to);
      const depth = far === undefined ? 0 : map.faceDepth(far);
      add(
        'outside',
        piece.work.step,
        along(reach.from, to, depth, `${id}.${reach.field}`, reach.like).map((d) =>
          isPlan ? { ...d, edge: map.point(0, depth)[1] } : d,
        ),
      );
    }
    const onto = piece.apply?.ontoFoundationMm;
    if (onto !== undefined && section.place === 'base')
      add('outside', piece.work.step, along(-onto.value, 0, 0, `${id}.ontoFoundation`, onto));
    if (strip.backDamMm !== undefined && piece.apply !== undefined && !isPlan) {
      const w = Math.max(...strip.runs.filter((r) => r.on === 'return').map((r) => r.toMm));
      const base = map.returnAlong(
        strip.runs.find((r) => r.on === 'return' && r.toMm === w)?.level ?? 0,
        strip.slope,
        w,
      );
      add('inside', piece.work.step, along(base - strip.backDamMm, base, -w, `${id}.backDam`, piece.apply.backDamMm));
    }
    const back = strip.runs.filter((r) => r.on === 'return');
    if (piece.role === 'sill flashing' && back.length > 0) {
      const w = Math.max(...back.map((r) => r.toMm));
      const into = piece.apply?.intoOpeningMm;
      const written = into === 'full' ? section.opening?.depthMm : into;
      add('through', piece.work.step, through(-w, 0, w, section.fromMm, `${id}.intoOpening`, written));
    }
  }
  for (const lap of depthLaps(section)) {
    // The laps that carry water from one system to the next: field and flashing.
    const [o, i] = [lap.outer, lap.inner];
    if (lap.on !== 'face' || (o.role === 'field') === (i.role === 'field')) continue;
    const flashing = o.role === 'field' ? i : o;
    if (!/^(sill|jamb|head|base) flashing$/.test(flashing.role)) continue;
    const runsOf = (p: typeof o) =>
      section.strips.find((s) => s.piece === p)?.runs.filter((r) => r.on === 'face') ?? [];
    const common = runsOf(o).flatMap((x) =>
      runsOf(i)
        .map((y) => [Math.max(x.fromMm, y.fromMm), Math.min(x.toMm, y.toMm)] as const)
        .filter(([a, b]) => b > a),
    );
    const from = Math.min(...common.map(([a]) => a));
    const to = Math.max(...common.map(([, b]) => b));
    const isReach = [o, i].some((p) => {
      const strip = section.strips.find((s) => s.piece === p);
      const runs = strip?.runs.filter((r) => r.on === 'face' && r.fromMm >= 0) ?? [];
      return strip !== undefined && reachField(strip)?.from === from && Math.max(...runs.map((r) => r.toMm)) === to;
    });
    // A lap over the whole leg is that leg, which has its dimension.
    if (!isReach && Math.abs(to - from - lap.lapMm) < LEAST_MM)
      add(
        'outside',
        o.work.step,
        along(from, to, 0, `lap ${o.id} over ${i.id}`, like).map((d) => ({
          ...d,
          edge: isPlan ? map.point(0, 0)[1] : d.edge,
        })),
      );
  }
  const { unit } = section;
  if (unit !== undefined && !unit.assumed.frameDepth) {
    const outer = unit.flangeMm === undefined ? map.drawnDepth(unit.outerMm) : 0;
    add(
      'through',
      undefined,
      through(
        unit.innerMm,
        outer,
        unit.outerMm - unit.innerMm,
        section.fromMm,
        `${unit.opening.id}.unit.frameDepth`,
        unit.opening.unit?.frameDepthMm,
      ),
    );
  }
  const meeting = sealAgainstDam(section);
  if (section.place === 'sill' && meeting?.frameAtMm !== undefined && (meeting.bridgeMm ?? 0) > 10) {
    add(
      'through',
      undefined,
      through(-meeting.damAtMm, -meeting.frameAtMm, meeting.bridgeMm ?? 0, section.fromMm, 'frame to back dam', like),
    );
  }
  const { foundation } = section;
  if (foundation?.gradeMm !== undefined) {
    const { gradeMm, claddingFootMm } = foundation;
    const depth = map.drawnDepth(0);
    const works = baseWorks(subject.detail);
    const above = works.find((w) => w.aboveGradeMm?.value === -gradeMm);
    const bare = works.find((w) => w.exposedFoundationMm?.value === claddingFootMm - gradeMm);
    if (above !== undefined)
      add('outside', above.step, along(gradeMm, 0, depth, `${above.id}.aboveGrade`, above.aboveGradeMm));
    if (bare !== undefined)
      add(
        'outside',
        bare.step,
        along(gradeMm, claddingFootMm, depth, `${bare.id}.exposedFoundation`, bare.exposedFoundationMm),
      );
  }
  return found;
}
