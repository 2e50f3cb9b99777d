/**
 * `tagwright job`: lays the tags of many specs and orders out on the available sheets; writes all of the job's files,
 * or none.
 */

import { existsSync } from 'node:fs';
import { mkdir, readFile } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { isError } from '../core/issue.ts';
import type { Issue } from '../core/issue.ts';
import type { Severities } from '../engine/severity.ts';
import { writeAllWhole } from '../export/node-write-whole.ts';
import { checkJob, layOutJob } from '../jobs/job.ts';
import type { CheckedJob } from '../jobs/job.ts';
import { jobFiles } from '../jobs/papers/job-files.ts';
import { jobJson } from '../jobs/papers/job-json.ts';
import type { FileIssues } from '../jobs/read/model.ts';
import { jobFacts } from '../jobs/totals.ts';
import { offcutChanges } from '../jobs/offcuts/write-offcuts.ts';
import type { JobReading } from '../jobs/orders/reading.ts';
import { newEngine } from './files.ts';
import type { SpecFile } from './files.ts';
import { eachAsked } from './rows.ts';
import { newNestThreads } from './nest-threads.ts';
import { toolsOf } from './tools.ts';
import { exitCodes, UsageError } from './usage.ts';
import { differing, sayDiffers } from './writer.ts';

interface JobOptions {
  readonly out: string | undefined;
  readonly json: boolean;
  readonly overwrite: boolean;
}

/** Stocks are laid out one after another, each several times, and a thread that has just begun is slow. */
const keepMs = 20_000;

const neverWaits = (): Promise<void> => Promise.resolve();

export async function jobAll(specs: readonly SpecFile[], options: JobOptions, severities: Severities): Promise<number> {
  const { out } = options;
  if (out === undefined) throw new UsageError('job needs --out.');
  // A folder that is not there yet is made with its files; a file of its name is told now, before the tags are made.
  if (existsSync(out)) await mkdir(out, { recursive: true });
  const objects: object[] = [];
  let code: number = exitCodes.clean;
  for (const spec of specs) {
    const { object, isWhole } = await oneJob(spec, { ...options, out }, severities);
    objects.push(object);
    if (!isWhole) code = exitCodes.errors;
  }
  if (options.json) console.log(JSON.stringify(objects, null, 2));
  return code;
}

async function oneJob(
  { file, text, options: { locate } }: SpecFile,
  { out, json, overwrite }: JobOptions & { readonly out: string },
  severities: Severities,
): Promise<{ readonly object: object; readonly isWhole: boolean }> {
  const engine = newEngine();
  const reading: JobReading = {
    engine,
    locate,
    optionsFor: (spec) => ({ locate: (relative) => resolve(dirname(spec), relative), severities }),
    checkpoint: neverWaits,
    // Of what has errors too: what is wrong with it is told, and why it is left out.
    eachTag: (spec, specText, asked) =>
      eachAsked(engine, { file: spec, text: specText, severities, wish: { what: 'tag', force: true } }, asked),
  };
  const job = await checkJob(text, basename(file), reading);
  const threads = newNestThreads(keepMs);
  const laid = await layOutJob(job, { checkpoint: neverWaits, nest: threads.nest }).finally(() => {
    threads.end();
  });
  if (!json) printIssues(file, laid ?? job);
  const written: string[] = [];
  let isWhole = ![...(laid ?? job).issues, ...job.inFiles.flatMap(({ issues }) => issues)].some(isError);
  if (laid && laid.layout.sheets.length > 0) {
    const outputs = new Map<string, Uint8Array>();
    for (const [name, content] of Object.entries(await jobFiles(laid, toolsOf(engine), neverWaits)))
      outputs.set(join(out, name), content);
    const standing = overwrite ? [] : await differing(outputs);
    for (const target of standing) sayDiffers(target);
    // Half a job is worse than none, so existing files stay as they were.
    if (standing.length > 0) isWhole = false;
    else {
      const changes = offcutChanges(laid);
      for (const { file: target, after } of changes) outputs.set(target, new TextEncoder().encode(after));
      for (const { file: target, name, before } of changes)
        if ((await readFile(target, 'utf8').catch(() => undefined)) !== before)
          throw new Error(`${name} has changed in the meantime; nothing was written. Run the job again.`);
      await mkdir(out, { recursive: true });
      await writeAllWhole(outputs);
      written.push(...outputs.keys());
      if (!json) for (const target of written) console.log(target);
      if (!json) for (const { name, value } of jobFacts(laid)) console.error(`${file}: ${name}: ${value}`);
    }
  } else if (!json) console.error(`${file}: there is nothing to cut.`);
  return { object: jobJson(file, job, laid, written), isWhole };
}

function printIssues(file: string, { source, issues, inFiles }: CheckedJob): void {
  const print = (name: string, found: readonly Issue[], position: FileIssues['position']) => {
    for (const { severity, code, message, range } of found) {
      const { line, column } = position(range.start);
      console.log(`${name}:${line}:${column}: ${severity}: ${message} [${code}]`);
    }
  };
  print(file, issues, (offset) => source.position(offset));
  for (const { name, issues: found, position } of inFiles) print(join(dirname(file), name), found, position);
}
