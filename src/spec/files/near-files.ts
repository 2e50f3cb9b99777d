/** Suggestions for a file that does not exist. */

import { isFontFile } from '../../text/font-files.ts';
import { nearestWords } from '../schema/suggest.ts';

/** The files with the same ending and the nearest names, or else the only one with it; folders stay as written. */
export function nearFiles(name: string, beside: readonly string[]): string[] {
  const folder = name.slice(0, Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
  const wanted = name.slice(folder.length);
  const endings = [/\.[^.]+\.[^.]+$/, /\.[^.]+$/].flatMap((pattern) => pattern.exec(wanted)?.[0].toLowerCase() ?? []);
  const kinds = endings.map((ending) => beside.filter((each) => each.toLowerCase().endsWith(ending)));
  const sameKind = kinds.find((files) => files.length > 0) ?? [];
  // Without their endings, which would make short names alike.
  const stems = new Map(sameKind.map((each) => [stemOf(each), each]));
  const near = nearestWords(stemOf(wanted), [...stems.keys()]).map((stem) => stems.get(stem)!);
  const found = near.length > 0 || sameKind.length !== 1 ? near : sameKind;
  return found.map((each) => folder + each);
}

/** Font files that begin as a font or a font file is called: “dancing-script-700.woff” for “Dancing Script”. Nearest first. */
export function fontFilesFor(name: string, beside: readonly string[]): string[] {
  const wanted = lettersIn(isFontFile(name) ? stemOf(name) : name);
  const found = beside.filter((each) => isFontFile(each) && wanted !== '' && lettersIn(each).startsWith(wanted));
  return found.sort((one, other) => one.length - other.length || (one < other ? -1 : 1)).slice(0, 3);
}

function lettersIn(name: string): string {
  return name.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');
}

/** “sorrel” of “sorrel.tag.yaml”. */
function stemOf(name: string): string {
  return name.replace(/(?<=.)\.[^.]+(\.[^.]+)?$/, '');
}
