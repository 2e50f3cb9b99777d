/** The worker that lays out in a browser, as the extension starts it there: from a blob, beside a thread that stays free. */

import assert from 'node:assert/strict';
import * as esbuild from 'esbuild';
import { join } from 'node:path';
import type { PartToNest } from '../../src/nesting/layout.ts';
import { nest } from '../../src/nesting/nest.ts';
import { packed } from '../../src/nesting/threads/messages.ts';
import { star } from '../unit/support/shapes.ts';
import { session } from './browser.ts';

const parts: readonly PartToNest[] = [5, 6, 7, 5, 8, 6].map((points, i) => ({
  region: [star(points, 4 + (i % 3), 9)],
  turns: 'quarter',
}));
const room = { width: 60, height: 60, margin: 2, gap: 1 };
const effort = 400_000;

describe('The worker that lays out in a browser', () => {
  it('finds what the search finds here', async () => {
    const built = await esbuild.build({
      entryPoints: [join(import.meta.dirname, '../../src/nesting/threads/web-serve.ts')],
      bundle: true,
      write: false,
      platform: 'browser',
      format: 'iife',
    });
    const { regions, ...task } = packed({ parts, room, effort });
    const numbers = {
      points: [...regions.points],
      rings: [...regions.rings],
      regions: [...regions.regions],
    };
    const page = await (await session()).newPage();
    const layout = await page.evaluate(
      ({ script, sent, asked }) =>
        new Promise((resolve, reject) => {
          const worker = new Worker(URL.createObjectURL(new Blob([script], { type: 'text/javascript' })));
          worker.onerror = ({ message }) => {
            reject(new Error(message));
          };
          worker.onmessage = ({ data }: { data: { type: string; layout: unknown } }) => {
            if (data.type !== 'better') resolve(data.type === 'done' ? data.layout : data);
          };
          const typed = {
            points: Float64Array.from(sent.points),
            rings: Uint32Array.from(sent.rings),
            regions: Uint32Array.from(sent.regions),
          };
          worker.postMessage({ type: 'search', task: { ...asked, regions: typed }, seed: 2, tells: true });
        }),
      { script: built.outputFiles[0]!.text, sent: numbers, asked: task },
    );
    const expected = await nest(parts, room, () => Promise.resolve(), effort, { seed: 2 });
    assert.deepEqual(layout, expected);
  });
});
