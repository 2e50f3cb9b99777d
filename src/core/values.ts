/** Plain values, as YAML gives them. */

import type { YamlPath } from './issue.ts';
import type { Units } from './units.ts';

export function isGroup(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** `undefined` where there is nothing. What objects have of themselves, such as `constructor`, is nothing. */
export function valueAt(root: unknown, path: YamlPath): unknown {
  return path.reduce<unknown>((value, step) => {
    return typeof value === 'object' && value !== null && Object.hasOwn(value, step)
      ? (value as Readonly<Record<string | number, unknown>>)[step]
      : undefined;
  }, root);
}

/** What bare numbers of a spec, or of a file it uses, are in. */
export function unitsOf(spec: unknown): Units {
  return valueAt(spec, ['units']) === 'in' ? 'in' : 'mm';
}
