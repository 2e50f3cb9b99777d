/** What judging legibility costs, beside making the tag: `npm run bench`. Each round grows the lettering anew; median in ms. */

import { hardToRead } from '../../src/checks/hard-to-read.ts';
import { Engine } from '../../src/engine/engine.ts';
import { packagedFontFiles } from '../fonts/font-files.ts';

const rounds = 30;

const longText = Array.from({ length: 8 }, () => 'sow basil and dill after the frost').join('\\n');

const cases = [
  { name: '12 letters of a script', text: 'Wordsmithing', size: 'width: 110 mm' },
  { name: '280 characters of a script', text: longText, size: 'x_height: 5 mm' },
];

const median = (values: readonly number[]): string =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!.toFixed(2);

const engine = new Engine(packagedFontFiles());
for (const { name, text, size } of cases) {
  const [making, judging]: [number[], number[]] = [[], []];
  for (let round = -5; round < rounds; round++) {
    const spec = `tagwright: 1
stock: {kerf: 0.16 mm}
shapes:
  name: {text: "${text}", font: Pacifico, ${size}, grow: ${0.3 + 0.005 * (round + 5)} mm}
pieces:
  tag: {body: [name], parts: many, title: t${round}}
`;
    const report = await engine.compute(spec, { locate: () => undefined });
    // As it was made: what the engine's own run of the check has remembered is the other lettering's.
    const { tag } = report;
    if (!tag) throw new Error(report.issues.map(({ message }) => message).join(' '));
    const start = performance.now();
    hardToRead({ ...tag, stock: { ...tag.stock, kerf: 0.161 } });
    const took = performance.now() - start;
    if (round < 0) continue;
    making.push(report.timings.make);
    judging.push(took);
  }
  console.log(`legibility, ${name}: making ${median(making)}, judging ${median(judging)}`);
}
