/** The wall laid open: each layer as a sheet that reaches less far than the one behind it, named in a table. */
import { layerBands } from '../../geometry/section/bands.js';
import type { Band } from '../../geometry/section/types.js';
import { battCurves, hatch, hatchOf } from './hatch.js';
import { markAt } from './elevation-findings.js';
import { sharedSigns } from './elevation-key.js';
import { workNumber } from './marks.js';
import { drawFindings, drawKey, drawSteps, drawTitleBlock, PAGE } from './page.js';
import { GREY, LINE_HEIGHT, Sheet, SIZE } from './sheet.js';
import { strokeOf } from './strokes.js';
import { filmText, materialText, workOfLayer, workText, type DrawingSubject } from './subject.js';
import { line, polygon, type Box } from './svg.js';
import { wrapMm } from './text-size.js';

/** Widths of the sheets: the innermost reaches farthest. */
const SHEET = { x0: PAGE.margin, longest: 62, shortest: 26 } as const;
const COLUMNS = { number: 72, layer: 78, thickness: 146, film: 166 } as const;
const ROW = SIZE.text * LINE_HEIGHT;
const LEAST_ROW = 8.4;

const cornersOf = (b: Box) =>
  [
    [b.x0, b.y0],
    [b.x1, b.y0],
    [b.x1, b.y1],
    [b.x0, b.y1],
  ] as const;

/** What the table says of a layer beyond its name. */
function detailLines(subject: DrawingSubject, band: Band): string[] {
  const { layer } = band;
  const work = workOfLayer(subject.detail, layer);
  const framing =
    layer.framing === undefined
      ? undefined
      : `${layer.framing.material} framing${layer.framing.spacingMm === undefined ? '' : `, ${layer.framing.spacingMm.text} on center`}`;
  const product = layer.product ?? (layer.productId === undefined ? work?.product : undefined);
  return [
    product === undefined ? undefined : `product: ${product.id}, ${product.family}`,
    framing,
    layer.finish === undefined ? undefined : `finish: ${layer.finish.value}`,
    layer.drained?.value === true || layer.vented?.value === true
      ? [layer.drained?.value === true ? 'drained' : '', layer.vented?.value === true ? 'vented' : '']
          .filter(Boolean)
          .join(', ')
      : undefined,
    layer.controls.length === 0 ? undefined : `controls ${layer.controls.map((c) => c.value).join(', ')}`,
  ].filter((text) => text !== undefined);
}

function drawSwatch(sheet: Sheet, band: Band, box: Box): void {
  const { layer } = band;
  const isThin = band.innerMm === band.outerMm;
  sheet.add('fill', polygon(cornersOf(box), { fill: '#fff' }));
  if (isThin) {
    const y = (box.y0 + box.y1) / 2;
    sheet.add(
      'strip',
      ...strokeOf(layer.family, [
        [box.x0, y],
        [box.x1, y],
      ]),
    );
    return;
  }
  const hatched = hatchOf(layer, 'across');
  if (hatched !== undefined) sheet.add('fill', polygon(cornersOf(box), { fill: hatch(sheet, hatched) }));
  if (layer.family === 'batt insulation') sheet.add('hatch', battCurves(box, 'x'));
  sheet.add('edge', polygon(cornersOf(box)));
}

/**
 * Draws the layers from outside (top) to inside, and the order of work below.
 *
 * @returns SVG text
 */
export function drawLayers(subject: DrawingSubject): string {
  const { detail } = subject;
  const bands = layerBands(detail, subject.face).reverse();
  const sheet = new Sheet(PAGE.width);
  let y = PAGE.margin + 3;
  sheet.text([SHEET.x0, y], 'EXTERIOR', { bold: true });
  for (const [x, words] of [
    [COLUMNS.layer, 'Layer'],
    [COLUMNS.thickness, 'Thickness'],
    [COLUMNS.film, 'Film'],
  ] as const)
    sheet.text([x, y], words, { bold: true });
  y += 2;
  const shown = new Set<number>();
  bands.forEach((band, i) => {
    const { layer } = band;
    const title = wrapMm(`${layer.id}: ${materialText(layer)}`, COLUMNS.thickness - COLUMNS.layer - 2, SIZE.text, 2);
    const more = detailLines(subject, band).flatMap((t) =>
      wrapMm(t, COLUMNS.thickness - COLUMNS.layer - 2, SIZE.small, 2),
    );
    const film = wrapMm(filmText(layer) || '', PAGE.width - PAGE.margin - COLUMNS.film, SIZE.text, 3);
    const height = Math.max(
      LEAST_ROW,
      title.length * ROW + more.length * SIZE.small * LINE_HEIGHT + 2,
      film.length * ROW + 2,
    );
    const share = bands.length < 2 ? 1 : i / (bands.length - 1);
    const box = {
      x0: SHEET.x0,
      y0: y,
      x1: SHEET.x0 + SHEET.shortest + share * (SHEET.longest - SHEET.shortest),
      y1: y + height,
    };
    drawSwatch(sheet, band, box);
    sheet.add(
      'leader',
      line([box.x1, y + 3.2], [COLUMNS.number - 3, y + 3.2], { 'stroke-dasharray': '0.6 0.8', stroke: GREY }),
    );
    const work = workOfLayer(detail, layer);
    if (work !== undefined) workNumber(sheet, [COLUMNS.number + 1, y + 3.2], work.step);
    title.forEach((text, k) => sheet.text([COLUMNS.layer, y + 4 + k * ROW], text));
    more.forEach((text, k) =>
      sheet.text([COLUMNS.layer, y + 4 + title.length * ROW + k * SIZE.small * LINE_HEIGHT], text, {
        size: SIZE.small,
      }),
    );
    const { thicknessMm } = layer;
    if (thicknessMm !== undefined)
      sheet.text([COLUMNS.thickness, y + 4], thicknessMm.text, {
        data: { 'data-dimension': `${layer.id}.thickness`, 'data-mm': thicknessMm.value },
      });
    else if (band.assumed) sheet.text([COLUMNS.thickness, y + 4], 'not given');
    film.forEach((text, k) => (text === '' ? undefined : sheet.text([COLUMNS.film, y + 4 + k * ROW], text)));
    sheet.add('leader', line([COLUMNS.number - 3, y + height], [PAGE.width - PAGE.margin, y + height]));
    for (const finding of subject.findings.filter((f) => f.target.layer === layer)) {
      markAt(sheet, [box.x1 + 3, y + height / 2], finding, {
        x0: SHEET.x0,
        y0: y,
        x1: COLUMNS.number - 3,
        y1: y + height,
      });
      shown.add(finding.number);
    }
    sheet.reserve({ x0: box.x0, y0: y, x1: box.x0, y1: y + height });
    y += height;
  });
  sheet.text([SHEET.x0, y + 4], 'INTERIOR', { bold: true });
  drawSteps(
    sheet,
    detail.work.map((w) => ({ step: w.step, text: workText(w) })),
  );
  drawKey(sheet, sharedSigns(sheet, subject, false, false));
  drawFindings(sheet, subject.findings, shown, false);
  const view = 'Layers of the wall, exterior to interior';
  drawTitleBlock(sheet, detail, view, undefined);
  return sheet.toSvg(`${detail.id}: ${view}`, `${detail.title}. Not for construction.`, PAGE.margin);
}
