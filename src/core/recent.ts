/** Remembers the results for the last `most` texts: every row of a batch reads the same spec. */

export function memoizeRecent<T>(most: number, make: (text: string) => T): (text: string) => T {
  const known = new Map<string, T>();
  return (text) => {
    const made = known.has(text) ? known.get(text)! : make(text);
    // Moved to the end: a Map iterates from its oldest entry.
    known.delete(text);
    known.set(text, made);
    if (known.size > most) known.delete(known.keys().next().value!);
    return made;
  };
}
