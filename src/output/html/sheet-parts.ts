/**
 * Where things stand on a drawing that is already written: its marks, its lines of water, the table of findings that
 * the page around it repeats. The drawing is our own writer's, so its markup is known; what is not found is left out,
 * and the drawing is shown as it is.
 */
import { FINDING_SIZE } from '../drawing/marks.js';
import { PAGE } from '../drawing/page.js';
import { WATER } from '../drawing/sheet.js';
import type { Point } from '../drawing/svg.js';

/** Millimeters on paper, y down. */
export interface SheetParts {
  readonly width: number;
  readonly height: number;
  /** Lower end of the drawing with its key; the table of findings, or the list of what is assumed, follows. */
  readonly drawingEnd: number;
  /** Upper end of the title block, when a table of findings parts it from the drawing. */
  readonly titleBlockStart: number | undefined;
  readonly marks: readonly Mark[];
  /** Lines of water in the order they were drawn. */
  readonly waterLines: readonly WaterLine[];
}

export interface Mark {
  readonly finding: number;
  /** Center. */
  readonly x: number;
  readonly y: number;
}

export type WaterLine = readonly Point[];

interface TextLine {
  readonly x: number;
  readonly y: number;
  readonly isBold: boolean;
  readonly content: string;
}

function textLines(svg: string): TextLine[] {
  return [...svg.matchAll(/<text x="([\d.-]+)" y="([\d.-]+)"([^>]*)>([^<]*)<\/text>/g)].map((m) => ({
    x: Number(m[1]),
    y: Number(m[2]),
    isBold: m[3]?.includes('font-weight="bold"') === true,
    content: m[4] ?? '',
  }));
}

/** Triangles above the key, which shows samples of them. Their first point is the apex. */
function marksIn(svg: string, end: number): Mark[] {
  return [...svg.matchAll(/<path d="M([\d.-]+) ([\d.-]+)L[^"]*"[^>]* data-finding="(\d+)"\/>/g)]
    .map(([, x, y, finding]) => ({ finding: Number(finding), x: Number(x), y: Number(y) + FINDING_SIZE.height / 2 }))
    .filter((mark) => mark.y <= end);
}

function waterLinesIn(svg: string, end: number): WaterLine[] {
  const group = new RegExp(`<g [^>]*stroke="${WATER}"[^>]*>([^]*?)</g>`).exec(svg)?.[1] ?? '';
  return [...group.matchAll(/<path d="([ML\d .-]+)"(?: stroke-dasharray="[^"]*")?\/>/g)]
    .map((m) => [...(m[1] ?? '').matchAll(/[ML]([\d.-]+) ([\d.-]+)/g)].map(([, x, y]): Point => [Number(x), Number(y)]))
    .filter((points) => points.every(([, y]) => y <= end));
}

/** @param svg a drawing written by this program */
export function sheetParts(svg: string): SheetParts {
  const [, width = 0, height = 0] = (/viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg) ?? []).map(Number);
  const texts = textLines(svg);
  // Headings start at the margin, where no text of a drawing does.
  const headings = texts.filter((t) => t.isBold && t.x === PAGE.margin);
  const key = headings.find((t) => t.content === 'Key');
  const table = headings.find(
    (t) => t.content.startsWith('Findings of the review (') || t.content === 'Assumed and left out',
  );
  // The scale stands in the first line of the title block, whatever its other words.
  const scale = texts.findLast((t) => /^(Scale 1:|Not to scale$)/.test(t.content));
  const isParted = table !== undefined && scale !== undefined && scale.y > table.y;
  // Signs below are samples of the key, or stand in the table.
  const drawingOnly = key?.y ?? table?.y ?? height;
  return {
    width,
    height,
    // A heading stands 3 mm above its baseline, the frame of the title block 4 mm above that of the scale.
    drawingEnd: isParted ? table.y - 4 : height,
    titleBlockStart: isParted ? scale.y - 4.6 : undefined,
    marks: marksIn(svg, drawingOnly),
    waterLines: waterLinesIn(svg, drawingOnly),
  };
}
