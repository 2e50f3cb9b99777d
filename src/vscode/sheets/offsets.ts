/** Offsets of values and table rows in the present text. */

import type { YamlPath } from '../../core/issue.ts';
import { SpecSource } from '../../spec/yaml/source.ts';
import { parseTable } from '../../spec/files/table.ts';

/** Offset of a value's key in YAML; `undefined` if the text is not YAML. */
export function offsetOf(text: string, path: YamlPath): number | undefined {
  const source = new SpecSource(text);
  return source.value === undefined ? undefined : source.keyRange(path).start;
}

/** Offset of a line of a table. */
export function rowStart(text: string, line: number): number | undefined {
  const table = parseTable(text);
  return 'problem' in table ? undefined : table.places().cell(line, 0).start;
}

/** Line of the table row that contains the offset; a row may span several lines. */
export function rowAt(text: string, offset: number): number | undefined {
  const table = parseTable(text);
  if ('problem' in table) return undefined;
  const places = table.places();
  return table.rows.findLast(({ line }) => places.cell(line, 0).start <= offset)?.line;
}
