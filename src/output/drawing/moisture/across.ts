/** Where the layers of a wall stand from left (inside) to right (outside): by thickness, or by vapor resistance. */
import type { Plane } from '../../../moisture/resistance.js';
import { scaleFor } from '../scale.js';
import type { CountedLayer } from './followed.js';

export interface Span {
  readonly layer: CountedLayer;
  readonly x0: number;
  readonly x1: number;
}
export interface Across {
  /** Ends of the plot: air inside, air outside. */
  readonly x0: number;
  readonly x1: number;
  readonly spans: readonly Span[];
  /** Surfaces of the wall. */
  readonly insideX: number;
  readonly outsideX: number;
  /** Where the air films begin, away from the wall. */
  readonly filmInX: number;
  readonly filmOutX: number;
  readonly x: (plane: Plane) => number;
}

/** Least width of a layer, mm on paper, so that both of its faces are seen. */
const LEAST = 1.4;
const FILM_SHARE = 0.45;

function across(spans: readonly Span[], x0: number, x1: number): Across {
  const insideX = spans[0]?.x0 ?? x0;
  const outsideX = spans.at(-1)?.x1 ?? x1;
  const x = (plane: Plane): number => {
    const span = spans.find(({ layer }) => plane.index >= layer.first.index && plane.index <= layer.last.index);
    if (span === undefined) return outsideX;
    const { first, last } = span.layer;
    return span.x0 + ((span.x1 - span.x0) * (plane.index - first.index)) / (last.index - first.index);
  };
  return {
    x0,
    x1,
    spans,
    insideX,
    outsideX,
    filmInX: insideX - (insideX - x0) * FILM_SHARE,
    filmOutX: outsideX + (x1 - outsideX) * FILM_SHARE,
    x,
  };
}

/** Spans of given widths, one after the other. */
function spansOf(layers: readonly CountedLayer[], from: number, widthOf: (layer: CountedLayer) => number): Span[] {
  let x = from;
  return layers.map((layer) => {
    const x0 = x;
    x += widthOf(layer);
    return { layer, x0, x1: x };
  });
}

/**
 * Layers to scale of thickness, the thin ones wider than they are.
 *
 * @param airMm room for the air on each side, mm on paper
 * @returns with the divisor of the scale
 */
export function byThickness(
  layers: readonly CountedLayer[],
  x0: number,
  x1: number,
  airMm: number,
): Across & { readonly divisor: number } {
  const room = x1 - x0 - 2 * airMm;
  // What is drawn wider than it is depends on the scale, and the scale on what room is left.
  const widthAt = (divisor: number): number =>
    layers.reduce((sum, l) => sum + Math.max(LEAST, l.thicknessMm / divisor), 0);
  let divisor = scaleFor(
    layers.reduce((sum, l) => sum + l.thicknessMm, 0),
    room,
  );
  while (widthAt(divisor) > room && divisor < 1000) divisor = scaleFor((divisor + 0.01) * room, room);
  const width = Math.min(room, widthAt(divisor));
  const squeeze = width / widthAt(divisor);
  const from = (x0 + x1 - width) / 2;
  const spans = spansOf(layers, from, (l) => Math.max(LEAST, l.thicknessMm / divisor) * squeeze);
  return { ...across(spans, from - airMm, from + width + airMm), divisor };
}

/** Layers to scale of vapor resistance, without any widening: only so are lines of pressure straight. */
export function byVapor(layers: readonly CountedLayer[], x0: number, x1: number, airMm: number): Across {
  const total = layers.at(-1)?.last.sdFromInsideM ?? 1;
  const room = x1 - x0 - 2 * airMm;
  const spans = spansOf(layers, x0 + airMm, (l) => ((l.last.sdFromInsideM - l.first.sdFromInsideM) / total) * room);
  return across(spans, x0, x1);
}
