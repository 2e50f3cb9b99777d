/** Writes files, and prints what it has written. */

import { readFile } from 'node:fs/promises';
import { writeAllWhole, writeWhole } from '../export/node-write-whole.ts';

/** Files being written at once, at most. */
const most = 32;

interface Written {
  readonly target: string;
  /** It is there with different content, and may not be replaced. */
  readonly differs: boolean;
}

/** Writes while the next files are made: waiting for each would leave the threads that make them idle. */
export class Writer {
  readonly #overwrite: boolean;
  readonly #writing: Promise<Written>[] = [];
  #isWhole = true;

  /** `overwrite`: replaces existing files with different content. */
  constructor(overwrite: boolean) {
    this.#overwrite = overwrite;
  }

  /** Rejects if this file, or one before, cannot be written. */
  async write(target: string, content: string | Uint8Array): Promise<void> {
    const written = put(target, content, this.#overwrite);
    // Reported when its turn comes.
    written.catch(() => undefined);
    this.#writing.push(written);
    await this.#finish(most);
  }

  /** All of them at once, or none: among old sheets, new ones would have pieces cut twice or not at all. */
  async writeTogether(files: Outputs): Promise<void> {
    await this.#finish(0);
    const others = await differing(files);
    if (others.length > 0 && !this.#overwrite) {
      for (const target of others) sayDiffers(target);
      this.#isWhole = false;
      return;
    }
    await writeAllWhole(files);
    for (const target of files.keys()) console.log(target);
  }

  /** Whether all have been written; why others have not has been printed. */
  async end(): Promise<boolean> {
    await this.#finish(0);
    return this.#isWhole;
  }

  /** In the order in which they were given. */
  async #finish(left: number): Promise<void> {
    while (this.#writing.length > left) {
      const { target, differs } = await this.#writing.shift()!;
      if (differs) sayDiffers(target);
      else console.log(target);
      this.#isWhole &&= !differs;
    }
  }
}

export type Outputs = ReadonlyMap<string, string | Uint8Array>;

/** Those that are there with different content. */
export async function differing(files: Outputs): Promise<string[]> {
  const found: string[] = [];
  for (const [target, content] of files) {
    if ((await standing(target, content)) === 'other') found.push(target);
  }
  return found;
}

/** What is there now, beside what is to be written. */
async function standing(target: string, content: string | Uint8Array): Promise<'nothing' | 'same' | 'other'> {
  const there = await readFile(target).catch(() => undefined);
  return there ? (there.equals(Buffer.from(content)) ? 'same' : 'other') : 'nothing';
}

export function sayDiffers(target: string): void {
  console.error(`${target}: exists and differs; --overwrite replaces it.`);
}

async function put(target: string, content: string | Uint8Array, overwrite: boolean): Promise<Written> {
  const now = await standing(target, content);
  if (now === 'other' && !overwrite) return { target, differs: true };
  if (now !== 'same') await writeWhole(target, content);
  return { target, differs: false };
}
