/**
 * `tagwright job`: lays the tags of many specs and orders out on the available sheets; writes all of the job's files,
 * or none.
 */

import { existsSync } from 'node:fs';
import { mkdir, readFile } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { isError } from '../core/issue.ts';
import type { Issue } from '../core/issue.ts';
import type { Engine } from '../engine/engine.ts';
import type { Severities } from '../engine/severity.ts';
import { FilesTogether } from '../export/node-write-whole.ts';
import { checkJob, layOutJob } from '../jobs/job.ts';
import type { CheckedJob, LaidOutJob } from '../jobs/job.ts';
import { eachJobFile } from '../jobs/papers/job-files.ts';
import { jobJson } from '../jobs/papers/job-json.ts';
import { layingOut, makingTag } from '../jobs/progress-words.ts';
import type { FileIssues } from '../jobs/read/model.ts';
import { jobFacts } from '../jobs/totals.ts';
import { offcutChanges } from '../jobs/offcuts/write-offcuts.ts';
import type { JobReading } from '../jobs/orders/reading.ts';
import { eachFile } from './each-file.ts';
import { inTurns, newEngine } from './files.ts';
import type { SpecFile } from './files.ts';
import { eachAsked } from './rows.ts';
import { newNestThreads } from './nest-threads.ts';
import { Progress } from './progress.ts';
import { toolsOf } from './tools.ts';
import { exitCodes, UsageError } from './usage.ts';
import { differing, sayDiffers } from './writer.ts';

interface JobOptions {
  readonly out: string | undefined;
  readonly json: boolean;
  readonly overwrite: boolean;
  /** Tells how far it is where nobody sees it on a terminal, too. */
  readonly progress: boolean;
}

/** Stocks are laid out one after another, each several times, and a thread that has just begun is slow. */
const keepMs = 20_000;

export async function jobAll(specs: readonly SpecFile[], options: JobOptions, severities: Severities): Promise<number> {
  const { out } = options;
  if (out === undefined) throw new UsageError('job needs --out.');
  // A folder that is not there yet is made with its files; a file of its name is told now, before the tags are made.
  if (existsSync(out)) await mkdir(out, { recursive: true });
  const objects: object[] = [];
  const progress = new Progress(options.progress);
  const code = await eachFile(
    specs,
    async (spec) => {
      const { object, isWhole } = await oneJob(spec, { ...options, out, progress }, severities);
      objects.push(object);
      return isWhole ? exitCodes.clean : exitCodes.errors;
    },
    'job',
  ).finally(() => {
    progress.end();
  });
  if (options.json) console.log(JSON.stringify(objects, null, 2));
  return code;
}

type OwnOptions = Omit<JobOptions, 'progress'> & { readonly out: string; readonly progress: Progress };

async function oneJob(
  { file, text, options: { locate } }: SpecFile,
  { out, json, overwrite, progress }: OwnOptions,
  severities: Severities,
): Promise<{ readonly object: object; readonly isWhole: boolean }> {
  // It is the job's own, and what the job writes is compared with what is there by then.
  const engine = newEngine({ isOnce: true });
  const checkpoint = inTurns();
  const tell = (step: string, words: string) => {
    progress.tell(`${file} ${step}`, `${file}: ${words}`);
  };
  const reading: JobReading = {
    engine,
    locate,
    optionsFor: (spec) => ({ locate: (relative) => resolve(dirname(spec), relative), severities }),
    checkpoint,
    progress: (done, all) => {
      tell('tags', makingTag(done, all));
    },
    // Of what has errors too: what is wrong with it is told, and why it is left out.
    eachTag: (spec, specText, asked) =>
      eachAsked(engine, { file: spec, text: specText, severities, wish: { what: 'tag', force: true } }, asked),
  };
  const job = await checkJob(text, basename(file), reading);
  // What the tags were made of is not needed again.
  engine.forget();
  const threads = newNestThreads(keepMs);
  const laid = await layOutJob(job, {
    checkpoint,
    nest: threads.nest,
    progress: (at) => {
      tell(`${at.stock} ${at.sheets === undefined}`, layingOut(at));
    },
  }).finally(() => {
    threads.end();
  });
  if (!json) printIssues(file, laid ?? job);
  const isSound = ![...(laid ?? job).issues, ...job.inFiles.flatMap(({ issues }) => issues)].some(isError);
  const written =
    laid && laid.layout.sheets.length > 0 ? await writeJob(laid, engine, { out, overwrite, checkpoint, tell }) : [];
  if (!json && laid && written && written.length > 0) {
    for (const target of written) console.log(target);
    for (const { name, value } of jobFacts(laid)) console.error(`${file}: ${name}: ${value}`);
  } else if (!json && written) console.error(`${file}: there is nothing to cut.`);
  return { object: jobJson(file, job, laid, written ?? []), isWhole: isSound && written !== undefined };
}

interface Writing {
  readonly out: string;
  readonly overwrite: boolean;
  readonly checkpoint: () => Promise<void>;
  readonly tell: (step: string, words: string) => void;
}

/** The files written; `undefined` if something that is there must stay. Half a job is worse than none. */
async function writeJob(
  laid: LaidOutJob,
  engine: Engine,
  { out, overwrite, checkpoint, tell }: Writing,
): Promise<readonly string[] | undefined> {
  const files = new FilesTogether();
  try {
    await files.addFolder(out);
    const standing: string[] = [];
    const made = eachJobFile(laid, toolsOf(engine), checkpoint, (words) => {
      tell(words.replace(/\d.*/, ''), words);
    });
    for await (const [name, content] of made) {
      const target = join(out, name);
      if (!overwrite) standing.push(...(await differing(new Map([[target, content]]))));
      if (standing.length === 0) await files.add(target, content);
    }
    for (const target of standing) sayDiffers(target);
    if (standing.length > 0) return undefined;
    for (const { file, name, before, after } of offcutChanges(laid)) {
      if ((await readFile(file, 'utf8').catch(() => undefined)) !== before) {
        console.error(`${name} has changed in the meantime; nothing was written. Run the job again.`);
        return undefined;
      }
      await files.add(file, after);
    }
    const { targets } = files;
    await files.appear();
    return targets;
  } finally {
    await files.drop();
  }
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
