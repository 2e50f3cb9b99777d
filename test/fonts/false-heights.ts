/** A font that says other heights of its small letters and capitals (OS/2 `sxHeight` and `sCapHeight`, OpenType specification) than it has. */

import { readTables, writeSfnt } from '../../src/text/sfnt.ts';

export function withHeights(bytes: Uint8Array, xHeight: number, capHeight: number): Uint8Array {
  const tables = new Map(readTables(bytes));
  const os2 = Uint8Array.from(tables.get('OS/2')!);
  const view = new DataView(os2.buffer);
  view.setInt16(86, xHeight);
  view.setInt16(88, capHeight);
  tables.set('OS/2', os2);
  return writeSfnt(tables);
}
