/** What the work does at one opening, side by side. */
import { shedsWater } from '../model/families.js';
import type { Apply, Detail, Opening, Place, SetIn, Side } from '../model/types.js';

/** Works that put material at a place of an opening, in order of work. */
export function worksAt(detail: Detail, opening: Opening, ...places: readonly Place[]): Apply[] {
  return detail.work.flatMap((w) =>
    w.action === 'apply' && w.openings.includes(opening) && w.places.some((p) => places.includes(p.value)) ? [w] : [],
  );
}

/** The work that sets the unit of an opening; the last when there are several. */
export function unitSetIn(detail: Detail, opening: Opening): SetIn | undefined {
  return detail.work.findLast(
    (w): w is SetIn => w.action === 'set' && w.sets === 'unit' && w.openings.includes(opening),
  );
}

/** True when a perimeter work runs along a side; a work that names no sides runs along all four. */
export function coversSide(work: Apply, side: Side): boolean {
  return work.sides.length === 0 || work.sides.some((s) => s.value === side);
}

/**
 * The work that forms the sill pan of an opening.
 *
 * Among works at the sill that shed water (primers, rods and the like do not), the last that declares a slope, a
 * back dam or end dams; else the last that reaches into the opening; else the last.
 */
export function panOf(detail: Detail, opening: Opening): Apply | undefined {
  const candidates = worksAt(detail, opening, 'sill').filter((w) => shedsWater(w.family) || w.family === 'other');
  return (
    candidates.findLast((w) => w.slope !== undefined || w.backDamMm !== undefined || w.endDamsMm !== undefined) ??
    candidates.findLast((w) => w.intoOpeningMm !== undefined) ??
    candidates.at(-1)
  );
}
