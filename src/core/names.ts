/** Lists of names as people read them, and names that are not taken yet. */

/**
 * “Sorrel, Rue and Dill”; beyond `most` names, “Sorrel, Rue and 4 more”. A single name too many is still written out,
 * as it is about as short as “1 more”.
 */
export function listed(names: readonly string[], most = Infinity, joint: 'and' | 'or' = 'and'): string {
  const more = names.length - most;
  if (more > 1) return `${names.slice(0, most).join(', ')} and ${more} more`;
  return [names.slice(0, -1).join(', '), ...names.slice(-1)].filter((part) => part !== '').join(` ${joint} `);
}

/** The same in quotation marks: “Sorrel”, “Rue” and “Dill”. */
export function listedQuoted(names: readonly string[], most = Infinity): string {
  return listed(
    names.map((name) => `“${name}”`),
    most,
  );
}

/** Each once, with the number of times it occurs if that is more than one: “i” (9), “e” and “a” (2). */
export function listedWithCounts(names: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const name of names) counts.set(name, (counts.get(name) ?? 0) + 1);
  return listed([...counts].map(([name, count]) => (count > 1 ? `“${name}” (${count})` : `“${name}”`)));
}

/** “Mélamine” as “Melamine”. */
export function withoutAccents(text: string): string {
  return text.normalize('NFKD').replace(/\p{M}/gu, '');
}

/** With a capital at the beginning, as a sentence has it. */
export function capitalised(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** The name itself if it is free, else with the first number appended that makes it so. */
export function freeName(wanted: string, isTaken: (name: string) => boolean, joint = ''): string {
  let name = wanted;
  for (let count = 2; isTaken(name); count++) name = `${wanted}${joint}${count}`;
  return name;
}

/** Name of a spec’s file without its `.tag.yaml` ending. */
export function specName(fileName: string): string {
  return fileName.replace(/(\.tag)?\.ya?ml$/i, '');
}
