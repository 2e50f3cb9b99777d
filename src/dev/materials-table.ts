/** The table of materials in the guide's page on loads: the known values of each, with sources. */

import { sourceOf } from '../strength/material.ts';
import type { SourcedValue } from '../strength/material.ts';
import { materialNames, materialOf } from '../strength/materials.ts';
import { rewrite, withTable } from './markdown-table.ts';
import type { MarkdownTable } from './markdown-table.ts';

export const loadPage = 'src/guide/what-a-hanger-bears.md';

/** Strengths are for a sheet of 3 mm; sources are numbered in order of appearance. */
const thicknessMm = 3;

export function materialsTable(): { readonly materials: MarkdownTable; readonly sources: MarkdownTable } {
  const sources: string[] = [];
  const cell = (figure: SourcedValue | undefined, unit = ''): string => {
    if (!figure) return '–';
    const source = sourceOf(figure);
    if (!sources.includes(source)) sources.push(source);
    return `${Number(figure.value.toPrecision(3))}${unit} (${sources.indexOf(source) + 1})`;
  };
  const rows = materialNames.map((name) => {
    const { density, strengths, lasting } = materialOf(name)!;
    const { along, across, shear } = strengths?.(thicknessMm) ?? {};
    return [
      name,
      cell(density),
      cell(along),
      along && across === along ? 'the same' : cell(across),
      cell(shear),
      lasting?.is === 'limit' ? cell(lasting, ' MPa') : cell(lasting && asPercent(lasting), ' %'),
    ];
  });
  return {
    materials: { header: ['material', 'kg/m³', 'along', 'across', 'shear', 'lasting pull'], rows },
    sources: { header: ['no.', 'from'], rows: sources.map((source, index) => [`(${index + 1})`, source]) },
  };
}

const asPercent = (figure: SourcedValue): SourcedValue => ({ ...figure, value: 100 * figure.value });

export function writeMaterialsTables(root: string): void {
  const { materials, sources } = materialsTable();
  rewrite(root, loadPage, (text) => withTable(withTable(text, materials), sources));
}
