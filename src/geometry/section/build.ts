/** A section through a detail: layers, strips in their order, unit and seals. Lengths in millimeters. */
import { faceBounds, openingRect, penetrationRect } from '../pieces.js';
import type { Piece, WallFace } from '../types.js';
import type { Apply, Detail, Opening, Side } from '../../model/types.js';
import { layerBands } from './bands.js';
import { faceRuns, lineAt, reachOnFace, returnRuns, toStrips, type CutLine } from './strips.js';
import { cutSeal, cutUnit } from './unit.js';
import { footCut, lintelPiece, veneerFoot, withUpstand } from './veneer.js';
import type { Foundation, Run, Section, SectionPlace } from './types.js';

/** Wall shown beyond the flashing that reaches farthest, and at least. */
const BEYOND_MM = 75;
const LEAST_MM = 180;
/** Shown of the opening, or below the foot of the wall. */
const INTO_OPENING_MM = 130;
/** The same where the detail shows no unit. */
const INTO_EMPTY_MM = 50;

/** The works of the base of the wall that a section there would show. */
export function baseWorks(detail: Detail): Apply[] {
  return detail.work.filter(
    (w): w is Apply => w.action === 'apply' && w.places.some((p) => p.value === 'base of wall'),
  );
}

/** Places a section can be cut at: all around an opening, and the base where work or a foundation is described. */
export function sectionPlaces(detail: Detail): SectionPlace[] {
  const atBase =
    baseWorks(detail).length > 0 ||
    detail.edges.some((e) => e.side === 'bottom' && /foundation|grade|slab|footing/i.test(e.meets.value));
  return [
    ...(detail.openings.length > 0 ? (['head', 'sill', 'jamb'] as const) : []),
    ...(atBase ? (['base'] as const) : []),
  ];
}

/** How far the wall is shown: past the flashing, never past the next hole or the end of the face. */
function reachFor(
  detail: Detail,
  face: WallFace,
  line: CutLine,
  counts: (piece: Piece) => boolean,
  leastMm = 0,
): number {
  const long = { ...line, reachMm: Infinity };
  const farthest = Math.max(leastMm, ...face.pieces.filter(counts).map((p) => reachOnFace(p, long)));
  const b = faceBounds(detail);
  const vertical = line.direction === 'vertical';
  const end = line.sense > 0 ? (vertical ? b.v1 : b.u1) : vertical ? b.v0 : b.u0;
  const holes = [...detail.openings.map(openingRect), ...detail.penetrations.map(penetrationRect)].flatMap((r) => {
    const [c0, c1, p0, p1] = vertical ? [r.u0, r.u1, r.v0, r.v1] : [r.v0, r.v1, r.u0, r.u1];
    const near = (line.sense > 0 ? p0 : p1) - line.zero;
    return line.at > c0 && line.at < c1 && near * line.sense > 0 ? [near * line.sense] : [];
  });
  return Math.min((end - line.zero) * line.sense, ...holes, Math.max(LEAST_MM, farthest + BEYOND_MM));
}

const isLocal = (piece: Piece): boolean => piece.sheds && piece.role !== 'field' && piece.role !== 'joint treatment';

/** The jamb to cut: the one with more flashing, the left one when they are alike. */
function jambSide(face: WallFace, opening: Opening): Side {
  const count = (side: Side): number =>
    face.pieces.filter((p) => p.opening === opening && p.role === 'jamb flashing' && p.returns[side] !== undefined)
      .length;
  return count('right jamb') > count('left jamb') ? 'right jamb' : 'left jamb';
}

function openingSection(detail: Detail, face: WallFace, opening: Opening, place: 'head' | 'sill' | 'jamb'): Section {
  const side: Side = place === 'jamb' ? jambSide(face, opening) : place;
  const line = lineAt(opening, side, 0);
  const isHere = (p: Piece): boolean => isLocal(p) && p.opening === opening;
  const foot = place === 'head' ? footCut(detail, opening) : undefined;
  const overLintel = lintelPiece(face, foot);
  // The flashing on the lintel leaves the wall above what flashes the opening; how high is not described.
  const heelMm = Math.max(0, ...face.pieces.filter(isHere).map((p) => reachOnFace(p, { ...line, reachMm: Infinity })));
  const upstandMm = overLintel?.apply?.upstandMm?.value ?? 0;
  const reachMm = reachFor(detail, face, line, isHere, upstandMm === 0 ? 0 : heelMm + upstandMm);
  const cut = { ...line, reachMm };
  const bands = layerBands(detail, face);
  const cutStrips = toStrips(face, faceRuns(face, bands, cut), returnRuns(face, opening, side, cut));
  const strips = overLintel === undefined ? cutStrips : withUpstand(cutStrips, overLintel, heelMm, reachMm);
  const veneer = veneerFoot(detail, bands, foot);
  const unit = cutUnit(detail, opening, side);
  const interiorSeal = cutSeal(detail, opening, 'interior perimeter', side, strips);
  const exteriorSeal = cutSeal(detail, opening, 'exterior perimeter', side, strips);
  const half = (place === 'jamb' ? opening.widthMm.value : opening.heightMm.value) / 2;
  const into = unit === undefined ? INTO_EMPTY_MM : INTO_OPENING_MM;
  const seen = Math.max(into, ...strips.map((s) => Math.max(s.endDamMm ?? 0, s.backDamMm ?? 0) + 25));
  return {
    place,
    opening,
    side,
    cutAtMm: line.at,
    fromMm: -Math.min(half, seen),
    toMm: reachMm,
    bands,
    strips,
    ...(unit === undefined ? {} : { unit }),
    ...(interiorSeal === undefined ? {} : { interiorSeal }),
    ...(exteriorSeal === undefined ? {} : { exteriorSeal }),
    ...(veneer === undefined ? {} : { veneerFoot: veneer }),
  };
}

/** A place on the foot of the wall that no opening or penetration stands over. */
function clearOfHoles(detail: Detail, low: number, high: number): number {
  const holes = [...detail.openings.map(openingRect), ...detail.penetrations.map(penetrationRect)];
  const middle = (low + high) / 2;
  const candidates = [middle, ...holes.flatMap((h) => [h.u0 - BEYOND_MM, h.u1 + BEYOND_MM])];
  const clear = (u: number): boolean => u > low && u < high && holes.every((h) => u < h.u0 || u > h.u1);
  return candidates.find(clear) ?? middle;
}

function baseSection(detail: Detail, face: WallFace): Section {
  const b = faceBounds(detail);
  const works = baseWorks(detail);
  const line: CutLine = {
    direction: 'vertical',
    at: clearOfHoles(detail, b.u0, b.u1),
    zero: b.v0,
    sense: 1,
    reachMm: 0,
  };
  const reachMm = reachFor(detail, face, line, (p) => isLocal(p) && p.role === 'base flashing');
  const bands = layerBands(detail, face);
  const onFace = faceRuns(face, bands, { ...line, reachMm });
  const below = new Map<Piece, Run[]>();
  for (const piece of face.pieces) {
    const onto = piece.role === 'base flashing' ? piece.apply?.ontoFoundationMm?.value : undefined;
    if (onto === undefined) continue;
    const level = [...below.values()].length;
    below.set(piece, [{ on: 'face', fromMm: -onto, toMm: 0, level, baseMm: 0 }]);
  }
  const least = (values: (number | undefined)[]): number | undefined => {
    const known = values.filter((v) => v !== undefined);
    return known.length === 0 ? undefined : Math.min(...known);
  };
  const grade = least(works.map((w) => w.aboveGradeMm?.value));
  const exposed = least(works.map((w) => w.exposedFoundationMm?.value));
  const foundation: Foundation = {
    ...(grade === undefined ? {} : { gradeMm: -grade }),
    // A flashing that runs out through the wall carries the cladding, which ends on it.
    claddingFootMm:
      grade !== undefined && exposed !== undefined && works.every((w) => w.projectsMm === undefined)
        ? Math.min(0, exposed - grade)
        : 0,
  };
  const veneer = veneerFoot(detail, bands, footCut(detail, undefined));
  const lowest = Math.min(0, -(grade ?? 0), ...[...below.values()].flat().map((r) => r.fromMm));
  return {
    place: 'base',
    cutAtMm: line.at,
    fromMm: lowest - INTO_OPENING_MM / 2,
    toMm: reachMm,
    bands,
    // What runs onto the foundation is one stretch with what rises on the wall where both have the same level.
    strips: toStrips(face, onFace, below),
    foundation,
    ...(veneer === undefined ? {} : { veneerFoot: veneer }),
  };
}

/**
 * Cuts a detail.
 *
 * @param opening the opening that is cut; not used at the base of the wall
 * @returns pieces in their true order with their returns, layers with their thickness
 * @throws RangeError when a place at an opening is asked for without one
 */
export function buildSection(
  detail: Detail,
  face: WallFace,
  opening: Opening | undefined,
  place: SectionPlace,
): Section {
  if (place === 'base') return baseSection(detail, face);
  if (opening === undefined)
    throw new RangeError(`A section at the ${place} needs an opening; ${detail.id} was cut without one.`);
  return openingSection(detail, face, opening, place);
}
