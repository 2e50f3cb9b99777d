/** Variants of a spec's value: copies with one part changed. */

import type { YamlPath } from '../core/issue.ts';
import { isGroup, valueAt } from '../core/values.ts';

/** A copy with this value at `path`; only the groups along the path are copied, and missing ones are created. */
export function withValue(root: unknown, path: YamlPath, value: unknown): unknown {
  const [step, ...rest] = path;
  if (step === undefined) return value;
  const inner = withValue(valueAt(root, [step]), rest, value);
  if (Array.isArray(root))
    return typeof step === 'number' ? Object.assign([...(root as unknown[])], { [step]: inner }) : root;
  // A key always belongs to the file, even one with a meaning on JavaScript objects.
  return Object.fromEntries([
    ...Object.entries(isGroup(root) ? root : {}).filter(([key]) => key !== step),
    [step, inner],
  ]);
}

/** A copy without the value at `path`; list entries keep their positions. */
export function without(root: unknown, path: YamlPath): unknown {
  const last = path.at(-1);
  const parentPath = path.slice(0, -1);
  const parent = valueAt(root, parentPath);
  if (last === undefined) return undefined;
  if (Array.isArray(parent)) return withValue(root, path, undefined);
  if (!isGroup(parent)) return root;
  return withValue(root, parentPath, Object.fromEntries(Object.entries(parent).filter(([key]) => key !== last)));
}
