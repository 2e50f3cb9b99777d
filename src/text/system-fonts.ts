/** The fonts installed on the computer, by family. */

import type { FontFiles } from './font-files.ts';
import { describeFont, descriptiveTables } from './font-description.ts';
import type { FontStyle } from './font-match.ts';
import { scanTables } from './sfnt.ts';

export interface SystemFace extends FontStyle {
  readonly path: string;
  /** Index of the face in a collection. */
  readonly index: number;
  readonly family: string;
}

export interface SystemFonts {
  /** By any name of the family, in lower case. */
  readonly byName: ReadonlyMap<string, readonly SystemFace[]>;
  /** As the fonts spell them, sorted. */
  readonly families: readonly string[];
}

/** Number of concurrent reads: enough to keep a disk busy, not so many as to run out of open files. */
const readsAtOnce = 8;

/**
 * Reads the names of every installed font, and no more of each file. Files that are not sound fonts are skipped: nobody
 * asked for them by name.
 */
export async function indexSystemFonts(files: FontFiles): Promise<SystemFonts> {
  const paths = [...(await files.systemFonts())].sort();
  const found: (readonly NamedFace[])[] = [];
  let next = 0;
  const worker = async (): Promise<void> => {
    while (next < paths.length) {
      const i = next++;
      found[i] = await facesOf(files, paths[i]!).catch(() => []);
    }
  };
  await Promise.all(Array.from({ length: readsAtOnce }, worker));
  const byName = new Map<string, SystemFace[]>();
  for (const face of found.flat()) {
    for (const name of face.names) {
      const key = name.toLowerCase();
      byName.set(key, [...(byName.get(key) ?? []), face]);
    }
  }
  const families = [...new Set(found.flat().map((face) => face.family))].sort((a, b) => a.localeCompare(b, 'en'));
  return { byName, families };
}

interface NamedFace extends SystemFace {
  readonly names: readonly string[];
}

async function facesOf(files: FontFiles, path: string): Promise<NamedFace[]> {
  const read = (start: number, end: number): Promise<Uint8Array> => files.read(path, { start, end });
  return (await scanTables(read, descriptiveTables))
    .map((tables, index) => {
      const { family, families, weight, weightAxis, italic, width } = describeFont(tables);
      return { path, index, family, names: families, weight: weightAxis ?? weight, italic, width };
    })
    .filter(({ family }) => family !== '' && !family.startsWith('.'));
}
