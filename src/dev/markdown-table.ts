/** Markdown tables generated from the code into pages, so that they stay true. */

import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

export interface MarkdownTable {
  readonly header: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** Longest line, in characters, for which a table's columns are aligned. */
const alignedLine = 130;

/** Columns are aligned if the lines stay readable. */
export function markdownTable({ header, rows }: MarkdownTable): string {
  const cells = rows.map((row) => row.map((cell) => cell.replaceAll('|', '\\|')));
  const widest = header.map((name, column) => Math.max(name.length, ...cells.map((row) => row[column]!.length)));
  const isAligned = widest.reduce((sum, width) => sum + width + 3, 1) <= alignedLine;
  const widths = isAligned ? widest : header.map(() => 3);
  const line = (row: readonly string[], fill: string): string =>
    `| ${row.map((cell, column) => cell.padEnd(widths[column]!, fill)).join(' | ')} |`;
  const rule = header.map(() => '');
  return [line(header, ' '), line(rule, '-'), ...cells.map((row) => line(row, ' '))].join('\n');
}

/** Replaces the table with the same header in a text. Throws if there is none. */
export function withTable(text: string, table: MarkdownTable): string {
  const lines = text.split('\n');
  const start = lines.findIndex((line) => cellsOf(line).join('|') === table.header.join('|'));
  if (start < 0) throw new Error(`There is no table with the columns ${table.header.join(', ')} to bring up to date.`);
  let end = start;
  while (lines[end]?.startsWith('|')) end += 1;
  return [...lines.slice(0, start), markdownTable(table), ...lines.slice(end)].join('\n');
}

/** Rewrites a file of the project only if its text changes, so that watchers are not triggered for nothing. */
export function rewrite(root: string, file: string, change: (text: string) => string): void {
  const path = join(root, file);
  const text = readFileSync(path, 'utf8');
  const changed = change(text);
  if (changed !== text) writeFileSync(path, changed);
}

function cellsOf(line: string): string[] {
  return line.startsWith('|')
    ? line
        .split('|')
        .slice(1, -1)
        .map((cell) => cell.trim())
    : [];
}
