/** `tagwright pack`: all files of a tag, to sell or to send, in a folder for each tag or in one archive. */

import { mkdir } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { archiveOf } from '../export/pack.ts';
import type { Files } from '../export/pack.ts';
import { eachFile } from './each-file.ts';
import { newEngine } from './files.ts';
import type { SpecFile } from './files.ts';
import { Progress } from './progress.ts';
import { TagJobs } from './tag-jobs.ts';
import { exitCodes, UsageError } from './usage.ts';
import { Writer } from './writer.ts';

interface PackOptions {
  readonly out: string | undefined;
  readonly force: boolean;
  readonly overwrite: boolean;
  /** Tells how far it is where nobody sees it on a terminal, too. */
  readonly progress: boolean;
}

export async function packAll(
  specs: readonly SpecFile[],
  { out, force, overwrite, progress: isToldAnyway }: PackOptions,
): Promise<number> {
  if (out === undefined) throw new UsageError('pack needs --out.');
  const progress = new Progress(isToldAnyway);
  const jobs = new TagJobs(newEngine({ isOnce: true }), force, progress);
  const packs: Record<string, Files> = {};
  const code = await eachFile(specs, async (spec) => {
    for await (const { name, files } of jobs.packs(spec)) packs[name] = files;
    return exitCodes.clean;
  }).finally(() => {
    progress.end();
  });
  const all = Object.entries(packs).flatMap(([name, files]) =>
    Object.entries(files).map(([file, bytes]) => [`${name}/${file}`, bytes] as const),
  );
  const outputs = /\.zip$/i.test(out)
    ? [[out, archiveOf(Object.fromEntries(all))] as const]
    : all.map(([path, bytes]) => [join(out, path), bytes] as const);
  const writer = new Writer(overwrite);
  for (const [target, bytes] of all.length > 0 ? outputs : []) {
    await mkdir(dirname(target), { recursive: true });
    await writer.write(target, bytes);
  }
  return (await writer.end()) && jobs.complete ? code : exitCodes.errors;
}
