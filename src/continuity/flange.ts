/** How the line of a control reaches the mounting flange of a unit, beside what turns into the opening. */
import type { Piece } from '../geometry/types.js';
import { edgeOf } from '../model/families.js';
import type { Apply, Control, Detail, Opening, Side } from '../model/types.js';
import { unitSetIn } from '../water/at-opening.js';

type Bedding = 'sealed' | 'open' | 'interrupted';

/** How the flange is bedded along a side; `undefined` when no work sets the unit or it does not say. */
function beddingAt(detail: Detail, opening: Opening, side: Side): Bedding | undefined {
  const bedding = unitSetIn(detail, opening)?.bedding;
  if (side === 'head' || side === 'sill') return bedding?.[side]?.value;
  return bedding?.jambs?.value;
}

/**
 * Tells whether a piece that overlaps the flange is joined to it.
 *
 * Water is shed by any overlap. Air is stopped where a piece over the flange is bonded to it or sealed at its edge,
 * or, where the piece lies under it, by a bead of sealant that runs along the whole side (common practice, no
 * source).
 */
export function joinsFlange(
  detail: Detail,
  control: Control,
  opening: Opening,
  side: Side,
): (flange: Piece, piece: Piece) => boolean {
  if (control === 'water') return () => true;
  const isSealed = beddingAt(detail, opening, side) === 'sealed';
  return (flange, piece) =>
    piece.index > flange.index && !piece.under.includes(flange.id) ? piece.edge !== 'open' : isSealed;
}

function comesAfterUnit(detail: Detail, opening: Opening, work: Apply): boolean {
  const set = unitSetIn(detail, opening);
  return set !== undefined && work.step > set.step;
}

/** True for work done after a unit with a flange is set: it lies over the flange and can no longer turn in. */
export function coversFlange(detail: Detail, opening: Opening, work: Apply): boolean {
  return opening.unit?.mounting?.value === 'flange' && comesAfterUnit(detail, opening, work);
}

/** True for a sheet, strip or metal that neither its work nor its product tells to be sealed, bonded or left open. */
function isEdgeUnsaid(work: Apply): boolean {
  return edgeOf(work) === 'open' && work.edge === undefined && work.product?.edge === undefined;
}

/**
 * What is unsaid of the flange where the line does not turn into the opening; empty when the flange cannot carry it.
 *
 * @param works the flashing of that side
 */
export function unsaidFlange(
  detail: Detail,
  control: Control,
  opening: Opening,
  side: Side,
  works: readonly Apply[],
): string[] {
  const mounting = opening.unit?.mounting?.value;
  const after = works.filter((w) => comesAfterUnit(detail, opening, w));
  const isAfter = after.length > 0;
  // Water may be led over any flange; air only over one that something was adhered to or bedded on.
  if (mounting === undefined) return control === 'water' || isAfter ? ['openings.unit.mounting'] : [];
  if (mounting !== 'flange') return [];
  const bedding = beddingAt(detail, opening, side);
  const mayJoin = control === 'water' || isAfter || bedding === undefined || bedding === 'sealed';
  const missing = mayJoin && opening.unit?.flangeMm === undefined ? ['openings.unit.flange'] : [];
  if (control === 'water') return missing;
  if (after.some(isEdgeUnsaid)) missing.push('work.edge');
  if (bedding === undefined && unitSetIn(detail, opening) !== undefined)
    missing.push(`work.bedding.${side === 'head' || side === 'sill' ? side : 'jambs'}`);
  return missing;
}
