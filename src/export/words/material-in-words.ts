/** What a tag is made of, in words. */

import { capitalised, listed } from '../../core/names.ts';
import { byStock } from '../../tag/by-stock.ts';
import type { Tag } from '../../tag/tag.ts';

/** The material as the spec calls it, capitalised; for several stocks, all of them. */
export function materialInWords(tag: Tag): string | undefined {
  const names = new Set(byStock(tag).map(({ stock }) => stock.material?.trim() ?? ''));
  names.delete('');
  const name = listed([...names]);
  return name === '' ? undefined : capitalised(name);
}
