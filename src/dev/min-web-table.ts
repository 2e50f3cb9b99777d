/** The table of what `min_web` is where it is left out, written into the README and the pages of the checks that go by it. */

import { join } from 'node:path';
import { unnamed, webDefaults } from '../spec/min-web-defaults.ts';
import { markdownTable, writeTable } from './markdown-table.ts';

/** From the root of the project. */
export const filesWithWebTable: readonly string[] = [
  'README.md',
  ...['weak-bridge', 'thin-stroke', 'hanger-weak', 'hole-near-edge'].map((code) => `src/explanations/${code}.md`),
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
  return markdownTable(header, cells);
}

/** In place of the table that is there. */
export function writeWebTables(root: string): void {
  for (const name of filesWithWebTable) writeTable(join(root, name), webTable());
}
