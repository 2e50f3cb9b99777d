/** Where things stand in a text as it is now. */

import type { YamlPath } from '../../core/issue.ts';
import { SpecSource } from '../../spec/source.ts';
import { parseTable } from '../../spec/table.ts';

/** Of a value in YAML; `undefined` where the text is none. */
export function offsetOf(text: string, path: YamlPath): number | undefined {
  const source = new SpecSource(text);
  return source.value === undefined ? undefined : source.keyRange(path).start;
}

/** Of a line of a table. */
export function rowStart(text: string, line: number): number | undefined {
  const table = parseTable(text);
  return 'problem' in table ? undefined : table.places().cell(line, 0).start;
}

/** The line of the table whose row holds the offset; rows may run over several. */
export function rowAt(text: string, offset: number): number | undefined {
  const table = parseTable(text);
  if ('problem' in table) return undefined;
  const places = table.places();
  return table.rows.findLast(({ line }) => places.cell(line, 0).start <= offset)?.line;
}
