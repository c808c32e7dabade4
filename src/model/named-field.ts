/** How a field that the documents leave out is named: with the id of its layer, opening or step. */
import type { Layer, Opening, Work } from './types.js';

/** `wall "sheathing": permeance`. */
export function fieldOfLayer(layer: Pick<Layer, 'id'>, field: string): string {
  return `wall "${layer.id}": ${field}`;
}

/** `openings "window": unit.mounting`. */
export function fieldOfOpening(opening: Pick<Opening, 'id'>, field: string): string {
  return `openings "${opening.id}": ${field}`;
}

/** `work "pan": wait`. */
export function fieldOfWork(work: Pick<Work, 'id'>, field: string): string {
  return `work "${work.id}": ${field}`;
}

/**
 * Takes out which layer, opening, step or list entry is meant: `wall.permeance` of `wall "sheathing": permeance`,
 * `contains.of` of `contains[2].of`.
 */
export function fieldOfAny(text: string): string {
  return text.replace(/\b(wall|openings|work) "[^"]*": /g, '$1.').replace(/\[\d+\]/g, '');
}
