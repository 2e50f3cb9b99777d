import type { YamlPath } from '../core/issue.ts';
import type { SpecSource } from '../spec/source.ts';

/** What the text has at a path, aliases followed; `undefined` where it has nothing. */
export function valueAt({ value }: SpecSource, path: YamlPath): unknown {
  return path.reduce<unknown>(
    (at, step) => (typeof at === 'object' && at !== null ? (at as Record<string | number, unknown>)[step] : undefined),
    value,
  );
}
