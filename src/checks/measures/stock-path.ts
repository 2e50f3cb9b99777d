/** The place in the spec that gives the stock of some pieces. */

import type { YamlPath } from '../../core/issue.ts';
import type { Piece } from '../../tag/tag.ts';

/** The path of the pieces' stock. `key` is a key of the tag's own stock, where that is written in place. */
export function stockPath([piece]: readonly Piece[], key?: string): YamlPath {
  if (piece?.cutFrom) return [...piece.path, 'stock'];
  return key === undefined ? ['stock'] : ['stock', key];
}
