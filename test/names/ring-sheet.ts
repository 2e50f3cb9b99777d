/**
 * Names that hang by a ring which finds its own place, for a person to look over: `npm run ring-places`. A page a face in
 * `test/artefacts/`; what the project itself says of the place is below each. `--read`: whether OCR takes the ring for a letter.
 * `--at=top`: a ring that is to be there.
 */

import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import { difference, union } from '../../src/geometry/clipper.ts';
import { boundsOf } from '../../src/geometry/measure.ts';
import type { Region } from '../../src/geometry/types.ts';
import { packagedWoff2 } from '../fonts/font-files.ts';
import { drawn } from '../calibration/drawn.ts';
import { editsFrom, openReader } from '../calibration/reader.ts';
import type { Reader } from '../calibration/reader.ts';
import { make, newEngine, specOf } from '../unit/support/engine.ts';
import { ringedNames } from './names.ts';

const folder = new URL('../artefacts/', import.meta.url).pathname;
const [cellWidth, cellHeight, columns] = [95, 55, 5];

interface RingFace {
  readonly name: string;
  readonly font: string;
}

const packaged = async (slug: string, weight = 400): Promise<RingFace & { readonly bytes: Uint8Array }> => ({
  name: `${slug} ${weight}`,
  font: `font: ${slug}.woff2`,
  bytes: await packagedWoff2(slug, 'latin', weight),
});

const faces: readonly (RingFace & { readonly bytes?: Uint8Array })[] = [
  { name: 'Pacifico', font: 'font: Pacifico' },
  { name: 'Great Vibes', font: 'font: Great Vibes' },
  await packaged('caveat', 700),
  await packaged('dancing-script', 700),
  { name: 'Alfa Slab One', font: 'font: Alfa Slab One' },
  { name: 'Nunito 800', font: 'font: Nunito, weight: 800' },
  await packaged('fredoka', 600),
  await packaged('playfair-display', 700),
  await packaged('source-sans-3', 700),
];

const [, , ...args] = process.argv;
const only = args.find((each) => each.startsWith('--face='))?.slice(7) ?? '';
const names =
  args
    .find((each) => each.startsWith('--names='))
    ?.slice(8)
    .split(',') ?? ringedNames;
/** Where the ring is to go, as in a spec: `--at=top`. */
const place = args.find((each) => each.startsWith('--at='))?.slice(5) ?? 'auto';
const xHeight = 11;

interface Ringed {
  readonly name: string;
  readonly region: Region;
  readonly readAs: readonly string[];
  readonly askew: string;
  readonly said: boolean;
  readonly weak: boolean;
  readonly misread?: string;
}

async function ringed(name: string, face: (typeof faces)[number]): Promise<Ringed> {
  const engine = face.bytes ? newEngine({ [face.font.slice(6)]: face.bytes }) : undefined;
  const text = JSON.stringify(name);
  const shape = `body: {text: ${text}, ${face.font}, x_height: ${xHeight}, overlap: auto, grow: 0.4}`;
  const { pieces, issues } = await make(
    specOf([shape], `body: [body], parts: many, hanger: {ring: {at: ${place}}}`, [
      'stock: {thickness: 3, kerf: 0.16}',
      'tie: {twine: 2}',
    ]),
    engine,
  );
  const [piece] = pieces;
  const hanger = piece!.hangers[0]!;
  const about = (code: string) => issues.filter((each) => each.code === code).map(({ message }) => message);
  return {
    name,
    region: difference(union([piece!.body, hanger.lug ?? []]), [hanger.opening]),
    readAs: hanger.readAs ?? [],
    askew:
      about('hangs-askew')
        .join(' ')
        .match(/[\d.]+°/)?.[0] ?? '',
    said: about('hole-blocked').length > 0,
    weak: about('hanger-weak').length > 0,
    ...(reader && {
      misread: await misreading(reader, name, piece!.body, union([piece!.body, hanger.lug ?? []]), hanger.opening),
    }),
  };
}

/** What most readings say with the ring, where most say the name without it; empty if they say the name all the same. */
async function misreading(by: Reader, name: string, body: Region, withLug: Region, opening: Region): Promise<string> {
  const plain = (await by.readings(drawn(body, xHeight))).map((each) => editsFrom(name, each));
  const all = await by.readings(drawn(difference(withLug, [opening]), xHeight));
  const withRing = all.map((each) => editsFrom(name, each));
  const worse = withRing.filter((edits, index) => edits > plain[index]!).length;
  const same = plain.filter((edits, index) => withRing[index]! <= edits).length;
  return worse > same || Math.min(...withRing) > Math.min(...plain) ? [...new Set(all)].join(' ') : '';
}

function pathOf(region: Region): string {
  return region.map((ring) => `M${ring.map(({ x, y }) => `${x.toFixed(2)} ${(-y).toFixed(2)}`).join('L')}Z`).join('');
}

const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');

function cell({ name, region, readAs, askew, said, misread = '' }: Ringed, index: number): string {
  const box = boundsOf(region)!;
  const [x, y] = [((index % columns) + 0.5) * cellWidth, (Math.floor(index / columns) + 0.5) * cellHeight - 4];
  const scale = Math.min(1, (cellWidth - 6) / (box.maxX - box.minX), (cellHeight - 14) / (box.maxY - box.minY));
  const [cx, cy] = [(box.minX + box.maxX) / 2, -(box.minY + box.maxY) / 2];
  const line = (text: string, row: number, fill: string): string =>
    `<text x="${x}" y="${y + cellHeight / 2 - 4 + 4.5 * row}" font-size="4" text-anchor="middle" font-family="DejaVu Sans" fill="${fill}">${escaped(text)}</text>`;
  return (
    `<g transform="translate(${x} ${y}) scale(${scale}) translate(${-cx} ${-cy})">` +
    `<path d="${pathOf(region)}" fill="#222" fill-rule="evenodd"/></g>` +
    line(`${name}: ${readAs.join(', ') || '–'} ${askew}`, 0, said ? '#c60' : '#369') +
    (misread ? line(misread, 1, '#b00') : '')
  );
}

const reader = args.includes('--read') ? await openReader() : undefined;
mkdirSync(folder, { recursive: true });
for (const face of faces) {
  if (!face.name.includes(only)) continue;
  const made: Ringed[] = [];
  for (const name of names) made.push(await ringed(name, face));
  const height = Math.ceil(made.length / columns) * cellHeight;
  const svg =
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${columns * cellWidth} ${height}">` +
    `<rect width="100%" height="100%" fill="white"/>${made.map(cell).join('')}</svg>`;
  const file = join(folder, `rings-${place === 'auto' ? '' : `${place}-`}${face.name.replaceAll(' ', '-')}.png`);
  writeFileSync(file, new Resvg(svg, { fitTo: { mode: 'width', value: 1900 } }).render().asPng());
  const count = (has: (each: Ringed) => boolean): string =>
    made
      .filter(has)
      .map(({ name, readAs, askew }) => `${name} (${[...readAs, askew].filter(Boolean).join(', ')})`)
      .join(', ') || 'none';
  console.log(
    `${face.name}: said: ${count(({ said }) => said)}; askew: ${count(({ askew }) => askew !== '')}; weak: ${count(({ weak }) => weak)}`,
  );
  if (reader) console.log(`  misread: ${count(({ misread }) => Boolean(misread))}`);
}
await reader?.close();
