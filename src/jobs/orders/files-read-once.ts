/** Files as they are at one moment: all tags of a job see the same, and each is read once. */

import type { ReadFile } from '../../engine/engine.ts';
import { contentHash } from '../../text/content-hash.ts';

export class FilesReadOnce {
  readonly #read: ReadFile;
  readonly #known = new Map<string, Promise<Uint8Array>>();
  readonly #stamps = new Map<string, Promise<string>>();

  constructor(read: ReadFile) {
    this.#read = read;
  }

  readonly read: ReadFile = (path) => {
    const bytes = this.#known.get(path) ?? this.#read(path);
    this.#known.set(path, bytes);
    return bytes;
  };

  /** Differs when the content differs; the same for all that cannot be read. */
  stamp(path: string): Promise<string> {
    const stamp = this.#stamps.get(path) ?? this.#stampOf(path);
    this.#stamps.set(path, stamp);
    return stamp;
  }

  async #stampOf(path: string): Promise<string> {
    const bytes = await this.read(path).catch(() => undefined);
    return bytes ? contentHash([bytes]) : '';
  }
}
