/** Export jobs for the command line: one for each tag of the specs and their batches. */

import { basename } from 'node:path';
import { eachReport } from '../engine/batch.ts';
import type { Engine, Report } from '../engine/engine.ts';
import { isError } from '../core/issue.ts';
import { freeFileName, tagFileName } from '../export/file-names.ts';
import { jobOf } from '../export/job.ts';
import type { Job } from '../export/job.ts';
import type { Format } from '../export/formats.ts';
import { labelOf } from '../spec/batch.ts';
import { printReport } from './check.ts';
import { eachRow } from './rows.ts';
import type { RowMade, RowWish } from './row-work.ts';
import type { SpecFile } from './files.ts';

export interface NamedJob {
  /** Base name of its files, unique among the jobs. */
  readonly name: string;
  readonly job: Job;
  /** The report it was made from. */
  readonly report: Report;
}

/**
 * Yields each tag in turn, after printing the problems that keep the others from being made; `complete` then says
 * whether there were none.
 * @param force Includes tags with errors.
 */
export class Jobs {
  readonly #engine: Engine;
  readonly #force: boolean;
  readonly #names = new Set<string>();
  complete = true;

  constructor(engine: Engine, force: boolean) {
    this.#engine = engine;
    this.#force = force;
  }

  async *of(spec: SpecFile): AsyncGenerator<NamedJob> {
    const { file, text, options } = spec;
    const first = await this.#engine.compute(text, options);
    for await (const report of eachReport(this.#engine, first, options)) {
      const told = toldOf(file, report);
      if (!this.#isSound(told, file, report)) continue;
      const job = jobOf(report);
      if (job) yield { name: this.#nameOf(file, report), job, report };
      else this.#nothingToCut(told);
    }
  }

  /** The files of each tag; with many tags, the work is shared between threads. */
  async *files(
    spec: SpecFile,
    formats: readonly Format[],
    pictureWidth: number | undefined,
  ): AsyncGenerator<Readonly<Record<string, string | Uint8Array>>> {
    const wish = {
      what: 'files',
      formats,
      force: this.#force,
      ...(pictureWidth === undefined ? {} : { pictureWidth }),
    } as const;
    for await (const { first, made, told } of this.rows(spec, wish)) {
      if (!made.files) {
        this.#nothingToCut(told);
        continue;
      }
      const name = this.#nameOf(spec.file, { ...first, row: made.row });
      yield Object.fromEntries(Object.entries(made.files).map(([ending, content]) => [name + ending, content]));
    }
  }

  /** The tags to be made, in the requested form. `told`: name of the tag in messages. */
  async *rows(
    { file, text, options }: SpecFile,
    wish: RowWish,
  ): AsyncGenerator<{ readonly first: Report; readonly made: RowMade; readonly told: string }> {
    const first = await this.#engine.compute(text, options);
    const task = { file, text, severities: options.severities ?? {}, wish };
    for await (const made of eachRow(this.#engine, task, first)) {
      const told = toldOf(file, { ...first, row: made.row });
      if (this.#isSound(told, file, { ...made, source: first.source })) yield { first, made, told };
    }
  }

  #nameOf(file: string, tag: Pick<Report, 'batch' | 'row'>): string {
    const wanted = tagFileName(specName(file), tag);
    const name = tag.batch ? freeFileName(wanted, this.#names) : wanted;
    this.#names.add(name);
    return name;
  }

  #nothingToCut(told: string): void {
    console.error(`${told}: there is nothing to cut.`);
    this.complete = false;
  }

  #isSound(told: string, file: string, report: Pick<Report, 'issues' | 'accepted' | 'source'>): boolean {
    const errors = report.issues.filter(isError);
    if (errors.length === 0) return true;
    this.complete = false;
    printReport(file, { ...report, issues: errors });
    console.error(`${told}: has errors and was left out; --force exports it anyway.`);
    return this.#force;
  }
}

function toldOf(file: string, tag: Pick<Report, 'batch' | 'row'>): string {
  const label = labelOf(tag);
  return label === undefined ? file : `${file} (${label})`;
}

/** Name of a spec without its `.tag.yaml` ending. */
export function specName(file: string): string {
  return basename(file).replace(/(\.tag)?\.ya?ml$/i, '');
}
