/**
 * How long the extension takes to start: `npm run bench:activation`, on a quiet machine. The editor measures it, loading the
 * code and calling `activate`, and shows it under Running Extensions; here it is asked several times, in fresh editors, with
 * the extension built as it is packed. Times in ms; whatever else the machine does only adds to them.
 */

import { buildAll } from '../../src/dev/build.ts';
import { Editor } from '../editor/editor.ts';

const starts = 7;

async function activation(inBrowser: boolean): Promise<number> {
  const editor = await Editor.open({ inBrowser });
  try {
    await editor.openFile('2-script-name.tag.yaml');
    await editor.openPreview();
    return Number(/Activation: (\d+)ms/.exec(await editor.running())![1]);
  } finally {
    await editor.close();
  }
}

await buildAll({ minify: true });
for (const [host, inBrowser] of [
  ['Node', false],
  ['a browser', true],
] as const) {
  const times: number[] = [];
  while (times.length < starts) times.push(await activation(inBrowser));
  times.sort((a, b) => a - b);
  const median = times[(starts - 1) / 2]!;
  console.log(`${host.padEnd(10)} ${starts} starts: shortest ${times[0]!}, median ${median}, longest ${times.at(-1)!}`);
}
