/**
 * All names of the bench as they come out, for a person to look over: `npm run names`. A page a face in `test/artefacts/`;
 * letters as they stand in black, what joins them and growth in grey; necks that are left, red.
 */

import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import { boundsOf } from '../../src/geometry/measure.ts';
import type { Region } from '../../src/geometry/types.ts';
import { nameFaces } from './faces.ts';
import type { Held } from './joined.ts';
import { heldName, minWebMm, overlapMm, xHeightMm } from './joined.ts';
import { firstNames } from './names.ts';

const folder = new URL('../artefacts/', import.meta.url).pathname;
const [cellWidth, cellHeight, columns, rows] = [95, 50, 5, 10];

const [, , only = '', list] = process.argv;
const names = list?.split(',') ?? firstNames;

function pathOf(region: Region): string {
  return region.map((ring) => `M${ring.map(({ x, y }) => `${x.toFixed(2)} ${(-y).toFixed(2)}`).join('L')}Z`).join('');
}

function cell(name: string, { region, letters, share, parts, necks }: Held, index: number): string {
  const box = boundsOf(region)!;
  const [column, row] = [index % columns, Math.floor(index / columns)];
  const scale = Math.min(1, (cellWidth - 6) / (box.maxX - box.minX), (cellHeight - 10) / (box.maxY - box.minY));
  const [x, y] = [(column + 0.5) * cellWidth, (row + 0.5) * cellHeight - 2];
  const [cx, cy] = [(box.minX + box.maxX) / 2, -(box.minY + box.maxY) / 2];
  const marks = necks.map(({ ends: [a, b] }) => `M${a.x} ${-a.y}L${b.x} ${-b.y}`).join('');
  const fault = parts > 1 ? ` ${parts} parts` : '';
  return (
    `<g transform="translate(${x} ${y}) scale(${scale}) translate(${-cx} ${-cy})">` +
    `<path d="${pathOf(region)}" fill="#999" fill-rule="evenodd"/>` +
    letters.map((letter) => `<path d="${pathOf(letter.region)}" fill="#222" fill-rule="evenodd"/>`).join('') +
    `<path d="${marks}" stroke="red" stroke-width="0.8"/></g>` +
    `<text x="${x}" y="${(row + 1) * cellHeight - 2}" font-size="4" text-anchor="middle" font-family="DejaVu Sans" fill="${parts > 1 ? 'red' : '#369'}">${name} +${share.toFixed(2)}${fault}</text>`
  );
}

mkdirSync(folder, { recursive: true });
for (const face of nameFaces) {
  if (!face.name.includes(only)) continue;
  const opened = await face.open();
  const perPage = columns * rows;
  for (let page = 0; page * perPage < names.length; page++) {
    const cells: string[] = [];
    for (const name of names.slice(page * perPage, (page + 1) * perPage)) {
      cells.push(cell(name, await heldName(opened, name, overlapMm), cells.length));
    }
    const height = Math.ceil(cells.length / columns) * cellHeight;
    const size = `viewBox="0 0 ${columns * cellWidth} ${height}"`;
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" ${size}><rect width="100%" height="100%" fill="white"/>${cells.join('')}</svg>`;
    const file = join(folder, `names-${face.name.replaceAll(' ', '-')}-${page + 1}.png`);
    writeFileSync(file, new Resvg(svg, { fitTo: { mode: 'width', value: 1900 } }).render().asPng());
    console.log(`${file}: x-height ${xHeightMm} mm, no joint under ${minWebMm} mm`);
  }
}
