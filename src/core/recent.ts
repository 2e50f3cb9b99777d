/** What was last made of a few texts, for as long as the same texts come again: each row of a batch reads the same spec. */

export function recent<T>(most: number, make: (text: string) => T): (text: string) => T {
  const known = new Map<string, T>();
  return (text) => {
    const made = known.has(text) ? known.get(text)! : make(text);
    // Moved to the end: a Map hands out its oldest entry first.
    known.delete(text);
    known.set(text, made);
    if (known.size > most) known.delete(known.keys().next().value!);
    return made;
  };
}
