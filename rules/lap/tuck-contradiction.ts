import { defineRule } from '../../src/engine/rule.js';
import type { Outcome, Source } from '../../src/engine/result.js';
import { faceOnSide, FLASHING_ROLE, isApplied } from '../../src/geometry/around-opening.js';
import { leastSpan, sideOverlap } from '../../src/geometry/overlap.js';
import { openingRect } from '../../src/geometry/pieces.js';
import type { Piece, WallFace } from '../../src/geometry/types.js';
import { isFluid } from '../../src/model/families.js';
import { worksNamed } from '../../src/model/order.js';
import { SIDES, type Apply, type Detail } from '../../src/model/types.js';
import { formatQuantity } from '../../src/quantity/format.js';

const COMPUTED: Source = { basis: 'physics', citation: 'the sizes stated in the detail', provenance: 'computed' };
const onFace = (pieces: readonly Piece[]): Piece[] => pieces.filter((p) => p.sheds && p.face.length > 0);

function piecesNamed(detail: Detail, face: WallFace, name: string): Piece[] {
  return worksNamed(detail, name).flatMap((w) => face.piecesOf(w.id));
}

/** Greatest overlap, in its smaller dimension, of any pair from the two sets, mm. */
function overlapMm(a: readonly Piece[], b: readonly Piece[]): number {
  return Math.max(
    0,
    ...a.flatMap((x) =>
      b.map((y) => Math.min(leastSpan(x.face, y.face, 'height'), leastSpan(x.face, y.face, 'width'))),
    ),
  );
}

/** Flashing of the openings a work belongs to. */
function flashingPieces(face: WallFace, work: Apply): Piece[] {
  const roles = new Set(SIDES.map((side) => FLASHING_ROLE[side]));
  return face.pieces.filter(
    (p) =>
      p.work !== work &&
      roles.has(p.role) &&
      (work.openings.length === 0 || (p.opening !== undefined && work.openings.includes(p.opening))),
  );
}

/** One of the others, when wherever they overlap it is not the own piece that lies outside. */
function liesUnder(face: WallFace, own: readonly Piece[], others: readonly Piece[]): Piece | undefined {
  const laps = own.flatMap((p) => others.flatMap((o) => face.lapBetween(p, o) ?? []));
  return laps.some((l) => own.includes(l.over)) ? undefined : laps[0]?.over;
}

/** Least overlap with the flashing of the openings, side by side; `undefined` when no side has flashing on the face. */
function ontoFlashing(detail: Detail, face: WallFace, own: readonly Piece[], apply: Apply): number | undefined {
  // The lower part of a barrier meets the sill only, its upper part all but the sill.
  const whole = apply.places.some((p) => p.value === 'field');
  const sides = SIDES.filter(
    (side) => whole || apply.places.some((p) => (p.value === 'field below sill') === (side === 'sill')),
  );
  let least: number | undefined;
  for (const opening of apply.openings.length > 0 ? apply.openings : detail.openings) {
    for (const side of sides) {
      const flashing = face.pieces
        .filter(isApplied)
        .filter((p) => p.opening === opening && p.work !== apply && p.sheds && p.role === FLASHING_ROLE[side])
        .flatMap((p) => faceOnSide(p, opening, side));
      const lap =
        flashing.length === 0
          ? undefined
          : sideOverlap(
              openingRect(opening),
              side,
              face.bounds,
              flashing,
              own.flatMap((p) => p.face),
            );
      if (lap !== undefined) least = Math.min(least ?? Infinity, lap);
    }
  }
  return least;
}

/** What is declared about laps can be so by the sizes stated. */
export default defineRule({
  id: 'lap/tuck-contradiction',
  title: 'Declared laps against the order of work',
  summary:
    'A piece that is said to be tucked under another, or to lap onto it, reaches it by the sizes stated, and nothing is tucked under a coat.',
  level: 'error',
  reads: ['work.place', 'work.tuckedUnder', 'work.lapsOnto'],
  sources: [COMPUTED],
  *review({ detail, face }) {
    for (const work of detail.work) {
      if (work.action !== 'apply') continue;
      const own = onFace(face.piecesOf(work.id));
      // Places without a shape on the face (a shelf angle, a movement joint) cannot be contradicted.
      if (own.length === 0) continue;
      for (const under of work.tuckedUnder) {
        const others = onFace(piecesNamed(detail, face, under.value));
        if (others.length === 0) continue;
        const subject = `${work.id} under ${under.value}`;
        const coat = others.filter(isApplied).find((o) => isFluid(o.apply.family));
        if (coat !== undefined) {
          yield {
            kind: 'fail',
            at: under.at,
            subject,
            sources: this.sources,
            required: 'something that can be lifted',
            provided: `a bonded coat, "${coat.work.id}"`,
            related: [{ message: `"${coat.work.id}" is fluid-applied`, at: coat.at }],
            message: `"${work.id}" is said to be tucked under "${under.value}", which is fluid-applied and bonded, so nothing can be slipped under it.`,
            correct: `Do "${work.id}" before "${coat.work.id}", or take "tuckedUnder" out.`,
          };
          continue;
        }
        const touching = own.some((p) => others.some((o) => face.lapBetween(p, o) !== undefined));
        yield touching
          ? {
              kind: 'pass',
              subject,
              at: under.at,
              sources: this.sources,
              message: `"${work.id}" is tucked under "${under.value}" and reaches it.`,
            }
          : none(
              under.at,
              subject,
              `"${work.id}" is said to be tucked under "${under.value}", but by their sizes the two do not meet.`,
              `overlap of "${work.id}" and "${under.value}"`,
              others,
              `Correct the sizes so that "${work.id}" reaches under "${under.value}", or take "tuckedUnder" out.`,
            );
      }
      for (const { onto, lapMm: stated } of work.lapsOnto) {
        const named = onto === 'opening flashing' ? flashingPieces(face, work) : piecesNamed(detail, face, onto);
        if (onto !== 'opening flashing' && worksNamed(detail, onto).length === 0) {
          yield {
            ...none(
              stated.at,
              `${work.id} onto ${onto}`,
              `"${work.id}" is said to lap ${stated.text} onto "${onto}", but no work has that id and none puts on a layer of that id.`,
              `lap of ${stated.text}`,
              [],
              `Name a work or a layer, or "opening flashing", under "lapsOnto".`,
            ),
            provided: `no "${onto}"`,
          };
          continue;
        }
        const under = liesUnder(face, own, onFace(named));
        if (under !== undefined) {
          yield {
            ...none(
              stated.at,
              `${work.id} onto ${onto}`,
              `"${work.id}" is said to lap onto ${onto === 'opening flashing' ? 'the opening flashing' : `"${onto}"`}, but by the order of work "${under.id}" lies over "${work.id}".`,
              `"${work.id}" outside`,
              [under],
              `Do "${under.work.id}" before "${work.id}", or state the lap on "${under.work.id}".`,
            ),
            provided: `"${under.id}" outside`,
          };
          continue;
        }
        const others = onto === 'opening flashing' ? [] : onFace(named);
        const lapMm =
          onto === 'opening flashing'
            ? ontoFlashing(detail, face, own, work)
            : others.length === 0
              ? undefined
              : overlapMm(own, others);
        if (lapMm === undefined) continue;
        const subject = `${work.id} onto ${onto}`;
        const found = formatQuantity(lapMm, 'length', stated);
        if (lapMm >= stated.value - 0.1) {
          yield {
            kind: 'pass',
            subject,
            at: stated.at,
            sources: this.sources,
            required: `at least ${stated.text}`,
            provided: found,
            message: `"${work.id}" laps onto "${onto}" by ${found}, as stated (${stated.text}).`,
          };
        } else {
          yield {
            ...none(
              stated.at,
              subject,
              lapMm === 0
                ? `"${work.id}" is said to lap ${stated.text} onto "${onto}", but by their sizes it does not reach it.`
                : `"${work.id}" is said to lap ${stated.text} onto "${onto}", but by their sizes it laps only ${found}.`,
              `lap of ${stated.text}`,
              others,
              `Correct the sizes, or state the lap there is.`,
            ),
            provided: found,
          };
        }
      }
    }
  },
});

function none(
  at: Outcome['at'],
  subject: string,
  message: string,
  required: string,
  others: readonly Piece[],
  correct: string,
): Outcome {
  return {
    kind: 'fail',
    at,
    subject,
    message,
    required,
    provided: 'no overlap',
    correct,
    sources: [COMPUTED],
    related: others.slice(0, 1).map((o) => ({ message: `"${o.id}"`, at: o.at })),
  };
}
