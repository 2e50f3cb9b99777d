/** What VS Code calls inside the extension host: runs the test files that were built beside this one with mocha. */

import { readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { format } from 'node:util';

/** Begins each printed line of results, to tell them from what the editor itself prints. */
export const resultMark = '│';

export async function run(): Promise<void> {
  const { default: Mocha } = await import('mocha');
  Mocha.reporters.Base.consoleLog = (...args: unknown[]) => {
    for (const line of format(...args).split('\n')) console.log(resultMark, line);
  };
  const mocha = new Mocha({ timeout: 180_000, reporter: 'spec', color: false });
  for (const name of readdirSync(__dirname)) if (name.endsWith('.test.cjs')) mocha.addFile(join(__dirname, name));
  await new Promise<void>((resolve, reject) => {
    const runner = mocha.run((failures) => {
      const counts = process.env['TAGWRIGHT_COUNTS'];
      if (counts) writeFileSync(counts, JSON.stringify(runner.stats));
      if (failures > 0) reject(new Error(`${failures} failed`));
      else resolve();
    });
  });
}
