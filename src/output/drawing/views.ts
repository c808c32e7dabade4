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
import { drawSection } from './section.js';
import type { DrawingSubject } from './subject.js';

export const VIEWS = ['elevation', 'section-head', 'section-sill', 'section-jamb', 'section-base', 'layers'] as const;
export type View = (typeof VIEWS)[number];

const PLACE: Partial<Record<View, SectionPlace>> = {
  'section-head': 'head',
  'section-sill': 'sill',
  'section-jamb': 'jamb',
  'section-base': 'base',
};

/** The views that a detail has something to show in, in the order of {@link VIEWS}. */
export function viewsOf(detail: Detail): View[] {
  const places = sectionPlaces(detail);
  const has = (view: View): boolean => {
    const place = PLACE[view];
    if (place !== undefined) return places.includes(place);
    return view === 'elevation' || detail.layers.length > 0;
  };
  return VIEWS.filter(has);
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

/**
 * Draws one view.
 *
 * @param opening the opening that is cut or dimensioned; the first one when there are several
 * @returns SVG text, the same bytes for the same detail, results and view
 * @throws RangeError when the detail has no such view
 */
export function drawView(subject: DrawingSubject, view: View, opening?: Opening): string {
  const { detail } = subject;
  const available = viewsOf(detail);
  if (!available.includes(view))
    throw new RangeError(`${detail.id} has nothing to show in the view ${view}; its views: ${available.join(', ')}.`);
  const shown = opening ?? detail.openings[0];
  const place = PLACE[view];
  if (place !== undefined) return drawSection(subject, shown, place);
  return view === 'layers' ? drawLayers(subject) : drawElevation(subject, shown);
}
