/** The names of a table that `without` may leave out of a batch. */

import { isGroup, valueAt } from '../core/values.ts';
import { columnsInWords } from '../spec/batch/batch.ts';
import { namesInTable } from '../spec/read/read-batch.ts';
import type { Uses } from '../spec/files/used-files.ts';
import type { SchemaNode } from './schema.ts';

export function isLeftOutName({ title }: SchemaNode): boolean {
  return title === 'LeftOutName';
}

/** Those that are not left out yet. */
export function namesToLeaveOut(root: unknown, { table, used }: Uses): string[] {
  const batch = valueAt(root, ['batch']);
  if (!table || !isGroup(batch)) return [];
  const without = [batch['without']].flat().map((name) => String(name).trim());
  return namesInTable(table, columnsInWords({ value: root }, used)).filter((name) => !without.includes(name));
}
