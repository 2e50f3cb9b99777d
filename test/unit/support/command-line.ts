/** The built command line, as a program of its own or in this process. */

import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { buildAll } from '../../../src/dev/build.ts';

export const root = join(import.meta.dirname, '..', '..', '..');
export const cli = join(root, 'dist', 'cli.mjs');

export interface Run {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** `npm test` has built it already, and has editors that read it meanwhile. */
export async function built(): Promise<void> {
  if (process.env['TAGWRIGHT_BUILT'] === undefined) await buildAll();
}

/** In this process, where there is nothing to start: what it prints is caught. */
export async function run(...args: string[]): Promise<Run> {
  const { run: program } = (await import(pathToFileURL(cli).href)) as {
    run: (args: readonly string[]) => Promise<number>;
  };
  const { log, error } = console;
  let [out, err] = ['', ''];
  console.log = (text: string) => (out += `${text}\n`);
  console.error = (text: string) => (err += `${text}\n`);
  try {
    return { code: await program(args), out, err };
  } finally {
    Object.assign(console, { log, error });
  }
}

export function spawned(...args: string[]): Promise<Run> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [cli, ...args], { timeout: 120_000 });
    let [out, err] = ['', ''];
    child.stdout.on('data', (chunk: Buffer) => (out += chunk.toString()));
    child.stderr.on('data', (chunk: Buffer) => (err += chunk.toString()));
    child.on('error', reject);
    child.on('close', (code) => {
      resolve({ code, out, err });
    });
  });
}
