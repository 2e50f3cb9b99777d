/** Resources for file formats, from beside the program. */

import { readFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Engine } from '../engine/engine.ts';
import { captionFont } from '../export/job/job.ts';
import type { Tools } from '../export/job/job.ts';

export function toolsOf(engine: Engine): Tools {
  const folder = dirname(fileURLToPath(import.meta.url));
  return {
    captions: (weight) => captionFont(engine.fonts, weight),
    rasteriser: () => readFile(join(folder, 'resvg.wasm')),
  };
}
