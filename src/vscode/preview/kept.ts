/** How a file was looked at last, as it is kept for the next time. It comes from pages and from disk, so it is parsed. Pure. */

import type { RememberedView } from '../../protocol/preview.ts';

/** A spec has some tens of pieces; a list that is much longer is none of a page. */
const longest = 500;

export function parseKept(data: unknown): RememberedView | undefined {
  if (typeof data !== 'object' || data === null) return undefined;
  const { arrangement, hiddenLayers, hiddenPieces, dock = 'auto' } = data as Record<string, unknown>;
  if (typeof arrangement !== 'string' || typeof dock !== 'string') return undefined;
  return areNames(hiddenLayers) && areNames(hiddenPieces)
    ? { arrangement, hiddenLayers, hiddenPieces, dock }
    : undefined;
}

/** Screens have from about 2 (a projector) to 30 (a telephone) device pixels a millimetre. */
const fewest = 0.5;
const most = 60;

export function parseScreen(data: unknown): number | undefined {
  return typeof data === 'number' && data >= fewest && data <= most ? data : undefined;
}

/** Two sentences, at most a few. */
const longestCaution = 2000;

export function isCaution(data: unknown): data is string {
  return typeof data === 'string' && data !== '' && data.length <= longestCaution;
}

function areNames(value: unknown): value is string[] {
  return Array.isArray(value) && value.length <= longest && value.every((each) => typeof each === 'string');
}
