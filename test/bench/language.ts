/** Completion and hover at every offset of every sample: what the editor waits for while one types. */

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Engine } from '../../src/engine/engine.ts';
import { completionsAt } from '../../src/language/completion/complete.ts';
import { fontNotes } from '../../src/language/completion/fonts.ts';
import { hoverAt } from '../../src/language/hover/hover.ts';
import { noWorkspaceNames } from '../../src/language/workspace-names.ts';
import { SpecSource } from '../../src/spec/yaml/source.ts';

export async function languageTimes(folder: string, engine: Engine): Promise<Map<string, number[]>> {
  const completion: number[] = [];
  const hover: number[] = [];
  const around = { ...noWorkspaceNames, fonts: fontNotes(await engine.fonts.installed()) };
  for (const name of readdirSync(folder).filter((each) => each.endsWith('.tag.yaml'))) {
    const text = readFileSync(join(folder, name), 'utf8');
    const report = await engine.compute(text, { locate: () => undefined });
    for (let offset = 0; offset <= text.length; offset++) {
      // Never the same text twice, as while one types.
      const typed = `${text}# ${offset}\n`;
      completion.push(timed(() => completionsAt(typed, offset, around)));
      hover.push(timed(() => hoverAt(new SpecSource(text), offset, report, around.fonts)));
    }
  }
  return new Map([
    ['completion', completion],
    ['hover', hover],
  ]);
}

function timed(run: () => unknown): number {
  const start = performance.now();
  run();
  return performance.now() - start;
}
