/**
 * How much of a sheet 500 names cover, cut out and on backings, and how much they could at most: what a name is itself, as a share of what it takes with half the
 * gap round it, with its holes filled, by its envelope, and of its box. `node --import tsx test/bench/name-bounds.bench.ts`, after `npm run build`.
 */

import { join } from 'node:path';
import { Engine } from '../../src/engine/engine.ts';
import { offset } from '../../src/geometry/clipper.ts';
import { area, boundsOf, ringArea } from '../../src/geometry/measure.ts';
import type { Region } from '../../src/geometry/types.ts';
import { envelopeArea } from '../../src/nesting/envelopes/envelope.ts';
import { nest } from '../../src/nesting/nest.ts';
import { nestParts } from '../../src/nesting/shapes.ts';
import { nodeFontFiles } from '../../src/text/node-font-files.ts';
import { manyNames } from './many-names.ts';

const [width, height, margin, gap, kerf] = [600, 400, 5, 2, 0.16];
const names = manyNames(500);
const specs = {
  'Cut out': `shapes:
  name: {text: "{name}", font: Pacifico, x_height: 9 mm, overlap: 0.6 mm, grow: 0.5 mm}
pieces:
  name: {body: [name], hanger: {ring: {at: left, diameter: 4 mm}}}
`,
  'On backings': `shapes:
  name: {text: "{name}", font: Pacifico, x_height: 9 mm}
  back: {around: name, by: 3 mm, corners: round}
pieces:
  name: {body: [back], engrave: [name], hanger: {ring: {on: back, at: left, diameter: 4 mm}}}
`,
};

/** As the beam runs. */
async function outlines(shapes: string): Promise<Region[]> {
  const engine = new Engine(nodeFontFiles(join(import.meta.dirname, '..', '..', 'dist', 'fonts')));
  const spec = `tagwright: 1
stock: {material: birch plywood, thickness: 3 mm, kerf: ${kerf} mm}
batch: [${names.join(', ')}]
${shapes}`;
  const found: Region[] = [];
  for (let row = 0; row < names.length; row++) {
    const { tag } = await engine.compute(spec, { locate: () => undefined, row });
    found.push(...tag!.pieces.map(({ region }) => offset(region, kerf / 2)));
  }
  return found;
}

async function main(): Promise<void> {
  for (const [title, spec] of Object.entries(specs)) {
    console.log(title);
    const regions = await outlines(spec);
    const own = regions.reduce((sum, region) => sum + area(region), 0);
    const taken = { 'with half the gap round it': 0, 'and its holes filled': 0, 'its envelope': 0, 'its box': 0 };
    const parts = regions.map((region) => ({ region, turns: 'half' as const }));
    for (const { shape } of await nestParts(parts, gap, () => Promise.resolve()))
      taken['its envelope'] += envelopeArea(shape!.envelope(0));
    for (const region of regions) {
      const grown = offset(region, gap / 2);
      const { minX, minY, maxX, maxY } = boundsOf(grown)!;
      taken['with half the gap round it'] += area(grown);
      taken['and its holes filled'] += area(grown.filter((ring) => ringArea(ring) > 0));
      taken['its box'] += (maxX - minX) * (maxY - minY);
    }
    // Half a gap may reach into the margin.
    const usable = ((width - 2 * margin + gap) * (height - 2 * margin + gap)) / (width * height);
    for (const [what, sum] of Object.entries(taken))
      console.log(`  ${what.padEnd(26)} of a sheet at most ${((100 * usable * own) / sum).toFixed(1)} %`);
    for (const turns of ['none', 'half'] as const) {
      const start = process.cpuUsage();
      const room = { width, height, margin, gap };
      const layout = await nest(
        regions.map((region) => ({ region, turns })),
        room,
        () => Promise.resolve(),
      );
      const { user } = process.cpuUsage(start);
      console.log(
        `  turned: ${turns}`.padEnd(29) +
          `${layout.used.toFixed(2)} sheets, ${((100 * own) / (layout.used * width * height)).toFixed(1)} %; ${(user / 1e6).toFixed(0)} s a seed`,
      );
    }
  }
}

void main();
