/** Specs as the command line reads them, and files as it writes them. */

import { readFile } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Engine } from '../engine/engine.ts';
import type { ComputeOptions } from '../engine/engine.ts';
import type { Severities } from '../engine/severity.ts';
import { nodeFontFiles } from '../text/node-font-files.ts';
import { UsageError } from './usage.ts';

export interface SpecFile {
  readonly file: string;
  readonly text: string;
  readonly options: ComputeOptions;
}

/** @throws UsageError for a file that cannot be read. */
export async function readSpec(file: string, severities: Severities): Promise<SpecFile> {
  let text: string;
  try {
    text = await readFile(file, 'utf8');
  } catch {
    throw new UsageError(`${file} cannot be read.`);
  }
  const folder = dirname(resolve(file));
  return { file, text, options: { locate: (relative) => resolve(folder, relative), severities } };
}

/** With the fonts that lie beside the program. */
export function newEngine(): Engine {
  return new Engine(nodeFontFiles(join(dirname(fileURLToPath(import.meta.url)), 'fonts')));
}
