/** Prints the command line's results for the samples as a table. */

import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';

/** The part of `tagwright check --json` that the table shows; lengths in mm. */
interface CheckedFile {
  file: string;
  pieces: { bounds: [number, number, number, number]; parts: number }[];
  issues: { severity: string; code: string }[];
}

/** In the order of the numbers that their names begin with. */
export function specsIn(folder: string): string[] {
  const names = readdirSync(folder).filter((name) => name.endsWith('.tag.yaml'));
  return names.sort((a, b) => a.localeCompare(b, 'en', { numeric: true }));
}

/** Throws if the command line itself fails; problems in a spec are a result like any other. */
export function checkedTable(cli: string, folder: string): string {
  const args = [cli, 'check', ...specsIn(folder), '--json', '--no-fixes'];
  const { stdout, stderr } = spawnSync(process.execPath, args, { cwd: folder, encoding: 'utf8' });
  if (!stdout.startsWith('[')) throw new Error(`Checking the samples failed: ${stdout}${stderr}`);
  const files = JSON.parse(stdout) as CheckedFile[];
  return table([
    ['sample', 'size, mm', 'pieces', 'parts', 'problems'],
    ...files.map(({ file, pieces, issues }) => [
      file,
      size(pieces.map((piece) => piece.bounds)),
      String(pieces.length),
      String(pieces.reduce((sum, piece) => sum + piece.parts, 0)),
      problems(issues.map((issue) => issue.code)),
    ]),
  ]);
}

function size(bounds: CheckedFile['pieces'][number]['bounds'][]): string {
  if (bounds.length === 0) return '—';
  const reach = (side: 0 | 1): number =>
    Math.max(...bounds.map((box) => box[side === 0 ? 2 : 3])) - Math.min(...bounds.map((box) => box[side]));
  return `${reach(0).toFixed(1)} × ${reach(1).toFixed(1)}`;
}

function problems(codes: string[]): string {
  if (codes.length === 0) return 'none';
  const counts = new Map<string, number>();
  for (const code of codes) counts.set(code, (counts.get(code) ?? 0) + 1);
  return [...counts].map(([code, count]) => (count > 1 ? `${code} (${count})` : code)).join(', ');
}

function table(rows: string[][]): string {
  const widths = rows[0]!.map((_, column) => Math.max(...rows.map((row) => row[column]!.length)));
  return rows
    .map((row) => `  ${row.map((cell, column) => cell.padEnd(widths[column]!)).join('  ')}`.trimEnd())
    .join('\n');
}

export const samplesFolder = join(import.meta.dirname, '..', '..', 'samples');
