/** Vertical sections at head, sill and base and the plan section at the jamb. */
import { buildSection } from '../../geometry/section/build.js';
import type { Section, SectionPlace } from '../../geometry/section/types.js';
import type { Opening } from '../../model/types.js';
import { drawDimensions, packDimensions, rowsSize } from './dimensions.js';
import { drawLabels } from './labels.js';
import { breakLine } from './marks.js';
import { drawFindings, drawKey, drawNotes, drawTitleBlock, PAGE } from './page.js';
import { scaleFor } from './scale.js';
import { drawBands } from './section-bands.js';
import { sectionDimensions } from './section-dimensions.js';
import { markSectionFindings } from './section-findings.js';
import { sectionKey } from './section-key.js';
import { sectionLabels } from './section-labels.js';
import { sectionMap, type SectionMap } from './section-map.js';
import { drawStrips } from './section-strips.js';
import { drawUnit } from './section-unit.js';
import { drawSectionWater } from './section-water.js';
import { Sheet, SIZE } from './sheet.js';
import { systemOf, type DrawingSubject } from './subject.js';

/** Columns of words on the two sides, mm. */
const LABELS = { left: 36, right: 36 } as const;
const GAP = 2.2;
/** No larger than details are drawn, and no taller than leaves room for key and title on a sheet of A4. */
const LARGEST = 4;
const TALLEST_MM = 150;

const NAMES: Record<SectionPlace, string> = {
  head: 'Vertical section at the head',
  sill: 'Vertical section at the sill',
  jamb: 'Plan section at the jamb',
  base: 'Vertical section at the base of the wall',
};

/** Rows of dimensions by the side of the drawing they stand on. */
function rowsOf(subject: DrawingSubject, map: SectionMap) {
  const d = sectionDimensions(subject, map);
  const isPlan = map.alongAxis === 'x';
  const openingFirst = map.section.place === 'sill';
  const along = isPlan ? 'x' : 'y';
  const through = isPlan ? 'y' : 'x';
  const outside = packDimensions(d.outside, along);
  const inside = packDimensions(d.inside, along);
  const open = packDimensions(d.through, through);
  const none = packDimensions([], 'x');
  if (isPlan) {
    const right = map.section.side !== 'right jamb';
    return { left: right ? none : open, right: right ? open : none, top: inside, bottom: outside };
  }
  return { left: outside, right: inside, top: openingFirst ? open : none, bottom: openingFirst ? none : open };
}

function drawEnds(sheet: Sheet, map: SectionMap): void {
  const { section, box } = map;
  const farHigh = section.place === 'head' || section.place === 'base';
  const isPlan = map.alongAxis === 'x';
  const inner = Math.min(...section.bands.map((b) => b.innerMm), 0);
  const outer = map.drawnDepth(Math.max(...section.bands.map((b) => b.outerMm), 0));
  breakLine(sheet, map.point(section.toMm, inner), map.point(section.toMm, outer), 0.25);
  if (section.place === 'base')
    breakLine(sheet, map.point(section.fromMm, inner), map.point(section.fromMm, outer), 0.25);
  const words = { size: SIZE.text, bold: true } as const;
  if (isPlan) {
    const x = section.side === 'right jamb' ? box.x0 + 2 : box.x1 - 22;
    sheet.text([x, box.y0 + 3], 'INTERIOR', words);
    sheet.text([x, box.y1 - 1], 'EXTERIOR', words);
    return;
  }
  const y = farHigh ? box.y0 - 2.6 : box.y1 + 4.6;
  // Over a thin wall the words stand back to back, beside its middle.
  const isThin = box.x1 - box.x0 < 2 * WORD_MM;
  const middle = (box.x0 + box.x1) / 2;
  sheet.text([isThin ? middle - 2 : box.x0, y], 'EXTERIOR', { ...words, anchor: isThin ? 'end' : 'start' });
  sheet.text([isThin ? middle + 2 : box.x1, y], 'INTERIOR', { ...words, anchor: isThin ? 'start' : 'end' });
}

/** Room for one of the words EXTERIOR and INTERIOR. */
const WORD_MM = 23;

const NOTES = [
  'Membranes and flashings are drawn thicker than they are, in their true order; lengths along the wall are to scale.',
  'Framing at the opening, the profile of the frame, the lintel and the ends of the cladding are not described in the detail and are drawn as a sketch.',
];

/** Sides on which the wall fits: the smallest room the drawing has to share with words and dimensions. */
function layOut(subject: DrawingSubject, section: Section): { map: SectionMap; divisor: number } {
  const room = PAGE.width - 2 * PAGE.margin - LABELS.left - LABELS.right - 2 * GAP;
  let divisor = Math.max(LARGEST, scaleFor((section.toMm - section.fromMm) / TALLEST_MM, 1));
  for (;;) {
    const trial = sectionMap(section, divisor, [0, 0]);
    const rows = rowsOf(subject, trial);
    const width = trial.box.x1 - trial.box.x0;
    const taken = rowsSize(rows.left) + rowsSize(rows.right);
    if (width + taken <= room) {
      const left = PAGE.margin + LABELS.left + GAP + rowsSize(rows.left) + (room - width - taken) / 2;
      const top = PAGE.margin + rowsSize(rows.top) + (trial.alongAxis === 'y' && section.place !== 'sill' ? 6 : 2);
      return { map: sectionMap(section, divisor, [left, top]), divisor };
    }
    divisor = scaleFor(divisor * 100 + 1, 100);
  }
}

/**
 * Draws a section.
 *
 * @param opening the opening that is cut; not used at the base
 * @returns SVG text
 * @throws RangeError when a place at an opening is asked for without one
 */
export function drawSection(subject: DrawingSubject, opening: Opening | undefined, place: SectionPlace): string {
  const section = buildSection(subject.detail, subject.face, opening, place);
  const { map, divisor } = layOut(subject, section);
  const rows = rowsOf(subject, map);
  const { box } = map;
  const sheet = new Sheet(PAGE.width);
  drawBands(sheet, map);
  const places = drawUnit(sheet, map);
  drawStrips(sheet, map);
  drawEnds(sheet, map);
  drawDimensions(sheet, rows.top, 'x', box.y0, -1);
  const low = drawDimensions(sheet, rows.bottom, 'x', box.y1, 1);
  const left = drawDimensions(sheet, rows.left, 'y', box.x0, -1);
  const right = drawDimensions(sheet, rows.right, 'y', box.x1, 1);
  const water = drawSectionWater(sheet, subject, map);
  const labels = sectionLabels(subject, map, places, water.wrongEnd);
  const column = { top: PAGE.margin, bottom: Math.max(box.y1, low) };
  drawLabels(sheet, labels.left, { side: 'left', x0: PAGE.margin, x1: left - GAP, ...column });
  drawLabels(sheet, labels.right, { side: 'right', x0: right + GAP, x1: PAGE.width - PAGE.margin, ...column });
  const shown = markSectionFindings(sheet, subject, map, places);
  sheet.reserve({ x0: box.x0, y0: box.y1, x1: box.x0, y1: Math.max(box.y1, low) });

  drawKey(sheet, sectionKey(sheet, subject, section, water));
  drawNotes(sheet, 'Notes', NOTES);
  drawFindings(sheet, subject.findings, shown, false);
  const of = opening === undefined || place === 'base' ? '' : ` of ${opening.id}`;
  const view = `${NAMES[place]}${of}`;
  drawTitleBlock(sheet, subject.detail, view, { divisor, system: systemOf(subject.detail) });
  return sheet.toSvg(`${subject.detail.id}: ${view}`, `${subject.detail.title}. Not for construction.`, PAGE.margin);
}
