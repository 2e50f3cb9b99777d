/** Files that are not UTF-8: what a decoder leaves in the place of letters that it could not read. */

/** What decoders put for bytes that are not UTF-8, and what UTF-16 has between the letters of English. */
const lost = /[\ufffd\0]/;

/** Offset of the first lost letter outside of comments; `undefined` without. */
export function lostLetter(text: string): number | undefined {
  if (!lost.test(text)) return undefined;
  let start = 0;
  for (const line of text.split('\n')) {
    const at = line.search(lost);
    const comment = line.search(/(?<!\S)#/);
    if (at >= 0 && (comment < 0 || at < comment)) return start + at;
    start += line.length + 1;
  }
  return undefined;
}
