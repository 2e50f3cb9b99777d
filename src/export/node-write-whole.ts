/** Files of this computer, written all or not at all: a machine must never be handed half a path. */

import { rename, rm, writeFile } from 'node:fs/promises';

/** Under another name first, which then takes the place of what was there, in one step of the system. */
export async function writeWhole(target: string, content: string | Uint8Array): Promise<void> {
  const partial = `${target}.${process.pid}.part`;
  try {
    await writeFile(partial, content, { flag: 'wx' });
    await rename(partial, target);
  } catch (error) {
    await rm(partial, { force: true });
    throw error;
  }
}
