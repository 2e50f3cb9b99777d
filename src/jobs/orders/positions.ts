/** Lines and columns in a text that is not YAML. */

import type { FileIssues } from '../read/model.ts';

/** From 1, columns in UTF-16 code units. */
export function positionsIn(text: string): FileIssues['position'] {
  const starts = [0, ...[...text.matchAll(/\r\n|\r|\n/g)].map(({ 0: sign, index }) => index + sign.length)];
  return (offset) => {
    let [low, high] = [0, starts.length - 1];
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if (starts[middle]! <= offset) low = middle;
      else high = middle - 1;
    }
    return { line: low + 1, column: offset - starts[low]! + 1 };
  };
}
