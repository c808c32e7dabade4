/**
 * The way of water from the sill pan to daylight: a search over the spaces it passes, each passage clear,
 * blocked, or not told by the documents.
 */
import { coversSide, unitSetIn, worksAt } from './at-opening.js';
import { edgeOf, isSpace, shedsWater } from '../model/families.js';
import { fieldOfWork } from '../model/named-field.js';
import { openingRect } from '../geometry/pieces.js';
import type { WallFace } from '../geometry/types.js';
import type { Apply, Detail, Layer, Opening } from '../model/types.js';
import type { Locus } from '../reading/types.js';

export type Space = 'pan' | 'front of pan' | 'outer leg' | 'drained space' | 'daylight';

/** Something said about a passage, and where. */
export interface Note {
  readonly message: string;
  readonly at: Locus;
}

/** A passage from one space to the next. Clear when nothing blocks it and nothing is left unsaid. */
export interface Passage {
  readonly from: Space;
  readonly to: Space;
  /** What the water does there, a full sentence. */
  readonly step: Note;
  readonly blockers: readonly Note[];
  /** Fields the documents leave out, with the entry that lacks each. */
  readonly unknown: readonly Note[];
  /** What slows the water down there and does not stop it. */
  readonly slow?: readonly Note[];
}

/** The passages from the pan to daylight, or to another space, by the fewest steps, using only those that `usable` admits. */
export function findWay(
  passages: readonly Passage[],
  usable: (passage: Passage) => boolean,
  to: Space = 'daylight',
): Passage[] | undefined {
  const ways = new Map<Space, Passage[]>([['pan', []]]);
  for (const [space, way] of ways) {
    if (space === to) return way;
    // A map is walked in the order of its insertions, those made on the way included: a breadth-first search.
    for (const p of passages) if (p.from === space && usable(p) && !ways.has(p.to)) ways.set(p.to, [...way, p]);
  }
  return undefined;
}

/** Passages that block, among those that begin where water can get to. */
export function blockedPassages(passages: readonly Passage[]): Passage[] {
  const reached = new Set<Space>(['pan']);
  for (const space of reached)
    for (const p of passages) if (p.from === space && p.blockers.length === 0) reached.add(p.to);
  return passages.filter((p) => p.blockers.length > 0 && reached.has(p.from));
}

/** Works at the sill flange that close it: bonded or sealed, without weeps. Sealants close by their nature. */
export function closesSillFlange(work: Apply): boolean {
  if ((work.weeps?.count?.value ?? 0) > 0) return false;
  return (
    work.family === 'sealant' || work.family === 'spray foam' || (shedsWater(work.family) && edgeOf(work) !== 'open')
  );
}

/** Works that fill the drained space under the unit at the sill. */
export function fillsUnderUnit(work: Apply): boolean {
  return (
    coversSide(work, 'sill') &&
    (work.fillsCavity?.value === true || work.sealPosition?.value === 'outboard of back dam')
  );
}

/** Position of the layer that water runs down on, innermost 0; -1 when none of the layers is one. */
function barrierIndex(detail: Detail): number {
  const applied = detail.work.flatMap((w) =>
    w.action === 'apply' && w.layer !== undefined && w.places.some((p) => p.value.startsWith('field')) ? [w.layer] : [],
  );
  const named =
    applied.find((l) => shedsWater(l.family)) ??
    detail.layers.find((l) => l.controls.some((c) => c.value === 'water')) ??
    detail.layers.find((l) => shedsWater(l.family));
  return named?.index ?? -1;
}

function underUnit(detail: Detail, opening: Opening, pan: Apply): Passage {
  const set = unitSetIn(detail, opening);
  const shims = set?.shims?.continuous;
  const filling = worksAt(detail, opening, 'interior perimeter', 'exterior perimeter').filter(fillsUnderUnit);
  return {
    from: 'pan',
    to: 'front of pan',
    unknown: [],
    step: { message: `Water on the pan "${pan.id}" runs outward under the unit.`, at: pan.at },
    blockers: [
      ...(shims?.value === true ? [{ message: 'shims that run across the way of the water', at: shims.at }] : []),
      ...filling.map((w) => ({
        message: `"${w.id}", which fills the space under the unit`,
        at: w.fillsCavity?.value === true ? w.fillsCavity.at : (w.sealPosition?.at ?? w.at),
      })),
    ],
  };
}

/** What closes the line between pan and unit at the outer face: the bed under the sill and what lies over its flange. */
function atFlange(detail: Detail, opening: Opening): Pick<Passage, 'blockers' | 'unknown'> {
  const set = unitSetIn(detail, opening);
  const bed = set?.bedding.sill;
  return {
    blockers: [
      ...(bed?.value === 'sealed' ? [{ message: 'the sealed bedding at the sill', at: bed.at }] : []),
      ...worksAt(detail, opening, 'flange sill')
        .filter(closesSillFlange)
        .map((w) => ({
          message: `"${w.id}" over the sill flange`,
          at: w.places.find((p) => p.value === 'flange sill')?.at ?? w.at,
        })),
    ],
    unknown:
      set === undefined
        ? [{ message: 'work.set', at: opening.at }]
        : bed === undefined
          ? [{ message: 'work.bedding.sill', at: set.beddingAt ?? set.at }]
          : [],
  };
}

/** From the foot of the pan's outer leg onto the barrier below. */
function offTheLeg(face: WallFace, opening: Opening, pan: Apply): Pick<Passage, 'blockers' | 'unknown'> {
  const leg = pan.ontoWallMm;
  if (leg === undefined) return { blockers: [], unknown: [{ message: 'work.ontoWall', at: pan.at }] };
  if (leg.value <= 0)
    return {
      blockers: [{ message: `the pan "${pan.id}", which has no leg down the face of the wall`, at: leg.at }],
      unknown: [],
    };
  if (!face.pieces.some((p) => p.role === 'field')) return { blockers: [], unknown: [] };
  const o = openingRect(opening);
  const middle = (o.u0 + o.u1) / 2;
  const stack = face.stackAt(middle, o.v0 - leg.value / 2);
  const own = stack.findIndex((p) => p.work.id === pan.id);
  const outside = stack.slice(own + 1).find((p) => p.role === 'field' && p.edge === 'open');
  if (own >= 0 && outside !== undefined) {
    return {
      blockers: [
        {
          message: `"${outside.id}", whose open upper edge lies over the leg of the pan: water goes behind it`,
          at: outside.at,
        },
      ],
      unknown: [],
    };
  }
  const below = o.v0 - leg.value - 1;
  if (below > face.bounds.v0 && face.stackAt(middle, below).length === 0) {
    return { blockers: [{ message: `the bare wall below the leg of the pan "${pan.id}"`, at: leg.at }], unknown: [] };
  }
  return { blockers: [], unknown: [] };
}

/** Boards and shingles that lap: water runs off between and behind them, if slowly. */
const LAPPED = /\b(siding|clapboards?|shingles?|shakes?)\b/i;

function outOfTheWall(detail: Detail): Pick<Passage, 'blockers' | 'unknown' | 'slow'> & { readonly at: Locus } {
  const barrier = barrierIndex(detail);
  if (barrier < 0)
    return { blockers: [], unknown: [{ message: 'wall (which layer controls water)', at: detail.at }], at: detail.at };
  const outside: Layer[] = detail.layers.slice(barrier + 1);
  const drained = outside.find((l) => l.drained?.value === true);
  if (drained !== undefined) return { blockers: [], unknown: [], at: drained.at };
  const untold = outside.find((l) => l.drained === undefined && isSpace(l.family));
  if (untold !== undefined)
    return { blockers: [], unknown: [{ message: 'wall.drained', at: untold.at }], at: untold.at };
  const last = outside.at(-1);
  const at = last?.at ?? detail.at;
  if (last === undefined)
    return { blockers: [], unknown: [{ message: 'wall (the layers outside the barrier)', at }], at };
  if (outside.every((l) => LAPPED.test(l.material?.value ?? '')))
    return { blockers: [], unknown: [], slow: [{ message: `"${last.id}", which lies on the barrier`, at }], at };
  return { blockers: [{ message: 'the layers outside the barrier, none of which is drained', at }], unknown: [], at };
}

/** Every passage that leads from the pan toward daylight. */
export function passagesFrom(detail: Detail, face: WallFace, opening: Opening, pan: Apply): Passage[] {
  const flange = atFlange(detail, opening);
  const out = outOfTheWall(detail);
  const set = unitSetIn(detail, opening);
  const isRecessed = opening.unit?.mounting?.value === 'recessed';
  const seals = worksAt(detail, opening, 'exterior perimeter').filter((w) => coversSide(w, 'sill'));
  const closed = (w: Apply): { message: string; at: Locus } => ({
    message: `the exterior seal "${w.id}", which leaves no weeps at the sill`,
    at: w.at,
  });
  const passages: Passage[] = [
    underUnit(detail, opening, pan),
    {
      from: 'front of pan',
      to: 'outer leg',
      step: { message: 'It leaves under the sill of the unit.', at: set?.bedding.sill?.at ?? set?.at ?? opening.at },
      // A unit set back has its seal on the pan, before the leg; that of a flanged one meets the cladding outside of it.
      blockers: [
        ...flange.blockers,
        ...(isRecessed ? seals.filter((w) => w.weeps?.count?.value === 0).map(closed) : []),
      ],
      unknown: [
        ...flange.unknown,
        ...(isRecessed
          ? seals
              .filter((w) => w.weeps?.count === undefined)
              .map((w) => ({ message: fieldOfWork(w, 'weeps.count'), at: w.at }))
          : []),
      ],
    },
    {
      from: 'outer leg',
      to: 'drained space',
      step: { message: 'It runs down the leg of the pan onto the barrier below.', at: pan.ontoWallMm?.at ?? pan.at },
      ...offTheLeg(face, opening, pan),
    },
    {
      from: 'drained space',
      to: 'daylight',
      step: { message: 'It runs down the drained space and out at its foot.', at: out.at },
      blockers: out.blockers,
      unknown: out.unknown,
      ...(out.slow === undefined ? {} : { slow: out.slow }),
    },
  ];
  // Straight out over the front of the pan: a unit set back in its opening, or a pan whose edge stands clear.
  if (isRecessed || (pan.projectsMm?.value ?? 0) > 0) {
    passages.push({
      from: 'front of pan',
      to: 'daylight',
      step: { message: 'It drips from the front of the pan.', at: pan.projectsMm?.at ?? pan.at },
      blockers: [...flange.blockers, ...seals.filter((w) => (w.weeps?.count?.value ?? 0) === 0).map(closed)],
      unknown: flange.unknown,
    });
  }
  return passages;
}
