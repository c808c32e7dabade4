/** Which works of a detail put on a film, and what is known of it. */
import { isFluid } from '../model/families.js';
import type { Subject } from '../model/measures.js';
import type { Apply, Detail, Measured, Place } from '../model/types.js';

/** Works whose product goes on wet, or that state a film. */
export function filmWorks(detail: Detail): Apply[] {
  return detail.work.filter(
    (w): w is Apply =>
      w.action === 'apply' && (isFluid(w.family) || w.wetFilmUm !== undefined || w.dryFilmUm !== undefined),
  );
}

const SUBJECTS: Partial<Record<Place, Subject>> = {
  sill: 'sill pan',
  jambs: 'jamb flashing',
  'left jamb': 'jamb flashing',
  'right jamb': 'jamb flashing',
  head: 'head flashing',
  field: 'field membrane',
  'field below sill': 'field membrane',
  'field above sill': 'field membrane',
  'sheathing joints': 'joint treatment',
  'fastener heads': 'joint treatment',
  'inside corners': 'corner treatment',
  'opening edges': 'corner treatment',
  'flange head': 'counterflashing',
  'flange jambs': 'counterflashing',
  'flange sill': 'counterflashing',
  penetration: 'penetration',
  'base of wall': 'base flashing',
};

/** What a requirement calls the work, by its first place. */
export function filmSubject(work: Apply): Subject | undefined {
  const first = work.places[0];
  return first === undefined ? undefined : SUBJECTS[first.value];
}

/** The two ends of a stated film, um; equal when it is one value. */
export function filmEnds(film: Measured): { readonly leastUm: number; readonly mostUm: number } {
  return { leastUm: film.value, mostUm: film.bound === 'between' ? (film.upper ?? film.value) : film.value };
}

/** A share of volume solids or thinner that arithmetic can use: solids above 0 and up to 1, thinner from 0 up. */
export function solidsOf(work: Apply): { readonly solids: Measured; readonly thinner: number } | undefined {
  const solids = work.product?.volumeSolids;
  const thinner = work.thinner?.value ?? 0;
  return solids === undefined || !(solids.value > 0 && solids.value <= 1) || thinner < 0
    ? undefined
    : { solids, thinner };
}
