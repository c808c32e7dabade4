/** Words in a column beside a drawing, each with a leader to what it names; stacked so that none overlap. */
import { leader, NUMBER_RADIUS, workNumber } from './marks.js';
import { LINE_HEIGHT, SIZE, type Sheet } from './sheet.js';
import type { Point } from './svg.js';
import { wrapMm } from './text-size.js';

export interface Label {
  /** The point of the drawing that it names. */
  readonly anchor: Point;
  /** First line stands out; the others say more. */
  readonly lines: readonly string[];
  /** Step in the order of work. */
  readonly step?: number;
}

export interface Column {
  readonly side: 'left' | 'right';
  /** Outer and inner edge of the column: words stand between, leaders begin at the inner edge. */
  readonly x0: number;
  readonly x1: number;
  readonly top: number;
  readonly bottom: number;
}

const GAP = 1.2;
const NUMBER_ROOM = 2 * NUMBER_RADIUS + 1;

interface Placed {
  readonly label: Label;
  readonly lines: readonly string[];
  readonly height: number;
  y: number;
}

/**
 * Moves boxes down where they meet, then up where they pass the lower end, keeping their order.
 *
 * @param boxes sorted; `y` is the wanted upper end and is changed to the one that is taken
 */
export function spread(boxes: { y: number; readonly height: number }[], top: number, bottom: number): void {
  let free = top;
  for (const box of boxes) {
    box.y = Math.max(box.y, free);
    free = box.y + box.height + GAP;
  }
  let limit = Math.max(bottom, top + boxes.reduce((sum, b) => sum + b.height + GAP, -GAP));
  for (const box of [...boxes].reverse()) {
    box.y = Math.min(box.y, limit - box.height);
    limit = box.y - GAP;
  }
}

/** Draws the labels of one column. */
export function drawLabels(sheet: Sheet, labels: readonly Label[], column: Column): void {
  const width = column.x1 - column.x0 - NUMBER_ROOM - 1;
  const lineHeight = SIZE.text * LINE_HEIGHT;
  const placed = labels
    .map((label): Placed => {
      const lines = label.lines.flatMap((text) => wrapMm(text, width, SIZE.text, 5));
      const height = Math.max(lines.length * lineHeight, label.step === undefined ? 0 : 2 * NUMBER_RADIUS);
      return { label, lines, height, y: label.anchor[1] - lineHeight / 2 };
    })
    .sort((a, b) => a.label.anchor[1] - b.label.anchor[1] || a.label.anchor[0] - b.label.anchor[0]);
  spread(placed, column.top, column.bottom);
  for (const { label, lines, y } of placed) {
    const middle = y + lineHeight / 2;
    const isLeft = column.side === 'left';
    // Words are set against the drawing, the number between words and leader.
    const edge = isLeft ? column.x1 : column.x0;
    const inward = isLeft ? -1 : 1;
    const textAt = edge + inward * (label.step === undefined ? 0.8 : NUMBER_ROOM);
    lines.forEach((text, i) =>
      sheet.text([textAt, y + lineHeight * i + SIZE.text * 0.9], text, { anchor: isLeft ? 'end' : 'start' }),
    );
    if (label.step !== undefined) workNumber(sheet, [edge + inward * NUMBER_RADIUS, middle], label.step);
    const shoulder: Point = [edge - inward * 2.2, middle];
    leader(sheet, [[edge, middle], shoulder, label.anchor]);
  }
}
