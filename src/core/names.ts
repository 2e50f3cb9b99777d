/** Lists of names as people read them, and names that are free. */

/** “Sorrel, Rue and Dill”; of more than `most`, “Sorrel, Rue and 4 more”. One over is named, as its name is no longer than that. */
export function listed(names: readonly string[], most = Infinity): string {
  const more = names.length - most;
  if (more > 1) return `${names.slice(0, most).join(', ')} and ${more} more`;
  return [names.slice(0, -1).join(', '), ...names.slice(-1)].filter((part) => part !== '').join(' and ');
}

/** The name, or with a number behind it: the first that is not taken. */
export function freeName(wanted: string, isTaken: (name: string) => boolean, joint = ''): string {
  let name = wanted;
  for (let count = 2; isTaken(name); count++) name = `${wanted}${joint}${count}`;
  return name;
}
