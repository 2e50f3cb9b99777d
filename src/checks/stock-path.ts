/** Where the spec says what pieces of one stock are cut from. */

import type { YamlPath } from '../core/issue.ts';
import type { Piece } from '../tag/tag.ts';

/** `key`: of the tag's own stock, where it is written in place. */
export function stockPath([piece]: readonly Piece[], key?: string): YamlPath {
  if (piece?.cutFrom) return [...piece.path, 'stock'];
  return key === undefined ? ['stock'] : ['stock', key];
}
