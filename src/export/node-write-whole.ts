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

/** Several files at once: none of them has its name before all of them are written. */
export async function writeAllWhole(files: ReadonlyMap<string, string | Uint8Array>): Promise<void> {
  const partials: { readonly partial: string; readonly target: string }[] = [];
  try {
    for (const [target, content] of files) {
      const partial = `${target}.${process.pid}.part`;
      partials.push({ partial, target });
      await writeFile(partial, content, { flag: 'wx' });
    }
    for (const { partial, target } of partials) await rename(partial, target);
  } catch (error) {
    for (const { partial } of partials) await rm(partial, { force: true });
    throw error;
  }
}
