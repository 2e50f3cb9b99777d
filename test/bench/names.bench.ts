/**
 * A hundred names in six faces, at an x-height of 12 mm and a least web of 1.5 mm, with their letters slid together and without:
 * `npm run bench:names`. A name is grown by the least share of its x-height at which it is one part and has no neck below the
 * web. Names are read by tesseract.js as drawn by the font, as grown only, and as slid and grown; `--unread` leaves that out,
 * which takes minutes.
 */

import { openReader } from '../calibration/reader.ts';
import type { Reader } from '../calibration/reader.ts';
import { drawn } from '../calibration/drawn.ts';
import type { FontFace } from '../../src/text/font-face.ts';
import { nameFaces } from '../names/faces.ts';
import { closedCounters, heldName, minWebMm, nameOf, overlapMm, xHeightMm } from '../names/joined.ts';
import { firstNames } from '../names/names.ts';
import { findNecks } from '../../src/geometry/necks.ts';
import { partsOf } from '../../src/geometry/parts.ts';

interface Row {
  readonly onePart: number;
  readonly open: number;
  readonly growth: readonly number[];
  readonly narrowest: number;
  readonly times: readonly number[];
  readonly read: number;
  readonly unread: readonly string[];
}

async function rowOf(face: FontFace, overlap: number | undefined, reader: Reader | undefined): Promise<Row> {
  let [onePart, open, read] = [0, 0, 0];
  let narrowest = minWebMm;
  const growth: number[] = [];
  const times: number[] = [];
  const unread: string[] = [];
  for (const name of firstNames) {
    const held = await heldName(face, name, overlap);
    const grow = held.share * xHeightMm;
    const start = performance.now();
    await nameOf(face, name, grow, overlap);
    times.push(performance.now() - start);
    if (held.parts === 1) onePart += 1;
    if (closedCounters(held, grow) === 0) open += 1;
    growth.push(held.share);
    narrowest = Math.min(narrowest, ...held.necks.map(({ width }) => width));
    if (await reader?.reads(name, drawn(held.region, xHeightMm))) read += 1;
    else unread.push(name);
  }
  return { onePart, open, growth, narrowest, times, read, unread };
}

function at(values: readonly number[], share: number): number {
  return [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(share * values.length))]!;
}

async function readPlain(face: FontFace, reader: Reader | undefined): Promise<Set<string>> {
  const read = new Set<string>();
  for (const name of firstNames) {
    if (await reader?.reads(name, drawn((await nameOf(face, name, 0)).region, xHeightMm))) read.add(name);
  }
  return read;
}

/** Names that are one part and hold without any growth. */
async function soundAsTheyAre(face: FontFace): Promise<number> {
  let sound = 0;
  for (const name of firstNames) {
    const { region } = await nameOf(face, name, 0);
    if (partsOf(region).length === 1 && findNecks(region, minWebMm).length === 0) sound += 1;
  }
  return sound;
}

const only = process.argv.find((argument) => argument.startsWith('--face='))?.slice(7) ?? '';
const reader = process.argv.includes('--unread') ? undefined : await openReader();
console.log(
  `${firstNames.length} names; growth in shares of the x-height; counters: names with every counter at least 3/4 open (2/5 between thickened hairlines); ms: made at that growth, p50/p90`,
);
console.log(
  'face                 way    one part  growth p50/p90  ≤ .06  counters  narrowest  ms          read (of those read plain)',
);
for (const { name, open } of nameFaces) {
  if (!name.includes(only)) continue;
  const face = await open();
  const plain = await readPlain(face, reader);
  console.log(
    `${name.padEnd(20)} plain  sound as drawn: ${await soundAsTheyAre(face)}; read: ${reader ? plain.size : '–'}`,
  );
  for (const [way, overlap] of [
    ['grown', undefined],
    ['slid', overlapMm],
  ] as const) {
    const row = await rowOf(face, overlap, reader);
    const lost = row.unread.filter((each) => plain.has(each));
    console.log(
      [
        ' '.repeat(20),
        way.padEnd(6),
        String(row.onePart).padStart(7),
        `${at(row.growth, 0.5).toFixed(3)}/${at(row.growth, 0.9).toFixed(3)}`.padStart(15),
        String(row.growth.filter((share) => share <= 0.06).length).padStart(7),
        String(row.open).padStart(9),
        row.narrowest.toFixed(2).padStart(10),
        `${at(row.times, 0.5).toFixed(1)}/${at(row.times, 0.9).toFixed(1)}`.padStart(12),
        reader ? `${row.read}, lost: ${lost.join(' ') || 'none'}` : '–',
      ].join(' '),
    );
  }
}
await reader?.close();
