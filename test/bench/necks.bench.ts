/**
 * Time of the neck analysis by size of the outline: `node --import tsx test/bench/necks.bench.ts`.
 * Medians of repeated runs, after warming up. The aim: a 12-letter script word with a ring, about 2,600 vertices, in 8 ms.
 */

import { difference, union } from '../../src/geometry/clipper.ts';
import { boundsOf } from '../../src/geometry/measure.ts';
import { findNecks } from '../../src/geometry/necks.ts';
import type { Region } from '../../src/geometry/types.ts';
import { disc, transformed } from '../unit/support/shapes.ts';
import { word } from '../unit/support/words.ts';

const minWeb = 1.5;

/** A word with a ring hung on its left side. */
async function tag(slug: string, text: string, width: number, tolerance: number): Promise<Region> {
  const letters = await word(slug, text, width, tolerance);
  const { minX, minY, maxY } = boundsOf(letters)!;
  const [x, y] = [minX - 2, (minY + maxY) / 2];
  return difference(union([letters, [disc(x, y, 4)]]), [[disc(x, y, 2)]]);
}

function measure(name: string, region: Region): void {
  const vertices = region.reduce((sum, ring) => sum + ring.length, 0);
  const times: number[] = [];
  let found = 0;
  for (let run = 0; run < 40; run += 1) {
    const start = performance.now();
    found = findNecks(region, minWeb).length;
    times.push(performance.now() - start);
  }
  const median = times.slice(10).sort((a, b) => a - b)[15]!;
  const perThousand = (1000 * median) / vertices;
  console.log(
    `${name.padEnd(40)} ${String(vertices).padStart(6)} vertices ${String(found).padStart(4)} necks ` +
      `${median.toFixed(1).padStart(7)} ms  ${perThousand.toFixed(2)} ms per thousand`,
  );
}

for (const slug of ['pacifico', 'lobster', 'great-vibes', 'dancing-script']) {
  measure(`${slug}, 12 letters and a ring`, await tag(slug, 'Wildrosemary', 90, slug === 'lobster' ? 0.002 : 0.005));
}
const one = await tag('pacifico', 'Wildrosemary', 90, 0.002);
for (const rows of [1, 2, 4, 8]) {
  const block = Array.from({ length: rows }, (_, row) => transformed(one, 0, 1, 0, 45 * row));
  measure(`the same, ${rows} rows`, block.flat());
}
measure('a circle of 20,000 corners', [disc(0, 0, 60, 0.00000074)]);
measure('the same, 4 mm thin', difference([disc(0, 0, 60, 0.000003)], [[disc(0, 0, 56, 0.000003)]]));
measure('the same, 1 mm thin', difference([disc(0, 0, 60, 0.000003)], [[disc(0, 0, 59, 0.000003)]]));
