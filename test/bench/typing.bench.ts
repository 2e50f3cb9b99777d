/**
 * From an edit of a spec to its first result, which is the drawing of the row that is looked at: with one row, and with hundreds.
 * `node --import tsx test/bench/typing.bench.ts`. Medians in ms of processor time; each round changes a length, so that the tag is made anew.
 */

import { Engine } from '../../src/engine/engine.ts';
import { manyNames } from './many-names.ts';
import { packagedFontFiles } from '../fonts/font-files.ts';

const rounds = 15;

function spec(rows: readonly string[] | undefined, width: number, sameSize: boolean): string {
  const batch = rows
    ? `batch:\n${rows.map((name) => `  - {name: ${name}, sown: March}\n`).join('')}`
    : 'batch: names.csv\n';
  return `tagwright: 1
title: Seed label, {name}
stock: {material: birch plywood, thickness: 3 mm, kerf: 0.16 mm}
tie: {twine: 2 mm}
${batch}shapes:
  plate: {label: {size: [${width} mm, 34 mm], clip: 10 mm}}
  words:
    lines:
      - {text: "{name}", font: Pacifico, share: 2.3}
      - {text: "sown in {sown}", font: Nunito, weight: 600, optional: true}
    align: baseline
    fit: {in: plate, margin: 3 mm, at_most: {x_height: 5.5 mm}${sameSize ? ', same_size: true' : ''}}
pieces:
  label: {body: [plate], engrave: [words], hanger: {hole: {on: plate, at: left}}}
`;
}

async function median(names: readonly string[], isTable: boolean, sameSize = false): Promise<number> {
  const table = `name,sown\n${names.map((name) => `${name},March\n`).join('')}`;
  const read = () => Promise.resolve(new TextEncoder().encode(table));
  const engine = new Engine({ ...packagedFontFiles(), read });
  const times: number[] = [];
  for (let round = 0; round < rounds; round++) {
    const start = process.cpuUsage();
    await engine.compute(spec(isTable ? undefined : names, 86 + round / 10, sameSize), {
      locate: (name) => name,
      isHasty: true,
    });
    const { user, system } = process.cpuUsage(start);
    times.push((user + system) / 1000);
  }
  return times.sort((a, b) => a - b)[rounds >> 1]!;
}

const kinds = [
  { title: 'list in the spec', isTable: false, sameSize: false },
  { title: 'table beside it', isTable: true, sameSize: false },
  { title: 'table, same_size', isTable: true, sameSize: true },
];
const counts = (process.argv.find((each) => each.startsWith('--rows='))?.slice(7) ?? '1,50,500').split(',').map(Number);
console.log(`rows${' '.repeat(15)}${counts.map((count) => String(count).padStart(9)).join('')}`);
for (const { title, isTable, sameSize } of kinds) {
  const cells: string[] = [];
  for (const count of counts) cells.push((await median(manyNames(count), isTable, sameSize)).toFixed(0).padStart(9));
  console.log(title.padEnd(19) + cells.join(''));
}
