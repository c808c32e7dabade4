/** What an elevation measures: how far each piece reaches, read off the pieces, in the author's units. */
import { bounding } from '../../geometry/rect.js';
import { openingRect, penetrationRect } from '../../geometry/pieces.js';
import type { Piece, Rect } from '../../geometry/types.js';
import { lengthText, type Dimension, type DimensionGroup } from './dimensions.js';
import type { FaceMap } from './elevation-frame.js';
import type { Apply, Measured } from '../../model/types.js';
import type { Quantity } from '../../quantity/types.js';

export interface FaceDimensions {
  readonly top: DimensionGroup[];
  readonly bottom: DimensionGroup[];
  readonly left: DimensionGroup[];
  readonly right: DimensionGroup[];
}
type Like = Pick<Quantity, 'unit' | 'system'> | undefined;

/** Lengths below this are rounding. */
const LEAST_MM = 0.5;

class Collector {
  readonly found: FaceDimensions = { top: [], bottom: [], left: [], right: [] };

  constructor(private readonly map: FaceMap) {}

  /** A level length from u0 to u1, with its witness lines from v. */
  level(u0: number, u1: number, v: number, of: string, like: Like): Dimension[] {
    const { window } = this.map;
    if (u1 - u0 < LEAST_MM || u0 < window.u0 - LEAST_MM || u1 > window.u1 + LEAST_MM) return [];
    const mm = u1 - u0;
    return [{ from: this.map.x(u0), to: this.map.x(u1), edge: this.map.y(v), text: lengthText(mm, like), of, mm }];
  }

  /** An upright length from v0 to v1, with its witness lines from u. */
  upright(v0: number, v1: number, u: number, of: string, like: Like): Dimension[] {
    const { window } = this.map;
    if (v1 - v0 < LEAST_MM || v0 < window.v0 - LEAST_MM || v1 > window.v1 + LEAST_MM) return [];
    const mm = v1 - v0;
    return [{ from: this.map.y(v1), to: this.map.y(v0), edge: this.map.x(u), text: lengthText(mm, like), of, mm }];
  }

  add(side: keyof FaceDimensions, step: number | undefined, dimensions: readonly Dimension[]): void {
    if (dimensions.length > 0) this.found[side].push({ ...(step === undefined ? {} : { step }), dimensions });
  }
}

function around(c: Collector, piece: Piece, apply: Apply, o: Rect): void {
  const b = bounding(piece.face);
  if (b === undefined) return;
  const id = (field: string): string => `${apply.id}.${field}`;
  const { step } = apply;
  const sides = (field: string, like: Measured | undefined, v: number, inset = 0): Dimension[] => [
    ...c.level(b.u0, o.u0 - inset, v, id(field), like),
    ...c.level(o.u1 + inset, b.u1, v, id(field), like),
  ];
  switch (piece.role) {
    case 'sill flashing':
      c.add('bottom', step, sides('pastJambs', apply.pastJambsMm, b.v0));
      c.add('left', step, c.upright(b.v0, o.v0, b.u0, id('ontoWall'), apply.ontoWallMm));
      c.add('right', step, c.upright(o.v0, b.v1, b.u1, id('endDams'), apply.endDamsMm));
      return;
    case 'jamb flashing':
      c.add('bottom', step, sides('ontoWall', apply.ontoWallMm, b.v0));
      c.add('right', step, c.upright(o.v1, b.v1, b.u1, id('aboveHead'), apply.aboveHeadMm));
      c.add('right', step, c.upright(b.v0, o.v0, b.u1, id('belowSill'), apply.belowSillMm));
      return;
    case 'head flashing':
      c.add('top', step, sides('pastJambs', apply.pastJambsMm, b.v1));
      c.add(
        'left',
        step,
        c.upright(
          o.v1,
          b.v1,
          b.u0,
          id(apply.ontoWallMm === undefined ? 'upstand' : 'ontoWall'),
          apply.ontoWallMm ?? apply.upstandMm,
        ),
      );
      c.add('right', step, c.upright(b.v0, o.v1, b.u1, id('downJambs'), apply.downJambsMm));
      return;
    case 'opening corners':
      c.add('bottom', step, c.level(b.u0, o.u0, b.v0, id('extends'), apply.extendsMm ?? apply.ontoWallMm));
      return;
    case 'counterflashing': {
      const flange = piece.opening?.unit?.flangeMm?.value ?? 0;
      if (b.v0 >= o.v1 - LEAST_MM) {
        c.add('left', step, c.upright(o.v1 + flange, b.v1, b.u0, id('ontoWall'), apply.ontoWallMm));
      } else if (b.v1 <= o.v0 + LEAST_MM) {
        c.add('left', step, c.upright(b.v0, o.v0 - flange, b.u0, id('ontoWall'), apply.ontoWallMm));
      } else c.add('bottom', step, sides('ontoWall', apply.ontoWallMm, b.v0, flange));
      return;
    }
    default:
      return;
  }
}

/** How far the field stops on the flashing of the jamb, where the author gives such a lap. */
function fieldLap(c: Collector, field: Piece, jambs: readonly Piece[], o: Rect): void {
  const lap = field.apply?.lapsOnto.find((l) => l.onto === 'opening flashing');
  const middle = (o.v0 + o.v1) / 2;
  const edge = Math.max(...field.face.filter((r) => r.u1 <= o.u0 && r.v0 < middle && r.v1 > middle).map((r) => r.u1));
  const out = Math.min(...jambs.flatMap((p) => p.face.filter((r) => r.u1 <= o.u0 + LEAST_MM).map((r) => r.u0)));
  if (lap === undefined || !Number.isFinite(edge) || !Number.isFinite(out)) return;
  c.add('bottom', field.work.step, c.level(out, edge, o.v0, `${field.work.id}.lapsOnto`, lap.lapMm));
}

/** All dimensions of an elevation, those of one opening and those of the wall. */
export function faceDimensions(map: FaceMap, pieces: readonly Piece[], opening: Piece['opening']): FaceDimensions {
  const c = new Collector(map);
  const { window } = map;
  for (const piece of pieces) {
    const { apply } = piece;
    const b = bounding(piece.face);
    if (apply === undefined || b === undefined || !piece.sheds) continue;
    const id = (field: string): string => `${apply.id}.${field}`;
    if (opening !== undefined && piece.opening === opening) around(c, piece, apply, openingRect(opening));
    if (piece.role === 'penetration collar' && piece.penetration !== undefined) {
      const hole = penetrationRect(piece.penetration);
      c.add('bottom', apply.step, c.level(hole.u1, b.u1, hole.v0, id('extends'), apply.extendsMm));
    }
    if (piece.role === 'base flashing') {
      const field = apply.upstandMm !== undefined ? 'upstand' : apply.ontoWallMm !== undefined ? 'ontoWall' : 'bearing';
      const like = apply.upstandMm ?? apply.ontoWallMm ?? apply.bearingMm;
      c.add('left', apply.step, c.upright(b.v0, b.v1, window.u0, id(field), like));
    }
    if (apply.places.some((p) => p.value === 'top of wall')) {
      const field = apply.bearingMm !== undefined ? 'bearing' : 'ontoWall';
      c.add('left', apply.step, c.upright(b.v0, b.v1, window.u0, id(field), apply.bearingMm ?? apply.ontoWallMm));
    }
    if (opening !== undefined && piece.role === 'field') {
      const jambs = pieces.filter((p) => p.role === 'jamb flashing' && p.opening === opening);
      fieldLap(c, piece, jambs, openingRect(opening));
    }
    if (piece.role === 'joint treatment' && apply.extendsMm !== undefined) {
      // One joint stands for all: the first upright strip that is whole in view.
      const mm = apply.extendsMm.value;
      const off = apply.offCenterMm?.value ?? 0;
      const strip = piece.face.find(
        (r) =>
          r.u0 > window.u0 &&
          r.u1 < window.u1 &&
          Math.abs(r.u1 - r.u0 - 2 * mm) < LEAST_MM &&
          r.v1 > window.v1 - LEAST_MM,
      );
      if (strip !== undefined && off === 0)
        c.add('top', apply.step, c.level(strip.u0, strip.u0 + mm, window.v1, id('extends'), apply.extendsMm));
    }
  }
  if (opening !== undefined) {
    const o = openingRect(opening);
    c.add('bottom', undefined, c.level(o.u0, o.u1, o.v0, `${opening.id}.roughOpening.width`, opening.widthMm));
    c.add('left', undefined, c.upright(o.v0, o.v1, o.u0, `${opening.id}.roughOpening.height`, opening.heightMm));
    const flange = opening.unit?.flangeMm;
    if (flange !== undefined && opening.unit?.mounting?.value === 'flange')
      c.add('top', undefined, c.level(o.u1, o.u1 + flange.value, o.v1, `${opening.id}.unit.flange`, flange));
  }
  return c.found;
}
