/** Which lines of a table of orders are for which spec of a job, by what the table calls it. */

import { specName } from '../../core/names.ts';
import type { TagEntry } from './model.ts';

export const productColumn = 'product';

/** What lines for this entry may call it; the plainest first. */
export function productsOf({ spec, products }: Pick<TagEntry, 'spec' | 'products'>): readonly string[] {
  const file = spec.replace(/^.*\//, '');
  return products ?? [...new Set([specName(file), file, spec])];
}

export function productKey(product: string): string {
  return product.normalize('NFC').trim().replace(/\s+/g, ' ').toLowerCase();
}

/** Files have hyphens where people write spaces. */
export function fileKey(product: string): string {
  return productKey(product.replace(/[-_\s]+/g, ' '));
}

/** The entries that make a product; several of a product that is a set. */
export function makersOf(product: string, entries: readonly TagEntry[]): TagEntry[] {
  return entries.filter((entry) => {
    const keyOf = entry.products ? productKey : fileKey;
    return productsOf(entry).some((name) => keyOf(name) === keyOf(product));
  });
}
