/**
 * Density on the open sets of `test/strips`, against the best known: `node --import tsx test/bench/strips.bench.ts [effort [seeds]]`. Effort in edges, as
 * `nest` counts it (usually 20 million); of the seeds, separated by commas (usually those that a layout is the best of), each is shown and the best counts, as with a core for each.
 */

import { seeds as usualSeeds } from '../../src/nesting/best-of.ts';
import { nest, usualEffort } from '../../src/nesting/nest.ts';
import type { Layout } from '../../src/nesting/nest.ts';
import { boxOf, sheetsOf } from '../unit/support/sheets.ts';
import { stripNames, stripSet } from '../unit/support/strip-sets.ts';
import type { StripSet } from '../unit/support/strip-sets.ts';

const effort = Number(process.argv[2] ?? usualEffort);
const seeds = (process.argv[3] ?? usualSeeds.join()).split(',').map(Number);

function densityOf({ parts, area, room }: StripSet, layout: Layout): number {
  return (100 * area) / (room.width * boxOf(sheetsOf(parts, layout)[0]!).maxY);
}

async function main(): Promise<void> {
  const gaps: number[] = [];
  for (const name of stripNames) {
    const set = stripSet(name);
    const found: number[] = [];
    const start = process.cpuUsage();
    for (const seed of seeds) {
      found.push(densityOf(set, await nest(set.parts, set.room, () => Promise.resolve(), effort, { seed })));
    }
    const seconds = process.cpuUsage(start).user / 1e6 / seeds.length;
    const short = set.bestKnown - Math.max(...found);
    gaps.push(short);
    const each = found.map((density) => density.toFixed(2)).join(' ');
    console.log(
      `${name.padEnd(8)} ${each} %, best known ${set.bestKnown} %: ${short.toFixed(2)} points short; ${seconds.toFixed(1)} s a seed`,
    );
  }
  console.log(
    `mean ${(gaps.reduce((sum, gap) => sum + gap, 0) / gaps.length).toFixed(2)}, worst ${Math.max(...gaps).toFixed(2)} points short`,
  );
}

void main();
