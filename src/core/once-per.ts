/** Memo by object: what is worked out for it is kept as long as the object is. */

export function oncePer<K extends object, T>(work: (key: K) => T): (key: K) => T {
  const known = new WeakMap<K, { readonly result: T }>();
  return (key) => {
    let found = known.get(key);
    if (!found) known.set(key, (found = { result: work(key) }));
    return found.result;
  };
}
