/** Which products a detail uses, and where each is first named. */
import type { Detail, Family, Product } from './types.js';
import type { Locus } from '../reading/types.js';

export interface ProductUse {
  readonly product: Product;
  /** Where the product is first named: in the wall layers, then in the work. */
  readonly at: Locus;
}

/** Each product of some families once, at its first use. */
export function productsUsed(detail: Detail, isWanted: (family: Family) => boolean): ProductUse[] {
  const uses = new Map<string, ProductUse>();
  const add = (product: Product | undefined, at: Locus | undefined): void => {
    if (product === undefined || at === undefined || uses.has(product.id) || !isWanted(product.family)) return;
    uses.set(product.id, { product, at });
  };
  for (const layer of detail.layers) add(layer.product, layer.productId?.at);
  for (const work of detail.work) if (work.action === 'apply') add(work.product, work.productId?.at);
  return [...uses.values()];
}
