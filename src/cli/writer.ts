/** Writes files, and prints what it has written. */

import { readFile } from 'node:fs/promises';
import { writeWhole } from '../export/node-write-whole.ts';

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

  /** Whether all have been written; why others have not has been printed. */
  async end(): Promise<boolean> {
    await this.#finish(0);
    return this.#isWhole;
  }

  /** In the order in which they were given. */
  async #finish(left: number): Promise<void> {
    while (this.#writing.length > left) {
      const { target, differs } = await this.#writing.shift()!;
      if (differs) console.error(`${target}: exists and differs; --overwrite replaces it.`);
      else console.log(target);
      this.#isWhole &&= !differs;
    }
  }
}

async function put(target: string, content: string | Uint8Array, overwrite: boolean): Promise<Written> {
  const there = await readFile(target).catch(() => undefined);
  const isSame = there?.equals(Buffer.from(content)) ?? false;
  if (there && !isSame && !overwrite) return { target, differs: true };
  if (!isSame) await writeWhole(target, content);
  return { target, differs: false };
}
