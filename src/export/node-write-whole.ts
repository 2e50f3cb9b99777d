/** Writes files atomically: a machine must never be given half a path. */

import { rename, rm, stat, writeFile } from 'node:fs/promises';

/** Writes to a temporary name first, then replaces the target in one step. */
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

/** Writes several files; none gets its final name until all have been written. */
export async function writeAllWhole(files: ReadonlyMap<string, string | Uint8Array>): Promise<void> {
  const partials: { readonly partial: string; readonly target: string }[] = [];
  try {
    for (const [target, content] of files) {
      const partial = `${target}.${process.pid}.part`;
      partials.push({ partial, target });
      await writeFile(partial, content, { flag: 'wx' });
    }
    for (const { target } of partials) await refuseFolder(target);
    for (const { partial, target } of partials) await rename(partial, target);
  } catch (error) {
    for (const { partial } of partials) await rm(partial, { force: true });
    throw error;
  }
}

/** A folder in the place of one file would let those before it through. */
async function refuseFolder(target: string): Promise<void> {
  const found = await stat(target).catch(() => undefined);
  if (!found?.isDirectory()) return;
  throw Object.assign(new Error(`${target} is a folder; nothing was written.`), { code: 'EISDIR' });
}
