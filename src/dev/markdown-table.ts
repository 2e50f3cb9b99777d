/** Tables in Markdown that are written from the code, so that pages and code cannot part. */

import { readFileSync, writeFileSync } from 'node:fs';

/** Its columns aligned. */
export function markdownTable(header: readonly string[], rows: readonly (readonly string[])[]): string {
  const widths = header.map((name, column) => Math.max(name.length, ...rows.map((row) => row[column]!.length)));
  const line = (row: readonly string[], fill: string): string =>
    `| ${row.map((cell, column) => cell.padEnd(widths[column]!, fill)).join(' | ')} |`;
  return [
    line(header, ' '),
    line(
      widths.map(() => ''),
      '-',
    ),
    ...rows.map((row) => line(row, ' ')),
  ].join('\n');
}

/** In place of the table in the file whose first column has the same heading. */
export function writeTable(file: string, table: string): void {
  const text = readFileSync(file, 'utf8');
  const lines = text.split('\n');
  const heading = table.slice(0, table.indexOf('|', 1)).trimEnd();
  const start = lines.findIndex((each) => each.startsWith(heading));
  if (start < 0) throw new Error(`${file} has no table “${heading}” to bring up to date.`);
  let end = start;
  while (lines[end]?.startsWith('|')) end += 1;
  const written = [...lines.slice(0, start), table, ...lines.slice(end)].join('\n');
  if (written !== text) writeFileSync(file, written);
}
