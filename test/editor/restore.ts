/** Makes a folder equal to another again, touching only what differs: whoever watches it is told of nothing else. */

import { cp, readdir, readFile, rm } from 'node:fs/promises';
import { join } from 'node:path';

export async function restore(folder: string, original: string): Promise<void> {
  const [there, wanted] = await Promise.all([entriesOf(folder), entriesOf(original)]);
  for (const name of there.keys()) if (!wanted.has(name)) await rm(join(folder, name), { recursive: true });
  for (const [name, { isFolder }] of wanted) {
    const [at, from] = [join(folder, name), join(original, name)];
    if (isFolder && there.get(name)?.isFolder) await restore(at, from);
    else if (isFolder || !(await isSame(at, from))) await cp(from, at, { recursive: true, force: true });
  }
}

async function entriesOf(folder: string): Promise<Map<string, { readonly isFolder: boolean }>> {
  const entries = await readdir(folder, { withFileTypes: true });
  return new Map(entries.map((entry) => [entry.name, { isFolder: entry.isDirectory() }]));
}

async function isSame(one: string, other: string): Promise<boolean> {
  try {
    return (await readFile(one)).equals(await readFile(other));
  } catch {
    return false;
  }
}
