/** Suggestions for a file that does not exist. */

import { isFontFile } from '../../text/font-files.ts';
import { nearestWords } from '../schema/suggest.ts';

/** How the files near a spec are found. */
export interface Surroundings {
  readonly locate: (relative: string) => string | undefined;
  /** Names of the files in the folder of a file. */
  readonly beside?: ((path: string) => Promise<readonly string[]>) | undefined;
}

/** Folders that are looked into for a file that was moved. */
const mostFolders = 20;

/** What may be meant by the name of a file that is not there: one of that name in a folder near by, or else one of a similar name. */
export async function filesMeant(name: string, { locate, beside }: Surroundings): Promise<string[]> {
  const cut = Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1;
  const [folder, wanted] = [name.slice(0, cut), name.slice(cut)];
  const namesIn = async (place: string): Promise<readonly string[]> => {
    const file = locate(`${place}${wanted}`);
    return file === undefined || !beside ? [] : await beside(file).catch(() => []);
  };
  const names = await namesIn(folder);
  const within = names.filter((each) => !each.includes('.')).slice(0, mostFolders);
  const above = /(^|\/)(?!\.\.\/)[^/]+\/$/.test(folder) ? folder.replace(/[^/]+\/$/, '') : `${folder}../`;
  const places = new Set([...within.map((each) => `${folder}${each}/`), ...(folder === '' ? [] : ['']), above]);
  const moved: string[] = [];
  for (const place of places) if ((await namesIn(place)).includes(wanted)) moved.push(`${place}${wanted}`);
  // What has the very name cannot be read.
  return moved.length > 0
    ? moved
    : nearFiles(
        name,
        names.filter((each) => each !== wanted),
      );
}

/** The files with the same ending and similar names, the nearest first; folders stay as written. */
export function nearFiles(name: string, beside: readonly string[]): string[] {
  const folder = name.slice(0, Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
  const wanted = name.slice(folder.length);
  const endings = [/\.[^.]+\.[^.]+$/, /\.[^.]+$/].flatMap((pattern) => pattern.exec(wanted)?.[0].toLowerCase() ?? []);
  const kinds = endings.map((ending) => beside.filter((each) => each.toLowerCase().endsWith(ending)));
  const sameKind = kinds.find((files) => files.length > 0) ?? [];
  // Without their endings, which would make short names alike.
  const stems = new Map(sameKind.map((each) => [stemOf(each), each]));
  const near = nearestWords(stemOf(wanted), [...stems.keys()]);
  const found = near.length > 0 ? near : [...stems.keys()].filter((stem) => beginAlike(stem, stemOf(wanted)));
  return found.slice(0, mostNear).map((stem) => folder + stems.get(stem)!);
}

const mostNear = 3;

/** Whether names have their beginning in common, as “leaf” and “leaves”, “crew” and “crew-2026”. */
function beginAlike(one: string, other: string): boolean {
  const [a, b] = [one.toLowerCase(), other.toLowerCase()];
  const shorter = Math.min(a.length, b.length);
  let same = 0;
  while (same < shorter && a[same] === b[same]) same++;
  return same >= 3 && 2 * same >= shorter;
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
