/** What file formats need, as tests have it. */

import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { captionFont } from '../../../src/export/job/job.ts';
import type { Tools } from '../../../src/export/job/job.ts';
import { newEngine } from './engine.ts';

const { fonts } = newEngine();

export const tools: Tools = {
  captions: (weight) => captionFont(fonts, weight),
  rasteriser: () => readFile(createRequire(import.meta.url).resolve('@resvg/resvg-wasm/index_bg.wasm')),
};
