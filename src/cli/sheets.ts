/** `tagwright sheets`: lays all tags of a spec out on its sheets. */

import { mkdir } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { sheetFiles } from '../export/sheets/sheet-files.ts';
import { sheetJobs } from '../export/sheets/sheet-job.ts';
import type { TagReport } from '../export/sheets/sheet-job.ts';
import { sheetFormatsOf } from './export.ts';
import { specName } from '../core/names.ts';
import { counted } from '../core/units.ts';
import { withPackedOutlines } from '../tag/outlines-only.ts';
import { eachFile } from './each-file.ts';
import { inTurns, newEngine } from './files.ts';
import type { SpecFile } from './files.ts';
import { Progress } from './progress.ts';
import { TagJobs } from './tag-jobs.ts';
import { newNestThreads } from './nest-threads.ts';
import { toolsOf } from './tools.ts';
import { exitCodes, UsageError } from './usage.ts';
import { Writer } from './writer.ts';

interface SheetOptions {
  readonly to: string | undefined;
  readonly out: string | undefined;
  readonly force: boolean;
  readonly overwrite: boolean;
  /** Tells how far it is where nobody sees it on a terminal, too. */
  readonly progress: boolean;
}

export async function sheetsAll(
  specs: readonly SpecFile[],
  { to, out, force, overwrite, progress: isToldAnyway }: SheetOptions,
): Promise<number> {
  if (to === undefined || out === undefined) throw new UsageError('sheets needs --to and --out.');
  const wanted = sheetFormatsOf(to);
  await mkdir(out, { recursive: true });
  const engine = newEngine({ isOnce: true });
  const tools = toolsOf(engine);
  const progress = new Progress(isToldAnyway);
  const jobs = new TagJobs(engine, force, progress);
  const threads = newNestThreads();
  const writer = new Writer(overwrite);
  const code = await eachFile(specs, async (spec) => {
    const reports: TagReport[] = [];
    for await (const { first, made } of jobs.rows(spec, { what: 'tag', force })) {
      const { source, batch } = first;
      const tag = made.tag && withPackedOutlines(made.tag);
      reports.push({ ...made, ...(tag ? { tag } : {}), source, ...(batch ? { batch } : {}) });
    }
    // A layout of hundreds of pieces needs the memory.
    engine.forget();
    if (reports.length === 0) return exitCodes.clean;
    progress.tell(`${spec.file} layout`, `${spec.file}: laying out ${counted(reports.length, 'tag')}`);
    const sheets = await sheetJobs(reports, inTurns(), threads.nest);
    if ('problem' in sheets) {
      console.error(`${spec.file}: ${sheets.problem}`);
      return exitCodes.errors;
    }
    for (const { name, value } of sheets.facts) console.error(`${spec.file}: ${name}: ${value}`);
    const files = await sheetFiles(sheets, specName(basename(spec.file)), wanted, tools);
    await writer.writeTogether(new Map(Object.entries(files).map(([file, content]) => [join(out, file), content])));
    return sheets.plan.left.length > 0 ? exitCodes.errors : exitCodes.clean;
  }).finally(() => {
    progress.end();
  });
  threads.end();
  return (await writer.end()) && jobs.complete ? code : exitCodes.errors;
}
