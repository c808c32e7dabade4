/** The drawings of one detail for the page: each view with what can be pointed at in it. */
import type { Detail, Opening } from '../../model/types.js';
import type { Result } from '../../engine/result.js';
import type { DrawingSubject } from '../drawing/subject.js';
import type { NumberTable } from '../drawing/moisture/table.js';
import { drawingSubject, drawView, numbersOf, viewsOf, type View } from '../drawing/views.js';
import { sheetParts, type SheetParts, type WaterLine } from './sheet-parts.js';
import { waysOnFace, waysOverPan, type Ways } from './ways.js';

export interface Drawing {
  /** `Elevation`, `Section at the head`. */
  readonly title: string;
  /** Written by this program alone, every text in it escaped. */
  readonly svg: string;
  readonly parts: SheetParts;
  /** Lines of water on the path of a finding, by its number. */
  readonly waysOf: Ways;
  /** Of a drawing that is made of numbers: they, for readers who do not see it. */
  readonly numbers?: NumberTable;
}

const TITLE: Record<View, string> = {
  elevation: 'Elevation',
  'section-head': 'Section at the head',
  'section-sill': 'Section at the sill',
  'section-jamb': 'Section at the jamb',
  'section-base': 'Section at the base',
  layers: 'Layers from outside to inside',
  profile: 'Heat and vapor through the wall',
  year: 'Water in the wall through a year',
};
/** Views that cut one opening: drawn for each. */
const AT_OPENING: readonly View[] = ['section-head', 'section-sill', 'section-jamb'];

function* eachView(detail: Detail): Generator<{ view: View; opening?: Opening; title: string }> {
  const { openings } = detail;
  for (const view of viewsOf(detail)) {
    if (!AT_OPENING.includes(view)) yield { view, title: TITLE[view] };
    else
      for (const opening of openings)
        yield { view, opening, title: `${TITLE[view]}${openings.length > 1 ? ` of "${opening.id}"` : ''}` };
  }
}

function waysOf(view: View, opening: Opening | undefined, lines: readonly WaterLine[], subject: DrawingSubject): Ways {
  if (view === 'elevation') return waysOnFace(lines, subject);
  return view === 'section-sill' && opening !== undefined ? waysOverPan(lines, subject, opening) : new Map();
}

/**
 * Draws every view that a detail has.
 *
 * @param findings of this detail, in the order of the report: the numbers in the drawings are their places in it
 * @param titleOf title of a rule by its id
 * @returns the drawings, and a sentence for each view that could not be drawn: that costs no reader the findings
 */
export function drawingsFor(
  detail: Detail,
  findings: readonly Result[],
  titleOf: (ruleId: string) => string,
): { drawings: Drawing[]; notDrawn: string[] } {
  const drawings: Drawing[] = [];
  const notDrawn: string[] = [];
  /** Runs one step; what stops it is told and stops nothing else. */
  const attempt = (what: string, step: () => void): void => {
    try {
      step();
    } catch (error) {
      notDrawn.push(`Not drawn: ${what}. ${error instanceof Error ? error.message : String(error)}`);
    }
  };
  attempt('this detail', () => {
    const subject = drawingSubject(detail, findings, titleOf);
    for (const { view, opening, title } of eachView(detail))
      attempt(title, () => {
        const svg = drawView(subject, view, { opening });
        const parts = sheetParts(svg);
        const numbers = numbersOf(subject, view);
        drawings.push({
          title,
          svg,
          parts,
          waysOf: waysOf(view, opening, parts.waterLines, subject),
          ...(numbers === undefined ? {} : { numbers }),
        });
      });
  });
  return { drawings, notDrawn };
}
