/** Files that may be meant where the one that is named is not there. */

import { nearest } from './suggest.ts';

/** The nearest by name among those of its kind; else the only one of its kind. With the folder that was written. */
export function nearFiles(name: string, beside: readonly string[]): string[] {
  const folder = name.slice(0, Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
  const ending = /\.[^.]+$/.exec(name)?.[0].toLowerCase() ?? '';
  const kin = beside.filter((each) => each.toLowerCase().endsWith(ending));
  const near = nearest(name.slice(folder.length), kin);
  const found = near.length > 0 || kin.length !== 1 ? near : kin;
  return found.map((each) => folder + each);
}
