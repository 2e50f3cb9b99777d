/** What the command line makes files of: specs, and the tags of their batches. */

import { basename } from 'node:path';
import { reportsOf } from '../engine/batch.ts';
import type { Engine, Report } from '../engine/engine.ts';
import { isError } from '../core/issue.ts';
import { freeFileName, tagFileName } from '../export/file-names.ts';
import { jobOf } from '../export/job.ts';
import type { Job } from '../export/job.ts';
import { labelOf } from '../spec/batch.ts';
import { printReport } from './check.ts';
import type { SpecFile } from './files.ts';

export interface NamedJob {
  /** Of its files, without their endings; no two share one. */
  readonly name: string;
  readonly job: Job;
  /** What it is a job of. */
  readonly report: Report;
}

/**
 * Each tag in turn, once what keeps the others from being made has been told; `complete` says afterwards whether none was.
 * @param force Also those with errors.
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
    const { file } = spec;
    for await (const { report, told } of this.sound(spec)) {
      const job = jobOf(report);
      if (!job) {
        console.error(`${told}: there is nothing to cut.`);
        this.complete = false;
        continue;
      }
      const wanted = tagFileName(specName(file), report);
      const name = report.batch ? freeFileName(wanted, this.#names) : wanted;
      this.#names.add(name);
      yield { name, job, report };
    }
  }

  /** What is to be made something of; `told`: what it is called in messages. */
  async *sound({ file, text, options }: SpecFile): AsyncGenerator<{ readonly report: Report; readonly told: string }> {
    const first = await this.#engine.compute(text, options);
    for (const report of await reportsOf(this.#engine, first, options)) {
      const label = labelOf(report);
      const told = label === undefined ? file : `${file} (${label})`;
      if (this.#isSound(told, file, report)) yield { report, told };
    }
  }

  #isSound(told: string, file: string, report: Report): boolean {
    const errors = report.issues.filter(isError);
    if (errors.length === 0) return true;
    this.complete = false;
    printReport(file, { ...report, issues: errors });
    console.error(`${told}: has errors and was left out; --force exports it anyway.`);
    return this.#force;
  }
}

/** A spec's name without what says that it is one. */
export function specName(file: string): string {
  return basename(file).replace(/(\.tag)?\.ya?ml$/i, '');
}
