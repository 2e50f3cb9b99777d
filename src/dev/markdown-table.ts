/** Tables that are written into pages from the code, so that a page says what the code does. */

import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

export interface MarkdownTable {
  readonly header: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** Longest line of a table whose columns are worth aligning, in characters. */
const alignedLine = 130;

/** In Markdown, its columns aligned where that leaves lines that can be read. */
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

/** A text with the table of that header in place of the one it has. Throws where there is none. */
export function withTable(text: string, table: MarkdownTable): string {
  const lines = text.split('\n');
  const start = lines.findIndex((line) => cellsOf(line).join('|') === table.header.join('|'));
  if (start < 0) throw new Error(`There is no table with the columns ${table.header.join(', ')} to bring up to date.`);
  let end = start;
  while (lines[end]?.startsWith('|')) end += 1;
  return [...lines.slice(0, start), markdownTable(table), ...lines.slice(end)].join('\n');
}

/** Rewrites a file of the project only where that changes it, so that watchers do not run for nothing. */
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
