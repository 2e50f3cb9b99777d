/** Tiles in rows on pages, as pictures. */

import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import { movedUp, PageBuilder } from '../../src/export/page/page.ts';
import { pageSvg } from '../../src/export/page/page-svg.ts';
import type { Tile } from './tile.ts';

const gutterMm = 8;
const marginMm = 8;

/** A page is about so high before the next one begins. */
const fullMm = 330;

/** Pixels a mm: a line of 0.1 mm is still seen. */
const resolution = 6;

/** Writes pictures named `name-1.png` and so on; each row stays together. */
export function writeSheets(
  folder: string,
  name: string,
  rows: readonly (readonly Tile[])[],
  tileMm: number,
): string[] {
  mkdirSync(folder, { recursive: true });
  const pages: (readonly Tile[])[][] = [];
  let high = Infinity;
  for (const row of rows) {
    const height = heightOf(row);
    if (high + height > fullMm) {
      pages.push([]);
      high = 0;
    }
    pages.at(-1)!.push(row);
    high += height;
  }
  return pages.map((page, i) => {
    const path = join(folder, `${name}-${i + 1}.png`);
    writeFileSync(path, pictureOf(page, tileMm));
    return path;
  });
}

function heightOf(row: readonly Tile[]): number {
  return Math.max(...row.map(({ height }) => height)) + gutterMm;
}

function pictureOf(rows: readonly (readonly Tile[])[], tileMm: number): Uint8Array {
  const page = new PageBuilder();
  const columns = Math.max(...rows.map((row) => row.length));
  const width = 2 * marginMm + columns * tileMm + (columns - 1) * gutterMm;
  let y = -marginMm;
  for (const row of rows) {
    row.forEach((tile, column) => {
      tile.draw(page, marginMm + column * (tileMm + gutterMm), y);
    });
    y -= heightOf(row);
  }
  const svg = pageSvg(movedUp(page.page(width, -y), -y));
  const options = { fitTo: { mode: 'zoom', value: (resolution * 25.4) / 96 }, background: '#FFFFFF' } as const;
  return new Resvg(svg, { ...options, font: { loadSystemFonts: false } }).render().asPng();
}
