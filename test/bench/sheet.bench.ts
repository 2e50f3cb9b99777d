/**
 * Laying out forty tags, and two sets of the literature: how well, and how long it takes.
 * `node --import tsx test/bench/sheet.bench.ts`, on a machine with nothing else to do. Times are processor time, so
 * that what else runs disturbs less; also the longest from one checkpoint to the next.
 */

import { offset } from '../../src/geometry/clipper.ts';
import { ringArea } from '../../src/geometry/measure.ts';
import type { Region } from '../../src/geometry/types.ts';
import { nest } from '../../src/nesting/nest.ts';
import type { PartToNest, SheetRoom } from '../../src/nesting/layout.ts';
import { sheetUses } from '../../src/nesting/leftover.ts';
import { blaz, fu } from '../unit/support/strip-instances.ts';
import type { StripInstance } from '../unit/support/strip-instances.ts';
import { disc } from '../unit/support/shapes.ts';
import { word } from '../unit/support/words.ts';

const names = (
  'Anna Ben Charlotte Dora Emil Friedrich Greta Hannah Ida Johannes Klara Leonhard Marie Nils Oskar Paula Quirin ' +
  'Rosemarie Simon Theresa Ulrich Viktoria Wilhelm Xaver Yvonne Zita Alexander Beatrix Cornelius Dagmar Elisabeth ' +
  'Florian Gabriele Heinrich Irmgard Julia Konstantin Ludwig Magdalena Nora'
).split(' ');

/** A name on its backing: the lettering grown by 3 mm, counters filled. */
async function backing(slug: string, name: string, width: number): Promise<Region> {
  return offset(await word(slug, name, width), 3).filter((ring) => ringArea(ring) > 0);
}

/** ms of processor time. */
function spent(since: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(since);
  return (user + system) / 1000;
}

async function measure(title: string, parts: readonly PartToNest[], room: SheetRoom): Promise<void> {
  const times: number[] = [];
  let longest = 0;
  let layout = await nest(parts, room, () => Promise.resolve(), 1);
  for (let run = 0; run < 3; run += 1) {
    const start = process.cpuUsage();
    let last = 0;
    layout = await nest(parts, room, () => {
      const now = spent(start);
      longest = Math.max(longest, now - last);
      last = now;
      return Promise.resolve();
    });
    times.push(spent(start));
  }
  const uses = sheetUses(parts, room, layout).map(({ used, utilisation }) => {
    return `${used.maxX.toFixed(0)} × ${used.maxY.toFixed(1)} mm, ${(100 * utilisation).toFixed(1)} %`;
  });
  const median = times.sort((a, b) => a - b)[1]!;
  console.log(
    `${title.padEnd(34)} ${median.toFixed(0).padStart(5)} ms, at most ${longest.toFixed(0)} ms at a stretch  ${uses.join('; ')}`,
  );
}

async function strip(title: string, { parts, width, published }: StripInstance): Promise<void> {
  await measure(`${title} (published: ${published.toFixed(1)})`, parts, {
    width,
    height: 2 * published,
    margin: 0,
    gap: 0,
    keep: 'width',
  });
}

const room = { width: 600, height: 300, margin: 5, gap: 2 };
for (const turns of ['none', 'half', 'quarter'] as const) {
  const same = await backing('pacifico', 'Wildrosemary', 90);
  console.log(`Turns: ${turns}; corners of the first: ${same.flat().length}`);
  await measure(
    '40 × Wildrosemary',
    names.map(() => ({ region: same, turns })),
    room,
  );
  const short = await backing('lobster', 'Anna', 50);
  await measure(
    '40 × Anna',
    names.map(() => ({ region: short, turns })),
    room,
  );
  const different: PartToNest[] = [];
  for (const name of names) different.push({ region: await backing('pacifico', name, 18 + 7 * name.length), turns });
  await measure('40 different names', different, room);
  await measure(
    '60 discs of 40 mm',
    Array.from({ length: 60 }, () => ({ region: [disc(0, 0, 20)], turns })),
    room,
  );
}
await strip('fu', fu);
await strip('blaz', blaz);
