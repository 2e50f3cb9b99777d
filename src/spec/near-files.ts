/** Suggestions for a file that does not exist. */

import { nearestWords } from './suggest.ts';

/** The files with the same ending and the nearest names, or else the only one with it; folders stay as written. */
export function nearFiles(name: string, beside: readonly string[]): string[] {
  const folder = name.slice(0, Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
  const ending = /\.[^.]+$/.exec(name)?.[0].toLowerCase() ?? '';
  const sameKind = beside.filter((each) => each.toLowerCase().endsWith(ending));
  const near = nearestWords(name.slice(folder.length), sameKind);
  const found = near.length > 0 || sameKind.length !== 1 ? near : sameKind;
  return found.map((each) => folder + each);
}
