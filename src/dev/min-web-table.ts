/** The table of what `min_web` is where it is left out, written into the README and the pages of the checks that go by it. */

import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { unnamed, webDefaults } from '../spec/min-web-defaults.ts';

/** From the root of the project. */
export const filesWithWebTable: readonly string[] = [
  'README.md',
  ...['weak-bridge', 'thin-stroke', 'hanger-weak', 'hole-near-edge'].map((code) => `src/guide/problems/${code}.md`),
];

const header = ['`material` of the `stock`', '`min_web`', 'never below', 'basis'];

/** In Markdown, its columns aligned. */
export function webTable(): string {
  const rows = new Map([...webDefaults, unnamed].map((each) => [each.material, each]));
  // What is named by nothing in particular comes last.
  rows.delete(unnamed.material);
  const cells = [...rows.values(), unnamed].map(({ material, web, least, basis }) => [
    material,
    `${web} mm`,
    `${least} mm`,
    basis,
  ]);
  const widths = header.map((name, column) => Math.max(name.length, ...cells.map((row) => row[column]!.length)));
  const line = (row: readonly string[], fill: string): string =>
    `| ${row.map((cell, column) => cell.padEnd(widths[column]!, fill)).join(' | ')} |`;
  return [
    line(header, ' '),
    line(
      widths.map(() => ''),
      '-',
    ),
    ...cells.map((row) => line(row, ' ')),
  ].join('\n');
}

/** In place of the table that is there. */
export function writeWebTables(root: string): void {
  for (const name of filesWithWebTable) {
    const file = join(root, name);
    const text = readFileSync(file, 'utf8');
    const lines = text.split('\n');
    const start = lines.findIndex((each) => each.startsWith(`| ${header[0]!}`));
    if (start < 0) throw new Error(`${name} has no table of min_web to bring up to date.`);
    let end = start;
    while (lines[end]?.startsWith('|')) end += 1;
    const written = [...lines.slice(0, start), webTable(), ...lines.slice(end)].join('\n');
    if (written !== text) writeFileSync(file, written);
  }
}
