/** Whether a requirement applies to a detail: its condition held against the project and the wall. */
import type { LimitQuery } from './limits.js';
import { zoneTextOfProject } from '../climate/project-place.js';
import type { Condition, Detail, Layer } from '../model/types.js';
import type { Locus } from '../reading/types.js';

/** A field without which nobody can tell. */
export interface Unknown {
  /** As an author names it: `project.height`. */
  readonly missing: string;
  /** Where it belongs. */
  readonly at: Locus;
  /** Half a sentence: `the project states no height`. */
  readonly because: string;
}

/** True or false, or what is missing to tell. */
export type Applies = boolean | Unknown;

type Part = (condition: Condition, detail: Detail, query: Pick<LimitQuery, 'product'>) => Applies;

/** A project that a detail does not name is missing where the detail would name it. */
function ofProject(detail: Detail, field: string, because: string): Unknown {
  return { missing: `project.${field}`, at: detail.project?.at ?? detail.at, because };
}

/** `5A` lies in `5A` and in `5`; of a project in `5` nobody can tell whether it lies in `5A`. */
const inZones: Part = ({ zones }, detail) => {
  if (zones === undefined) return true;
  const zone = zoneTextOfProject(detail.project);
  if (zone === undefined) return ofProject(detail, 'place.zone', 'the climate zone of the project is not known');
  if (zones.some((z) => z === zone || z === zone.charAt(0))) return true;
  return zone.length === 1 && zones.some((z) => z.startsWith(zone))
    ? ofProject(detail, 'place.zone', `the project states zone ${zone} without its moisture regime`)
    : false;
};

const byHeight: Part = ({ heightAboveMm: above, heightUpToMm: upTo }, detail) => {
  if (above === undefined && upTo === undefined) return true;
  const height = detail.project?.heightMm?.value;
  if (height === undefined) return ofProject(detail, 'height', 'the height of the building is not stated');
  return (above === undefined || height > above.value) && (upTo === undefined || height <= upTo.value);
};

/** Masonry and concrete carry themselves; a batt has framing around it, stated or not. */
const byFraming: Part = ({ framing }, { layers, at }) => {
  if (framing === undefined) return true;
  const stated = layers.flatMap((l) => l.framing?.material ?? []);
  if (stated.length > 0) return stated.includes(framing);
  const framed = layers.find((l) => l.family === 'framing' || l.family === 'batt insulation');
  const bears = (l: Layer): boolean => l.family === 'concrete' || l.family === 'masonry';
  if (framed === undefined && layers.some(bears)) return false;
  return {
    missing: 'wall.framing.material',
    at: framed?.at ?? at,
    because: 'no layer of the wall states its framing',
  };
};

const byMounting: Part = ({ mounting }, detail) => {
  if (mounting === undefined) return true;
  for (const opening of detail.openings) {
    if (opening.unit?.mounting === undefined)
      return {
        missing: 'openings.unit.mounting',
        at: opening.unit?.at ?? opening.at,
        because: `how the unit of "${opening.id}" is mounted is not stated`,
      };
  }
  const here = new Set(detail.openings.map((o) => o.unit?.mounting?.value));
  if (here.size > 1)
    return {
      missing: 'openings.unit.mounting',
      at: detail.openings[0]?.at ?? detail.at,
      because: 'the detail has units of both mountings; draw them as two details',
    };
  return here.has(mounting);
};

const byFamily: Part = ({ family }, detail, { product }) => {
  if (family === undefined) return true;
  if (product !== undefined) return product.family === family;
  // Without a product the family of what is put on is not known here, unless nothing of that family is.
  const put = detail.work.some((w) => w.action === 'apply' && w.family === family);
  return put ? { missing: 'work.product', at: detail.at, because: 'the work names no product' } : false;
};

const PARTS = [inZones, byHeight, byFraming, byMounting, byFamily];

/** Whether all parts of a condition hold. One that does not hold settles it, whatever else is unknown. */
export function applies(condition: Condition | undefined, detail: Detail, query: Pick<LimitQuery, 'product'>): Applies {
  if (condition === undefined) return true;
  const answers = PARTS.map((part) => part(condition, detail, query));
  return !answers.includes(false) && (answers.find((a) => typeof a === 'object') ?? true);
}
