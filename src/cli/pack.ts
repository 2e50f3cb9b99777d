/** `tagwright pack`: everything of a tag, to sell or to send, in a folder of its own or all in one archive. */

import { mkdir } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { jobOf } from '../output/job.ts';
import { archiveOf, packOf } from '../output/pack.ts';
import type { Files } from '../output/pack.ts';
import { sound, specName, write } from './export.ts';
import { newEngine } from './files.ts';
import type { SpecFile } from './files.ts';
import { toolsOf } from './tools.ts';
import { exitCodes, UsageError } from './usage.ts';

export async function packAll(
  specs: readonly SpecFile[],
  { out, force, overwrite }: { readonly out: string | undefined; readonly force: boolean; readonly overwrite: boolean },
): Promise<number> {
  if (out === undefined) throw new UsageError('pack needs --out.');
  const engine = newEngine();
  const tools = toolsOf(engine);
  let code: number = exitCodes.clean;
  const packs: Record<string, Files> = {};
  for (const { file, text, options } of specs) {
    const report = await engine.compute(text, options);
    if (!sound(file, report)) {
      code = exitCodes.errors;
      if (!force) continue;
    }
    const job = jobOf(report);
    if (job) packs[specName(file)] = await packOf(job, specName(file), tools);
    else console.error(`${file}: there is nothing to cut.`);
    if (!job) code = exitCodes.errors;
  }
  const all = Object.entries(packs).flatMap(([name, files]) =>
    Object.entries(files).map(([file, bytes]) => [`${name}/${file}`, bytes] as const),
  );
  const written = /\.zip$/i.test(out)
    ? [[out, archiveOf(Object.fromEntries(all))] as const]
    : all.map(([path, bytes]) => [join(out, path), bytes] as const);
  for (const [target, bytes] of all.length > 0 ? written : []) {
    await mkdir(dirname(target), { recursive: true });
    if (await write(target, bytes, overwrite)) console.log(target);
    else {
      console.error(`${target}: exists and differs; --overwrite replaces it.`);
      code = exitCodes.errors;
    }
  }
  return code;
}
