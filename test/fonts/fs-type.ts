/** A font whose embedding bits (OS/2 `fsType`, OpenType specification) are set to a value, whatever its maker says. */

import { readTables, writeSfnt } from '../../src/text/sfnt.ts';

export function withFsType(bytes: Uint8Array, fsType: number): Uint8Array {
  const tables = new Map(readTables(bytes));
  const os2 = Uint8Array.from(tables.get('OS/2')!);
  new DataView(os2.buffer).setUint16(8, fsType);
  tables.set('OS/2', os2);
  return writeSfnt(tables);
}
