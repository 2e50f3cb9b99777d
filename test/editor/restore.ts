/** Makes a folder equal to another again, touching only what differs: whoever watches it is told of nothing else. */

import { cp, readdir, readFile, rm } from 'node:fs/promises';
import { join } from 'node:path';

export async function restore(folder: string, original: string): Promise<void> {
  const [there, wanted] = await Promise.all([folder, original].map((path) => readdir(path)));
  for (const name of there!) if (!wanted!.includes(name)) await rm(join(folder, name), { recursive: true });
  for (const name of wanted!) {
    const [at, from] = [join(folder, name), join(original, name)];
    if (!(await isSame(at, from))) await cp(from, at, { recursive: true, force: true });
  }
}

/** Folders are never taken for the same. */
async function isSame(one: string, other: string): Promise<boolean> {
  try {
    return (await readFile(one)).equals(await readFile(other));
  } catch {
    return false;
  }
}
