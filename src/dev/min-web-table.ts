/** The table of default `min_web` values, for the guide's page on widths and the pages of the checks that use it. */

import { unnamed, webDefaults } from '../spec/model/min-web-defaults.ts';
import type { MarkdownTable } from './markdown-table.ts';

/** Paths from the root of the project. */
export const filesWithWebTable: readonly string[] = [
  'strength',
  ...['weak-bridge', 'thin-stroke', 'hanger-weak', 'hole-near-edge'].map((code) => `problems/${code}`),
].map((page) => `src/guide/${page}.md`);

export function webTable(): MarkdownTable {
  const materials = new Map([...webDefaults, unnamed].map((each) => [each.material, each]));
  // The row for an unnamed material comes last.
  materials.delete(unnamed.material);
  return {
    header: ['`material` of the `stock`', '`min_web`', 'never below', 'basis'],
    rows: [...materials.values(), unnamed].map(({ material, web, least, basis }) => [
      material,
      `${web} mm`,
      `${least} mm`,
      basis,
    ]),
  };
}
