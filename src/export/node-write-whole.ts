/** Writes files atomically: a machine must never be given half a path. */

import { renameSync, rmdirSync, rmSync } from 'node:fs';
import { mkdir, rm, stat, writeFile } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';

/** Writes to a temporary name first, then replaces the target in one step. */
export async function writeWhole(target: string, content: string | Uint8Array): Promise<void> {
  await writeAllWhole(new Map([[target, content]]));
}

/** Writes several files; none gets its final name until all have been written. */
export async function writeAllWhole(files: ReadonlyMap<string, string | Uint8Array>): Promise<void> {
  const written = new FilesTogether();
  try {
    for (const [target, content] of files) await written.add(target, content);
    await written.appear();
  } finally {
    await written.drop();
  }
}

/** Files that wait beside their places until all are there, and appear together. */
export class FilesTogether {
  /** By target. */
  readonly #partials = new Map<string, string>();
  readonly #folders: string[] = [];

  get targets(): string[] {
    return [...this.#partials.keys()];
  }

  /** The folder must be there. */
  async add(target: string, content: string | Uint8Array): Promise<void> {
    await unlessStopped();
    const partial = `${target}.${process.pid}.part`;
    this.#partials.set(target, partial);
    await underWay(partial, writeFile(partial, content, { flag: 'wx' }));
  }

  /** A new folder goes again if no file appears in it. */
  async addFolder(folder: string): Promise<void> {
    const first = await mkdir(folder, { recursive: true });
    if (first === undefined) return;
    for (let each = resolve(folder); each.length >= resolve(first).length; each = dirname(each))
      this.#folders.push(each);
    for (const each of this.#folders) newFolders.add(each);
  }

  /** In one go, between two turns: nothing that stops the program comes in between. */
  async appear(): Promise<void> {
    for (const target of this.#partials.keys()) await refuseFolder(target);
    await unlessStopped();
    for (const [target, partial] of this.#partials) {
      renameSync(partial, target);
      unfinished.delete(partial);
    }
    this.#partials.clear();
  }

  /** Takes back what has not appeared. */
  async drop(): Promise<void> {
    for (const partial of this.#partials.values()) {
      await rm(partial, { force: true });
      unfinished.delete(partial);
    }
    this.#partials.clear();
    removeEmpty(this.#folders);
    for (const each of this.#folders.splice(0)) newFolders.delete(each);
  }
}

/** A folder in the place of one file would let those before it through. */
async function refuseFolder(target: string): Promise<void> {
  const found = await stat(target).catch(() => undefined);
  if (!found?.isDirectory()) return;
  throw Object.assign(new Error(`${target} is a folder; nothing was written.`), { code: 'EISDIR' });
}

/** Files of the whole process that have not got their names yet, and new folders that may be for nothing. */
const unfinished = new Set<string>();
const newFolders = new Set<string>();
const writing = new Set<Promise<unknown>>();
let isStopped = false;

/** For a program that is about to end: nothing more is written, and nothing half written stays. */
export async function stopWriting(): Promise<void> {
  isStopped = true;
  await Promise.allSettled(writing);
  for (const partial of unfinished) rmSync(partial, { force: true });
  removeEmpty([...newFolders]);
}

async function underWay(partial: string, work: Promise<void>): Promise<void> {
  unfinished.add(partial);
  writing.add(work);
  try {
    await work;
  } finally {
    writing.delete(work);
  }
  await unlessStopped();
}

/** Never resolves once the program is about to end. */
function unlessStopped(): Promise<void> {
  return isStopped ? new Promise(() => undefined) : Promise.resolve();
}

/** The deepest first. */
function removeEmpty(folders: readonly string[]): void {
  for (const folder of folders) {
    try {
      rmdirSync(folder);
    } catch {
      // It has something in it, or is gone.
    }
  }
}
