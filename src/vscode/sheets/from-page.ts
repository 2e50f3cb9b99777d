/** Parses messages from the sheets page. */

import type { FromSheetsPage, PinnedPlace } from '../../protocol/sheets.ts';

/** `undefined` for anything that is not a message of the protocol. */
export function parseFromPage(data: unknown): FromSheetsPage | undefined {
  if (typeof data !== 'object' || data === null) return undefined;
  const { type, file, offset, row, width, height, piece, focus, places, pieces, step, effort, gap, stock } =
    data as Record<string, unknown>;
  if (isPlain(type)) return { type };
  if (type === 'show' && typeof offset === 'number' && typeof row === 'number' && isName(file))
    return { type, offset, row, ...(file === undefined ? {} : { file }) };
  if (type === 'reveal' && typeof piece === 'string' && typeof focus === 'boolean') return { type, piece, focus };
  if (type === 'pin' && Array.isArray(places) && places.every(isPlace)) return { type, places };
  if (type === 'unpin' && Array.isArray(pieces) && pieces.every((each) => typeof each === 'string'))
    return { type, pieces };
  if (type === 'effort' && isFigure(effort)) return { type, effort };
  if (type === 'gap' && typeof stock === 'string' && isFigure(gap)) return { type, stock, gap };
  if (type === 'undo' && (step === 'undo' || step === 'redo')) return { type, step };
  if (type === 'size' && typeof width === 'number' && typeof height === 'number') return { type, width, height };
  return undefined;
}

/** Messages without further data. */
const plain = ['ready', 'export', 'stop', 'again', 'keep', 'forget', 'restore'] as const;

function isPlain(type: unknown): type is (typeof plain)[number] {
  return plain.some((each) => each === type);
}

function isName(value: unknown): value is string | undefined {
  return value === undefined || typeof value === 'string';
}

function isFigure(value: unknown): value is number {
  return typeof value === 'number' && value >= 0 && value < Infinity;
}

function isPlace(data: unknown): data is PinnedPlace {
  if (typeof data !== 'object' || data === null) return false;
  const { piece, sheet, x, y, turned } = data as Record<string, unknown>;
  const areFinite = [x, y, turned].every((value) => Number.isFinite(value));
  return areFinite && typeof piece === 'string' && typeof sheet === 'string';
}
