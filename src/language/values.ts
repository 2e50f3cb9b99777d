/** Values of a spec that are only thought of: the one that is written, with a part changed. */

import type { YamlPath } from '../core/issue.ts';
import { isGroup, valueAt } from '../core/values.ts';

/** A copy in which `path` has this value; nothing but the way there is copied. Groups that are missing are made. */
export function withValue(root: unknown, path: YamlPath, value: unknown): unknown {
  const [step, ...rest] = path;
  if (step === undefined) return value;
  const inner = withValue(valueAt(root, [step]), rest, value);
  if (Array.isArray(root))
    return typeof step === 'number' ? Object.assign([...(root as unknown[])], { [step]: inner }) : root;
  // A key is always the file's own, also one that objects have a meaning for.
  return Object.fromEntries([
    ...Object.entries(isGroup(root) ? root : {}).filter(([key]) => key !== step),
    [step, inner],
  ]);
}

/** A copy without what stands at `path`; the entries of a list keep their places. */
export function without(root: unknown, path: YamlPath): unknown {
  const last = path.at(-1);
  const parentPath = path.slice(0, -1);
  const parent = valueAt(root, parentPath);
  if (last === undefined) return undefined;
  if (Array.isArray(parent)) return withValue(root, path, undefined);
  if (!isGroup(parent)) return root;
  return withValue(root, parentPath, Object.fromEntries(Object.entries(parent).filter(([key]) => key !== last)));
}
