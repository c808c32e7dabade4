/**
 * What the checks of laps and reaches share: trade habits as limits to offer, and what counts as a loose sheet.
 */
import type { Piece } from '../geometry/types.js';
import { isFluid } from '../model/families.js';
import type { Family, Layer } from '../model/types.js';
import { formatQuantity } from '../quantity/format.js';

/** Source of a figure that the trade uses and no document was found for. */
export const HABIT = {
  basis: 'practice',
  citation: 'common practice',
  provenance: 'common practice, no source',
} as const;

/**
 * A length of the trade with its metric twin: 2 in is met by 50 mm, 3 in by 75 mm.
 *
 * @param valueMm mm, converted exactly from inches
 * @returns mm at 25 mm to the inch
 */
export function nominalMm(valueMm: number): number {
  return (valueMm / 25.4) * 25;
}

/**
 * A length from trade habit, as a limit to offer; nominal, because a habit is no closer than that.
 *
 * @param valueMm mm; 0 switches the habit off
 */
export function habit(
  valueMm: number,
): { readonly value: number; readonly text: string; readonly source: typeof HABIT }[] {
  return valueMm > 0 ? [{ value: nominalMm(valueMm), text: inches(valueMm), source: HABIT }] : [];
}

/** A computed length with no author to take the unit from: US inches. */
export function inches(valueMm: number): string {
  return formatQuantity(valueMm, 'length', { system: 'US' });
}

/** True for sheets hung by fasteners: their laps hold water off by lapping alone. */
export function isLooseSheet(family: Family): boolean {
  return family === 'mechanically fastened sheet' || family === 'building paper' || family === 'flexible flashing';
}

/** True for flashing that lines the rough opening: membranes that can turn into it. */
export function linesOpening(family: Family): boolean {
  return isFluid(family) || family === 'self-adhered flashing' || family === 'self-adhered membrane';
}

/** True where a wall has masonry, as veneer or as its body, by the family or the name of a layer. */
export function hasMasonry(layers: readonly Layer[]): boolean {
  return layers.some((l) => l.family === 'masonry' || /\b(brick|masonry|block|stone)\b/i.test(l.material?.value ?? ''));
}

/** True for a coat that bonds to what it laps over: it has no loose edge, in whichever order the coats were done. */
export function isBondedCoat(piece: Piece): boolean {
  return piece.apply !== undefined && isFluid(piece.apply.family) && piece.edge === 'bonded';
}

/** What the order of two bonded coats means for water: the same words wherever it is told. */
export const BONDED_ORDER =
  'The coats bond where they lap, so no way for water follows from the order as long as the bond holds; the order is not the one of the guide, and the product data have to allow it.';
