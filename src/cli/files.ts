/** Reads specs for the command line, and creates its engine. */

import { readFile } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { Engine } from '../engine/engine.ts';
import type { ComputeOptions } from '../engine/engine.ts';
import type { Severities } from '../engine/severity.ts';
import { turnTaker } from '../engine/turns.ts';
import { FilesReadOnce } from '../jobs/orders/files-read-once.ts';
import type { FontFiles } from '../text/font-files.ts';
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

/** Cache size that holds everything shared by the tags of a batch; what only one of them has is not needed again. */
const rowStages = 300;

/** For work that takes long: a signal is only heard between two turns. */
export function inTurns(): () => Promise<void> {
  return turnTaker(undefined, () => setImmediate());
}

/**
 * Uses the fonts beside the program. `isOnce`: each file is read only once, for commands that write none of the files
 * they read.
 */
export function newEngine({ isOnce = false } = {}): Engine {
  const files = nodeFontFiles(join(dirname(fileURLToPath(import.meta.url)), 'fonts'));
  // A timer waits for at least a millisecond, which is a tenth of all time if a turn has ten.
  const giveWay = () => setImmediate();
  return isOnce ? new Engine(onceRead(files), { giveWay, stages: rowStages }) : new Engine(files, { giveWay });
}

/** A table of names is then read once, not once for each row. */
function onceRead(files: FontFiles): FontFiles {
  const once = new FilesReadOnce((path) => files.read(path));
  return { ...files, read: (path, stretch) => (stretch ? files.read(path, stretch) : once.read(path)) };
}
