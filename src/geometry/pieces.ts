/**
 * From the work described to pieces on the wall face: which rectangles each work covers, by its place and
 * extents.
 */
import { bounding, rect, snap, subtract } from './rect.js';
import type { JointSegment, Piece, PieceRole, Rect } from './types.js';
import { edgeOf, shedsWater } from '../model/families.js';
import type { Apply, Close, Detail, Opening, Penetration, Place, Side, Work } from '../model/types.js';

type Returns = Partial<Record<Side, Rect[]>>;
interface Shape {
  readonly face: Rect[];
  readonly returns: Returns;
}

const list = (...rects: (Rect | undefined)[]): Rect[] => rects.filter((r) => r !== undefined);

/** The rough opening on the face. */
export function openingRect(opening: Opening): Rect {
  return {
    u0: snap(opening.rightMm),
    v0: snap(opening.upMm),
    u1: snap(opening.rightMm + opening.widthMm.value),
    v1: snap(opening.upMm + opening.heightMm.value),
  };
}

/** The bounding rectangle of a penetration on the face. */
export function penetrationRect(p: Penetration): Rect {
  return {
    u0: snap(p.rightMm - p.widthMm / 2),
    v0: snap(p.upMm - p.heightMm / 2),
    u1: snap(p.rightMm + p.widthMm / 2),
    v1: snap(p.upMm + p.heightMm / 2),
  };
}

/** Longest reach of any work beyond an opening or a penetration, mm. */
function farthestReach(detail: Detail): number {
  const reaches = detail.work.flatMap((w) =>
    w.action !== 'apply'
      ? []
      : [
          (w.ontoWallMm?.value ?? 0) + (w.openings[0]?.unit?.flangeMm?.value ?? 0),
          w.pastJambsMm?.value ?? 0,
          w.extendsMm?.value ?? 0,
          w.aboveHeadMm?.value ?? 0,
          w.belowSillMm?.value ?? 0,
          w.endDamsMm?.value ?? 0,
        ],
  );
  return Math.max(0, ...reaches);
}

/**
 * The part of the face that the detail shows: the openings and penetrations with what `face` adds around them. Where the
 * author does not say how much, it is made large enough for all that is drawn.
 */
export function faceBounds(detail: Detail): Rect {
  const penetrations = detail.penetrations.map(penetrationRect);
  const around = bounding(detail.openings.length > 0 ? detail.openings.map(openingRect) : penetrations) ?? {
    u0: 0,
    v0: 0,
    u1: 1,
    v1: 1,
  };
  const { leftMm, rightMm, belowMm, aboveMm, assumed } = detail.face;
  const shown = {
    u0: snap(around.u0 - leftMm),
    v0: snap(around.v0 - belowMm),
    u1: snap(around.u1 + rightMm),
    v1: snap(around.v1 + aboveMm),
  };
  if (!assumed) return shown;
  const margin = farthestReach(detail) + 150;
  const every = bounding([around, ...penetrations]) ?? around;
  return {
    u0: snap(Math.min(shown.u0, every.u0 - margin)),
    v0: snap(Math.min(shown.v0, every.v0 - margin)),
    u1: snap(Math.max(shown.u1, every.u1 + margin)),
    v1: snap(Math.max(shown.v1, every.v1 + margin)),
  };
}

/** Joints between sheathing panels on the face shown, openings cut out. */
export function sheathingJoints(detail: Detail, bounds: Rect): JointSegment[] {
  const holes = [...detail.openings.map(openingRect), ...detail.penetrations.map(penetrationRect)];
  const segments: JointSegment[] = [];
  for (const layer of detail.layers) {
    if (layer.sheet === undefined) continue;
    const { widthMm, heightMm, fromRightMm, fromUpMm } = layer.sheet;
    const lines = (from: number, pitch: number, low: number, high: number): number[] => {
      const found: number[] = [];
      for (let k = Math.ceil((low - from) / pitch); from + k * pitch < high; k++) {
        const at = snap(from + k * pitch);
        if (at > low + 1 && at < high - 1) found.push(at);
      }
      return found;
    };
    const add = (
      orientation: 'vertical' | 'horizontal',
      line: number,
      from: number,
      to: number,
      blocked: [number, number][],
    ): void => {
      let start = from;
      for (const [low, high] of blocked.sort((a, b) => a[0] - b[0])) {
        if (low > start) segments.push({ layer, orientation, line, from: start, to: Math.min(low, to) });
        start = Math.max(start, high);
      }
      if (start < to) segments.push({ layer, orientation, line, from: start, to });
    };
    for (const u of lines(fromRightMm ?? bounds.u0, widthMm.value, bounds.u0, bounds.u1)) {
      const blocked = holes.filter((h) => h.u0 < u && h.u1 > u).map((h): [number, number] => [h.v0, h.v1]);
      add('vertical', u, bounds.v0, bounds.v1, blocked);
    }
    for (const v of lines(fromUpMm ?? bounds.v0, heightMm.value, bounds.v0, bounds.v1)) {
      const blocked = holes.filter((h) => h.v0 < v && h.v1 > v).map((h): [number, number] => [h.u0, h.u1]);
      add('horizontal', v, bounds.u0, bounds.u1, blocked);
    }
  }
  return segments;
}

/** Depth a work reaches into the opening, mm. */
function intoMm(apply: Apply, opening: Opening): number {
  const into = apply.intoOpeningMm;
  if (into === undefined) return 0;
  return into === 'full' ? (opening.depthMm?.value ?? 0) : into.value;
}

function sillShape(apply: Apply, opening: Opening): Shape {
  const o = openingRect(opening);
  const past = apply.pastJambsMm?.value ?? 0;
  const down = apply.ontoWallMm?.value ?? 0;
  const up = apply.endDamsMm?.value ?? 0;
  const depth = intoMm(apply, opening);
  // Upturned ends fold out over the wall face by what the pan runs past the jambs.
  const wings = list(rect(o.u0 - past, o.v0, o.u0, o.v0 + up), rect(o.u1, o.v0, o.u1 + past, o.v0 + up));
  const upturn = list(rect(o.v0, 0, o.v0 + up, depth));
  return {
    face: [...list(rect(o.u0 - past, o.v0 - down, o.u1 + past, o.v0)), ...wings],
    returns: { sill: list(rect(o.u0, 0, o.u1, depth)), 'left jamb': upturn, 'right jamb': upturn },
  };
}

function jambShape(apply: Apply, opening: Opening, sides: readonly ('left jamb' | 'right jamb')[]): Shape {
  const o = openingRect(opening);
  const out = apply.ontoWallMm?.value ?? 0;
  const low = o.v0 - (apply.belowSillMm?.value ?? 0);
  const high = o.v1 + (apply.aboveHeadMm?.value ?? 0);
  const face: Rect[] = [];
  const returns: Returns = {};
  for (const side of sides) {
    face.push(...list(side === 'left jamb' ? rect(o.u0 - out, low, o.u0, high) : rect(o.u1, low, o.u1 + out, high)));
    returns[side] = list(rect(o.v0, 0, o.v1, intoMm(apply, opening)));
  }
  return { face, returns };
}

function headShape(apply: Apply, opening: Opening): Shape {
  const o = openingRect(opening);
  const past = apply.pastJambsMm?.value ?? 0;
  const up = apply.ontoWallMm?.value ?? apply.upstandMm?.value ?? 0;
  const down = apply.downJambsMm?.value ?? 0;
  return {
    face: list(
      rect(o.u0 - past, o.v1, o.u1 + past, o.v1 + up),
      rect(o.u0 - past, o.v1 - down, o.u0, o.v1),
      rect(o.u1, o.v1 - down, o.u1 + past, o.v1),
    ),
    returns: { head: list(rect(o.u0, 0, o.u1, intoMm(apply, opening))) },
  };
}

/** A strip along all four edges of the opening, on the face and into it. */
function edgesShape(apply: Apply, opening: Opening): Shape {
  const o = openingRect(opening);
  const reach = apply.extendsMm?.value ?? apply.ontoWallMm?.value ?? 0;
  const outer = { u0: snap(o.u0 - reach), v0: snap(o.v0 - reach), u1: snap(o.u1 + reach), v1: snap(o.v1 + reach) };
  const across = list(rect(o.u0, 0, o.u1, reach));
  const along = list(rect(o.v0, 0, o.v1, reach));
  return {
    face: subtract(outer, [o]),
    returns: { sill: across, head: across, 'left jamb': along, 'right jamb': along },
  };
}

/** Fillets in the four inside corners of the returns: nothing on the face. */
function insideCornersShape(apply: Apply, opening: Opening): Shape {
  const o = openingRect(opening);
  const leg = apply.extendsMm?.value ?? 0;
  const depth = opening.depthMm?.value ?? 0;
  const across = list(rect(o.u0, 0, o.u0 + leg, depth), rect(o.u1 - leg, 0, o.u1, depth));
  const along = list(rect(o.v0, 0, o.v0 + leg, depth), rect(o.v1 - leg, 0, o.v1, depth));
  return { face: [], returns: { sill: across, head: across, 'left jamb': along, 'right jamb': along } };
}

/** A strip over the flange of the set unit and onto the wall beyond it. */
function flangeShape(apply: Apply, opening: Opening, place: 'flange head' | 'flange jambs' | 'flange sill'): Shape {
  const o = openingRect(opening);
  const flange = opening.unit?.flangeMm?.value ?? 0;
  const out = flange + (apply.ontoWallMm?.value ?? 0);
  // Head and sill strips run on over the jamb strips unless the author says how far.
  const past = apply.pastJambsMm === undefined ? out : flange + apply.pastJambsMm.value;
  const low = o.v0 - (apply.belowSillMm?.value ?? 0);
  const high = o.v1 + flange + (apply.aboveHeadMm?.value ?? 0);
  if (place === 'flange head') return { face: list(rect(o.u0 - past, o.v1, o.u1 + past, o.v1 + out)), returns: {} };
  if (place === 'flange sill') return { face: list(rect(o.u0 - past, o.v0 - out, o.u1 + past, o.v0)), returns: {} };
  return { face: list(rect(o.u0 - out, low, o.u0, high), rect(o.u1, low, o.u1 + out, high)), returns: {} };
}

/** How far the flashing of an opening reaches onto the wall on each side, from the works described. */
function flashingReach(detail: Detail, opening: Opening): Record<Side, number> {
  const reach: Record<Side, number> = { head: 0, sill: 0, 'left jamb': 0, 'right jamb': 0 };
  for (const work of detail.work) {
    if (work.action !== 'apply' || !shedsWater(work.family) || !work.openings.includes(opening)) continue;
    const mm = work.ontoWallMm?.value ?? 0;
    for (const { value: place } of work.places) {
      if (place === 'sill' || place === 'head' || place === 'left jamb' || place === 'right jamb')
        reach[place] = Math.max(reach[place], mm);
      if (place === 'jambs')
        for (const side of ['left jamb', 'right jamb'] as const) reach[side] = Math.max(reach[side], mm);
    }
  }
  return reach;
}

/** The field: everything shown, less the openings and penetrations, less the flashing it does not lap onto. */
function fieldRects(
  detail: Detail,
  apply: Apply,
  bounds: Rect,
  place: 'field' | 'field below sill' | 'field above sill',
): Rect[] {
  const lap = apply.lapsOnto.find((l) => l.onto === 'opening flashing')?.lapMm.value;
  const openings = apply.openings.length > 0 ? apply.openings : detail.openings;
  const holes = detail.openings.map((opening) => {
    const o = openingRect(opening);
    if (lap === undefined) return o;
    const reach = flashingReach(detail, opening);
    const stop = (side: Side): number => Math.max(0, reach[side] - lap);
    return {
      u0: snap(o.u0 - stop('left jamb')),
      v0: snap(o.v0 - stop('sill')),
      u1: snap(o.u1 + stop('right jamb')),
      v1: snap(o.v1 + stop('head')),
    };
  });
  const sill = openings[0] === undefined ? bounds.v0 : openingRect(openings[0]).v0;
  const outer =
    place === 'field'
      ? bounds
      : place === 'field below sill'
        ? { ...bounds, v1: sill }
        : { ...bounds, v0: snap(sill - (apply.courseLapMm?.value ?? 0)) };
  return subtract(outer, [...holes, ...detail.penetrations.map(penetrationRect)]);
}

/** Splits a sheet field into courses of one roll width, each lapping the one below. Bottom course first. */
function courseBands(apply: Apply, bounds: Rect): Rect[] {
  const roll = apply.rollMm?.value ?? apply.product?.rollWidthMm?.value;
  const lap = apply.courseLapMm?.value ?? 0;
  if (roll === undefined || lap >= roll || roll >= bounds.v1 - bounds.v0) return [bounds];
  const bands: Rect[] = [];
  for (let v = bounds.v0; v + lap < bounds.v1 && bands.length < 200; v += roll - lap) {
    bands.push({ ...bounds, v0: snap(v), v1: snap(Math.min(v + roll, bounds.v1)) });
  }
  return bands;
}

function clip(rects: readonly Rect[], band: Rect): Rect[] {
  return list(
    ...rects.map((r) =>
      rect(Math.max(r.u0, band.u0), Math.max(r.v0, band.v0), Math.min(r.u1, band.u1), Math.min(r.v1, band.v1)),
    ),
  );
}

const ROLES: Record<Place, PieceRole> = {
  sill: 'sill flashing',
  jambs: 'jamb flashing',
  'left jamb': 'jamb flashing',
  'right jamb': 'jamb flashing',
  head: 'head flashing',
  'inside corners': 'opening corners',
  'opening edges': 'opening corners',
  'sheathing joints': 'joint treatment',
  'fastener heads': 'joint treatment',
  field: 'field',
  'field below sill': 'field',
  'field above sill': 'field',
  opening: 'other',
  'flange head': 'counterflashing',
  'flange jambs': 'counterflashing',
  'flange sill': 'counterflashing',
  'interior perimeter': 'other',
  'exterior perimeter': 'exterior seal',
  penetration: 'penetration collar',
  'base of wall': 'base flashing',
  'top of wall': 'other',
  'inside corner of building': 'other',
  'outside corner of building': 'other',
  'movement joint': 'other',
  lintel: 'other',
  'shelf angle': 'other',
  'interior face': 'other',
};

const AT_OPENING: ReadonlySet<Place> = new Set<Place>([
  'sill',
  'jambs',
  'left jamb',
  'right jamb',
  'head',
  'inside corners',
  'opening edges',
  'flange head',
  'flange jambs',
  'flange sill',
  'interior perimeter',
  'exterior perimeter',
  'lintel',
]);

/** Shape of one place of a work at one opening. */
function openingShape(place: Place, apply: Apply, opening: Opening): Shape | undefined {
  switch (place) {
    case 'sill':
      return sillShape(apply, opening);
    case 'jambs':
      return jambShape(apply, opening, ['left jamb', 'right jamb']);
    case 'left jamb':
    case 'right jamb':
      return jambShape(apply, opening, [place]);
    case 'head':
      return headShape(apply, opening);
    case 'inside corners':
      return insideCornersShape(apply, opening);
    case 'opening edges':
      return edgesShape(apply, opening);
    case 'flange head':
    case 'flange jambs':
    case 'flange sill':
      return flangeShape(apply, opening, place);
    default:
      return undefined;
  }
}

/** Shape of a place that belongs to the wall as a whole. */
function wallShape(place: Place, apply: Apply, detail: Detail, bounds: Rect, joints: readonly JointSegment[]): Shape {
  if (place === 'sheathing joints') {
    const half = apply.extendsMm?.value ?? 0;
    const off = apply.offCenterMm?.value ?? 0;
    const strips = joints.flatMap((j) =>
      list(
        j.orientation === 'vertical'
          ? rect(j.line - half + off, j.from, j.line + half + off, j.to)
          : rect(j.from, j.line - half + off, j.to, j.line + half + off),
      ),
    );
    const holes = [...detail.openings.map(openingRect), ...detail.penetrations.map(penetrationRect)];
    return { face: strips.flatMap((s) => subtract(s, holes)), returns: {} };
  }
  if (place === 'field' || place === 'field below sill' || place === 'field above sill') {
    return { face: fieldRects(detail, apply, bounds, place), returns: {} };
  }
  if (place === 'base of wall') {
    const height = apply.upstandMm?.value ?? apply.ontoWallMm?.value ?? apply.bearingMm?.value ?? 0;
    return { face: list(rect(bounds.u0, bounds.v0, bounds.u1, Math.min(bounds.v1, bounds.v0 + height))), returns: {} };
  }
  if (place === 'top of wall') {
    const height = apply.bearingMm?.value ?? apply.ontoWallMm?.value ?? 0;
    return { face: list(rect(bounds.u0, Math.max(bounds.v0, bounds.v1 - height), bounds.u1, bounds.v1)), returns: {} };
  }
  return { face: [], returns: {} };
}

function collarShape(apply: Apply, penetration: Penetration): Shape {
  const hole = penetrationRect(penetration);
  const reach = apply.extendsMm?.value ?? 0;
  const outer = {
    u0: snap(hole.u0 - reach),
    v0: snap(hole.v0 - reach),
    u1: snap(hole.u1 + reach),
    v1: snap(hole.v1 + reach),
  };
  return { face: subtract(outer, [hole]), returns: {} };
}

/** The flange of a set unit, a ring around the rough opening. */
function unitFlange(opening: Opening): Rect[] {
  const flange = opening.unit?.mounting?.value === 'flange' ? (opening.unit.flangeMm?.value ?? 0) : 0;
  const o = openingRect(opening);
  return subtract(
    { u0: snap(o.u0 - flange), v0: snap(o.v0 - flange), u1: snap(o.u1 + flange), v1: snap(o.v1 + flange) },
    [o],
  );
}

/** Work ids meant by a `tuckedUnder` entry: a work, or the works that put on a layer. */
function worksMeant(detail: Detail, name: string): string[] {
  return detail.work.filter((w) => w.id === name || (w.action === 'apply' && w.layer?.id === name)).map((w) => w.id);
}

/**
 * A flap of a sheet that was cut and held up hangs again: from here on that part of the sheet lies over what was done
 * in between. Only sheets that something at the head was slipped under have such a flap.
 */
function closeFlap(detail: Detail, work: Close, opening: Opening, pieces: Piece[], bounds: Rect): void {
  const o = openingRect(opening);
  const before = pieces.filter((p) => p.opening === opening && p.work.step < work.step);
  const around =
    bounding(before.filter((p) => p.role === 'head flashing' || p.role === 'jamb flashing').flatMap((p) => p.face)) ??
    o;
  const area = { u0: around.u0, v0: o.v1, u1: around.u1, v1: bounds.v1 };
  const atHead = detail.work.filter(
    (w) => w.action === 'apply' && w.openings.includes(opening) && w.places.some((x) => x.value === 'head'),
  );
  const lifted = new Set(
    atHead.flatMap((w) => (w.action === 'apply' ? w.tuckedUnder.flatMap((t) => worksMeant(detail, t.value)) : [])),
  );
  for (const sheet of before.length === 0 ? [] : [...pieces]) {
    if (sheet.role !== 'field' || !sheet.sheds || sheet.work.step >= work.step || !lifted.has(sheet.work.id)) continue;
    const flap = clip(sheet.face, area);
    if (flap.length === 0) continue;
    // The slit beside the flap lets water behind the sheet unless its ends are sealed.
    const edge = work.endsSealed?.value === true && sheet.edge === 'open' ? 'sealed' : sheet.edge;
    pieces[sheet.index] = { ...sheet, edge, face: sheet.face.flatMap((r) => subtract(r, [area])) };
    pieces.push({ ...sheet, id: `${sheet.id}#flap@${opening.id}`, index: pieces.length, under: [], face: flap });
  }
}

/** All pieces of a detail in order of work. */
export function derivePieces(detail: Detail, bounds: Rect, joints: readonly JointSegment[]): Piece[] {
  const pieces: Piece[] = [];
  const idsOfWork = new Map<string, string[]>();
  const add = (
    work: Work,
    shape: Shape,
    more: Pick<Piece, 'role' | 'edge' | 'sheds'> & Partial<Piece>,
    suffix: string,
  ): void => {
    const id = `${work.id}${suffix}`;
    const under =
      work.action === 'apply'
        ? work.tuckedUnder.flatMap((t) => worksMeant(detail, t.value)).flatMap((w) => idsOfWork.get(w) ?? [])
        : [];
    const piece: Piece = {
      id,
      index: pieces.length,
      work,
      at: work.at,
      under,
      face: shape.face,
      returns: shape.returns,
      ...more,
    };
    pieces.push(piece);
    const ids = idsOfWork.get(work.id) ?? [];
    ids.push(id);
    idsOfWork.set(work.id, ids);
  };
  for (const work of detail.work) {
    if (work.action === 'close') for (const opening of work.openings) closeFlap(detail, work, opening, pieces, bounds);
    if (work.action === 'set' && work.sets === 'unit') {
      for (const opening of work.openings) {
        const edge = work.bedding.head?.value === 'sealed' ? 'sealed' : 'open';
        const face = unitFlange(opening);
        add(
          work,
          { face, returns: {} },
          { role: 'unit flange', edge, sheds: face.length > 0, opening },
          work.openings.length > 1 ? `@${opening.id}` : '',
        );
      }
    }
    if (work.action !== 'apply') continue;
    const common = {
      apply: work,
      edge: edgeOf(work),
      ...(work.product === undefined ? {} : { product: work.product }),
      ...(work.layer === undefined ? {} : { layer: work.layer }),
    };
    for (const { value: place } of work.places) {
      const byPlace = work.places.length > 1 ? `#${place}` : '';
      const role = ROLES[place];
      // Cladding and insulation hung outside the barrier hide it but do not take part in its laps.
      const sheds = shedsWater(work.family) || (work.layer?.controls.some((c) => c.value === 'water') ?? false);
      if (place === 'penetration') {
        for (const penetration of work.penetrations) {
          add(
            work,
            collarShape(work, penetration),
            { ...common, role, sheds, penetration },
            byPlace + (work.penetrations.length > 1 ? `@${penetration.id}` : ''),
          );
        }
        continue;
      }
      if (AT_OPENING.has(place)) {
        for (const opening of work.openings) {
          const shape = openingShape(place, work, opening) ?? { face: [], returns: {} };
          add(
            work,
            sheds ? shape : { face: [], returns: shape.returns },
            { ...common, role, sheds, opening },
            byPlace + (work.openings.length > 1 ? `@${opening.id}` : ''),
          );
        }
        continue;
      }
      const shape = wallShape(place, work, detail, bounds, joints);
      if (!sheds) {
        add(work, { face: [], returns: {} }, { ...common, role, sheds }, byPlace);
      } else if (role === 'field') {
        const bands = courseBands(work, bounds);
        const order = work.courses?.value === 'top down' ? [...bands.keys()].reverse() : [...bands.keys()];
        for (const k of order) {
          const face = bands.length === 1 ? shape.face : clip(shape.face, bands[k] as Rect);
          add(work, { face, returns: {} }, { ...common, role, sheds }, byPlace + (bands.length > 1 ? `#${k + 1}` : ''));
        }
      } else add(work, shape, { ...common, role, sheds }, byPlace);
    }
  }
  return pieces;
}
