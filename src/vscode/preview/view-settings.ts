/** Parses remembered view settings, which come from pages and from disk. Pure. */

import type { RememberedView } from '../../protocol/preview.ts';

/** Longest list accepted; a spec has tens of pieces, so a page never sends one much longer. */
const longest = 500;

export function parseViewSettings(data: unknown): RememberedView | undefined {
  if (typeof data !== 'object' || data === null) return undefined;
  const { arrangement, hiddenLayers, hiddenPieces, dock = 'auto' } = data as Record<string, unknown>;
  if (typeof arrangement !== 'string' || typeof dock !== 'string') return undefined;
  return areNames(hiddenLayers) && areNames(hiddenPieces)
    ? { arrangement, hiddenLayers, hiddenPieces, dock }
    : undefined;
}

/** Accepted resolutions, in device pixels per mm; screens have from about 2 (a projector) to 30 (a phone). */
const fewest = 0.5;
const most = 60;

export function parseScreen(data: unknown): number | undefined {
  return typeof data === 'number' && data >= fewest && data <= most ? data : undefined;
}

/** Longest caution accepted, in characters; a caution is two sentences, or a few. */
const longestCaution = 2000;

export function isCaution(data: unknown): data is string {
  return typeof data === 'string' && data !== '' && data.length <= longestCaution;
}

function areNames(value: unknown): value is string[] {
  return Array.isArray(value) && value.length <= longest && value.every((each) => typeof each === 'string');
}
