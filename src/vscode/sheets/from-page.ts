/** What the page of sheets says, once it has been looked at. */

import type { FromSheetsPage } from '../../protocol/sheets.ts';

/** `undefined` for anything that is not a message of the protocol. */
export function parseFromPage(data: unknown): FromSheetsPage | undefined {
  if (typeof data !== 'object' || data === null) return undefined;
  const { type, offset, row, width, height, piece, focus } = data as Record<string, unknown>;
  if (type === 'export' || type === 'ready') return { type };
  if (type === 'show' && typeof offset === 'number' && typeof row === 'number') return { type, offset, row };
  if (type === 'reveal' && typeof piece === 'string' && typeof focus === 'boolean') return { type, piece, focus };
  if (type === 'size' && typeof width === 'number' && typeof height === 'number') return { type, width, height };
  return undefined;
}
