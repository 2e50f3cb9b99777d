/** Plain values, as YAML gives them. */

import type { YamlPath } from './issue.ts';
import type { Units } from './units.ts';

export function isGroup(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** The value at a path, or `undefined` if there is none. Inherited properties, such as `constructor`, do not count. */
export function valueAt(root: unknown, path: YamlPath): unknown {
  return path.reduce<unknown>((value, step) => {
    return typeof value === 'object' && value !== null && Object.hasOwn(value, step)
      ? (value as Readonly<Record<string | number, unknown>>)[step]
      : undefined;
  }, root);
}

export function samePath(a: YamlPath, b: YamlPath): boolean {
  return a.length === b.length && isWithin(a, b);
}

/** Whether a path is `whole`, or leads to something in it. */
export function isWithin(path: YamlPath, whole: YamlPath): boolean {
  return whole.every((step, index) => path[index] === step);
}

/** The unit of bare numbers in a spec, or in a file it uses. */
export function unitsOf(spec: unknown): Units {
  return valueAt(spec, ['units']) === 'in' ? 'in' : 'mm';
}
