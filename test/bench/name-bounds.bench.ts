/**
 * How much of a sheet cut names can cover at most: what a name is itself, as a share of what it takes with half the gap round it, with its holes
 * filled, and of its box. `node --import tsx test/bench/name-bounds.bench.ts`, after `npm run build`.
 */

import { join } from 'node:path';
import { Engine } from '../../src/engine/engine.ts';
import { offset } from '../../src/geometry/clipper.ts';
import { area, boundsOf, ringArea } from '../../src/geometry/measure.ts';
import { nodeFontFiles } from '../../src/text/node-font-files.ts';
import { manyNames } from './many-names.ts';

const [width, height, margin, gap, kerf] = [600, 400, 5, 2, 0.16];
const names = manyNames(40);
const spec = `tagwright: 1
stock: {material: birch plywood, thickness: 3 mm, kerf: ${kerf} mm}
batch: [${names.join(', ')}]
shapes:
  name: {text: "{name}", font: Pacifico, x_height: 9 mm, overlap: 0.6 mm, grow: 0.5 mm}
pieces:
  name: {body: [name], hanger: {ring: {at: left, diameter: 4 mm}}}
`;

async function main(): Promise<void> {
  const engine = new Engine(nodeFontFiles(join(import.meta.dirname, '..', '..', 'dist', 'fonts')));
  let own = 0;
  const taken = { 'with half the gap round it': 0, 'and its holes filled': 0, 'its box': 0 };
  for (let row = 0; row < names.length; row++) {
    const { tag } = await engine.compute(spec, { locate: () => undefined, row });
    for (const { region } of tag!.pieces) {
      // The beam takes half a kerf on either side.
      const grown = offset(region, (gap + kerf) / 2);
      const { minX, minY, maxX, maxY } = boundsOf(grown)!;
      own += area(region);
      taken['with half the gap round it'] += area(grown);
      taken['and its holes filled'] += area(grown.filter((ring) => ringArea(ring) > 0));
      taken['its box'] += (maxX - minX) * (maxY - minY);
    }
  }
  // Half a gap may reach into the margin.
  const usable = ((width - 2 * margin + gap + kerf) * (height - 2 * margin + gap + kerf)) / (width * height);
  for (const [what, sum] of Object.entries(taken))
    console.log(
      `${what.padEnd(26)} a name is ${((100 * own) / sum).toFixed(1)} % of it: of a sheet at most ${((100 * usable * own) / sum).toFixed(1)} %`,
    );
}

void main();
