/** Looks up a workshop name (stock, tie or machine) in the spec or the files it uses, and describes it. */

import type { UsedFile, Uses } from '../spec/files/used-files.ts';
import { escapeMarkdown } from './hover/escape-markdown.ts';
import { isGroup, valueAt } from '../core/values.ts';

export type SharedGroup = 'stocks' | 'ties' | 'machines';

/** `undefined` if the name is not defined, or not as a map. */
export function sharedValue(
  group: SharedGroup,
  name: string,
  root: unknown,
  { used }: Pick<Uses, 'used'>,
): Readonly<Record<string, unknown>> | undefined {
  const own = valueAt(root, [group, name]);
  if (isGroup(own)) return own;
  return firstOf(used, (file) => sharedValue(group, name, file.source.value, { used: file.uses }));
}

function firstOf<T>(files: readonly UsedFile[], find: (file: UsedFile) => T | undefined): T | undefined {
  for (const file of files) {
    const found = find(file);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** For example `birch plywood, 3 mm`, `twine 2 mm`, or `cut 12 mm/s`. */
export function inShort(group: SharedGroup, value: Readonly<Record<string, unknown>>): string {
  const { material, thickness } = value;
  const keys = group === 'ties' ? (['twine', 'ribbon', 'split_ring'] as const) : (['cut', 'engrave'] as const);
  const parts =
    group === 'stocks'
      ? [material, thickness]
      : keys.map((kind) => (kind in value ? `${kind.replace('_', ' ')} ${written(value[kind])}` : undefined));
  return parts.flatMap((part) => (part === undefined ? [] : [written(part)])).join(', ');
}

/** Markdown, one item for each key; dates are shown with the values measured on them. */
export function sharedDocs(name: string, value: Readonly<Record<string, unknown>>): string {
  const { measured_on: days, ...rest } = value;
  const lines = Object.entries(rest).map(([key, each]) => {
    const day = isGroup(days) ? days[key] : key === 'opening' ? days : undefined;
    return `- ${escapeMarkdown(key)}: ${escapeMarkdown(written(each))}${day === undefined ? '' : `, measured on ${escapeMarkdown(written(day))}`}`;
  });
  return [`**${escapeMarkdown(name)}**`, lines.join('\n')].filter((part) => part !== '').join('\n\n');
}

function written(value: unknown): string {
  if (Array.isArray(value)) return value.map(written).join(' × ');
  if (!isGroup(value)) return String(value);
  return Object.entries(value)
    .map(([key, each]) => `${key} ${written(each)}`)
    .join(', ');
}
