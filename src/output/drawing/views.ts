/** The views of a detail by name, and the one call that draws one. */
import { buildFace } from '../../geometry/face.js';
import { sectionPlaces } from '../../geometry/section/build.js';
import type { SectionPlace } from '../../geometry/section/types.js';
import type { WallFace } from '../../geometry/types.js';
import type { Result } from '../../engine/result.js';
import type { Detail, Opening } from '../../model/types.js';
import { runOfWater } from '../../water/run/run.js';
import { drawElevation } from './elevation.js';
import { numberFindings } from './findings.js';
import { drawLayers } from './layers.js';
import { drawProfile, profileNumbers } from './moisture/profile.js';
import { whyNotFollowed } from './moisture/followed.js';
import type { NumberTable } from './moisture/table.js';
import { drawYear, yearNumbers } from './moisture/year.js';
import { drawSection } from './section.js';
import type { DrawingSubject } from './subject.js';

export const VIEWS = [
  'elevation',
  'section-head',
  'section-sill',
  'section-jamb',
  'section-base',
  'layers',
  'profile',
  'year',
] as const;
export type View = (typeof VIEWS)[number];

const PLACE: Partial<Record<View, SectionPlace>> = {
  'section-head': 'head',
  'section-sill': 'sill',
  'section-jamb': 'jamb',
  'section-base': 'base',
};

/** Views of heat and vapor: there when the wall can be followed through the year of its place. */
const OF_MOISTURE: ReadonlySet<View> = new Set<View>(['profile', 'year']);

function shows(detail: Detail, view: View): boolean {
  const place = PLACE[view];
  if (place !== undefined) return sectionPlaces(detail).includes(place);
  if (OF_MOISTURE.has(view)) return whyNotFollowed(detail) === undefined;
  return view === 'elevation' || detail.layers.length > 0;
}

/** The views that a detail has something to show in, in the order of {@link VIEWS}. */
export function viewsOf(detail: Detail): View[] {
  return VIEWS.filter((view) => shows(detail, view));
}

/** Why a detail has nothing to show in a view, and what it does show; `undefined` when it shows it. */
export function whyNotShown(detail: Detail, view: View): string | undefined {
  if (shows(detail, view)) return undefined;
  const why = OF_MOISTURE.has(view) ? whyNotFollowed(detail) : undefined;
  return `has nothing to show in the view ${view}; its views: ${viewsOf(detail).join(', ')}.${why === undefined ? '' : ` ${why}`}`;
}

/**
 * Everything the drawings of a detail are made from.
 *
 * @param results of its review, in their order; the numbers of the findings follow it
 * @param titleOf title of a rule by its id
 * @param face when it is at hand
 */
export function drawingSubject(
  detail: Detail,
  results: readonly Result[],
  titleOf: (ruleId: string) => string,
  face: WallFace = buildFace(detail),
): DrawingSubject {
  return { detail, face, water: runOfWater(detail, face), findings: numberFindings(results, detail, titleOf) };
}

/** What of a view is shown. */
export interface Shown {
  /** The opening that is cut or dimensioned; the first one unless given. */
  readonly opening?: Opening | undefined;
  /** Month of the profile, 1 for January; the one that decides unless given. */
  readonly month?: number | undefined;
}

/**
 * Draws one view.
 *
 * @returns SVG text, the same bytes for the same detail, results and view
 * @throws RangeError when the detail has no such view
 */
export function drawView(subject: DrawingSubject, view: View, { opening, month }: Shown = {}): string {
  const { detail } = subject;
  const why = whyNotShown(detail, view);
  if (why !== undefined) throw new RangeError(`${detail.id} ${why}`);
  if (view === 'profile') return drawProfile(subject, month);
  if (view === 'year') return drawYear(subject);
  const shown = opening ?? detail.openings[0];
  const place = PLACE[view];
  if (place !== undefined) return drawSection(subject, shown, place);
  return view === 'layers' ? drawLayers(subject) : drawElevation(subject, shown);
}

/** The numbers of a view that is made of them, for readers who do not see it. */
export function numbersOf(subject: DrawingSubject, view: View): NumberTable | undefined {
  if (view === 'profile') return profileNumbers(subject);
  return view === 'year' ? yearNumbers(subject) : undefined;
}
