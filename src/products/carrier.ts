/** The layer of the wall that a piece of work lies on where nothing else lies between. */
import { baseIndex } from '../model/order.js';
import type { Piece } from '../geometry/types.js';
import type { Detail, Layer } from '../model/types.js';

/**
 * The layer directly inboard of what a piece is: of its own layer where it puts one on, else the layer that carries the
 * barrier.
 *
 * @returns `undefined` when the wall is not drawn that far in
 */
export function carrierOf(detail: Detail, piece: Pick<Piece, 'layer'>): Layer | undefined {
  return piece.layer === undefined ? detail.layers[baseIndex(detail)] : detail.layers[piece.layer.index - 1];
}
