/**
 * The picture of generators in the guide's reference, drawn from small specs; `npm run shape-pictures` renews it. A
 * test checks that it is up to date.
 */

import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { boundsOf } from '../geometry/measure.ts';
import type { Line } from '../geometry/types.ts';
import { Engine } from '../engine/engine.ts';
import { pathData } from '../scene/path-data.ts';
import { nodeFontFiles } from '../text/node-font-files.ts';
import { shapesPicture } from './shapes-picture.ts';
import type { Piece } from '../tag/tag.ts';

interface Example {
  /** Caption below the picture, as the spec names it. */
  readonly name: string;
  readonly shapes: string;
  readonly piece: string;
}

const plainExample = (name: string, value: string): Example => ({
  name,
  shapes: `a: {${name}: ${value}}`,
  piece: 'body: a',
});
const plate = 'plate: {rectangle: [40, 26], radius: 3}';

const examples: readonly Example[] = [
  plainExample('rectangle', '[40, 26], radius: 5'),
  plainExample('ellipse', '[40, 26]'),
  plainExample('oval', '{size: [40, 28], exponent: 3}'),
  plainExample('polygon', '{sides: 6, across: 30}'),
  plainExample('heart', '32'),
  plainExample('house', '{size: [32, 30], roof: 12, eaves: 3}'),
  plainExample('arrow', '{length: 40, width: 22, shaft: 12, tail: notched}'),
  plainExample('label', '{size: [40, 22], end: left}'),
  plainExample('ticket', '{size: [40, 24], bite: 5}'),
  plainExample('scallops', '{size: [40, 28], lobe: 5}'),
  {
    name: 'stack',
    shapes:
      'neck: {rectangle: [14, 10], radius: 3}, body: {rectangle: [40, 20], radius: 3}, a: {stack: {shapes: [neck, body]}}',
    piece: 'body: a',
  },
  {
    name: 'around',
    shapes: 'word: {heart: 20}, a: {around: word, by: 4}',
    piece: 'body: a, engrave: [word]',
  },
  {
    name: 'border',
    shapes: `${plate}, a: {border: {of: plate, inset: 2.5, width: 0.8}}`,
    piece: 'body: plate, engrave: [a], hanger: {hole: {at: top, inset: 4}}',
  },
  {
    name: 'repeat',
    shapes: `${plate}, dot: {circle: 3}, a: {repeat: {shape: dot, along: {outline: plate, inset: 4}, spacing: 7}}`,
    piece: 'body: plate, cut: [a]',
  },
  {
    name: 'stick',
    shapes: 'plate: {ellipse: [26, 16]}, a: {stick: {carries: plate, length: 17, width: 4}}',
    piece: 'body: [plate, a]',
  },
  { name: 'keyhole', shapes: plate, piece: 'body: plate, hanger: {keyhole: top}' },
  { name: 'code', shapes: `${plate}, a: {code: dill, size: 16, place: plate}`, piece: 'body: plate, engrave: [a]' },
  {
    name: 'path, lines: true',
    shapes: `${plate}, a: {path: "M0 14 C8 4 18 0 30 0 M5 9 C4 6 5 3 7 0 M12 4 C12 1 14 -2 17 -4 M9 6 C13 8 17 8 20 6 M17 3 C20 4 23 4 26 2", lines: true, place: plate}`,
    piece: 'body: plate, score: [a]',
  },
  {
    name: 'font: single line',
    shapes: `${plate}, a: {text: Dill, font: single line, width: 28, place: plate}`,
    piece: 'body: plate, score: [a]',
  },
  {
    name: 'difference',
    shapes: 'disc: {circle: 30}, leaf: {ellipse: [10, 18]}, a: {difference: [disc, leaf]}',
    piece: 'body: a',
  },
];

const columns = 5;
const [cellWidth, cellHeight, captionHeight] = [54, 48, 12];

/** As SVG; deterministic. */
export async function shapesSvg(): Promise<string> {
  // Contains no lettering, so no fonts are needed.
  const engine = new Engine(nodeFontFiles(join(import.meta.dirname, 'no-fonts')));
  const cells: string[] = [];
  for (const [index, { name, shapes, piece }] of examples.entries()) {
    const text = `tagwright: 1\nshapes: {${shapes}}\npieces: {tag: {${piece}}}\n`;
    const { tag, issues } = await engine.compute(text, { locate: () => undefined });
    const [made] = tag?.pieces ?? [];
    if (!made) throw new Error(`${name}: ${issues.map(({ message }) => message).join(' ')}`);
    const { minX, maxX, minY, maxY } = boundsOf(made.region)!;
    const left = (index % columns) * cellWidth;
    const top = Math.floor(index / columns) * cellHeight;
    const x = left + cellWidth / 2 - (minX + maxX) / 2;
    const y = top + (cellHeight - captionHeight) / 2 + (minY + maxY) / 2 + 2;
    cells.push(
      `<g transform="translate(${x.toFixed(2)} ${y.toFixed(2)})">${drawn(made)}</g>`,
      `<text x="${left + cellWidth / 2}" y="${top + cellHeight - 5}">${name}</text>`,
    );
  }
  const [width, height] = [columns * cellWidth, Math.ceil(examples.length / columns) * cellHeight];
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${3 * width}" height="${3 * height}">`,
    `<rect width="${width}" height="${height}" fill="#fbfaf7"/>`,
    '<g font-family="sans-serif" font-size="4.2" text-anchor="middle" fill="#333">',
    ...cells,
    '</g>',
    '</svg>',
    '',
  ].join('\n');
}

function drawn({ region, marks }: Piece): string {
  const wood = `<path d="${pathData(region)}" fill="#e3cb9c" stroke="#6b4a2a" stroke-width="0.35" fill-rule="evenodd"/>`;
  const burnt = marks.map(({ region: mark, lines }) =>
    lines
      ? `<path d="${lines.map(along).join('')}" fill="none" stroke="#6b3f1f" stroke-width="0.5" stroke-linecap="round"/>`
      : `<path d="${pathData(mark)}" fill="#6b3f1f" fill-rule="evenodd"/>`,
  );
  return [wood, ...burnt].join('');
}

function along(line: Line): string {
  return line.map(({ x, y }, index) => `${index === 0 ? 'M' : 'L'}${x.toFixed(2)} ${(0 - y).toFixed(2)}`).join('');
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const file = join(import.meta.dirname, '..', 'guide', shapesPicture);
  writeFileSync(file, await shapesSvg());
  console.log(`Drawn: ${file}`);
}
