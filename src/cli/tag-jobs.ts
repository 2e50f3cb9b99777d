/** Export jobs for the command line: one for each tag of the specs and their batches. */

import { basename } from 'node:path';
import type { Engine, Report } from '../engine/engine.ts';
import { isError } from '../core/issue.ts';
import { freeFileName, tagFileName } from '../export/file-names.ts';
import { endings } from '../export/formats.ts';
import type { Format } from '../export/formats.ts';
import { isDraft } from '../export/job/job.ts';
import { toBatchProof } from '../export/pdf/pdf.ts';
import type { TagProof } from '../export/proof/tag-proof.ts';
import { bytesOf } from '../export/pack.ts';
import type { Files } from '../export/pack.ts';
import { makingTag } from '../jobs/progress-words.ts';
import { labelOf } from '../spec/batch/batch.ts';
import { printReport } from './check.ts';
import type { Progress } from './progress.ts';
import { eachTag } from './rows.ts';
import { RowWorker } from './row-work.ts';
import type { RowResult, RowRequest } from './row-work.ts';
import { specName } from '../core/names.ts';
import type { SpecFile } from './files.ts';
import { toolsOf } from './tools.ts';

/**
 * Yields each tag in turn, after printing the problems that keep the others from being made; `complete` then says
 * whether there were none.
 * @param force Includes tags with errors.
 */
export class TagJobs {
  readonly #engine: Engine;
  readonly #force: boolean;
  readonly #progress: Progress | undefined;
  readonly #names = new Set<string>();
  readonly #told = new Set<string>();
  complete = true;

  constructor(engine: Engine, force: boolean, progress?: Progress) {
    this.#engine = engine;
    this.#force = force;
    this.#progress = progress;
  }

  /** The pack of each tag, under a name of its own; threads share the work where the tags are many. */
  async *packs(spec: SpecFile): AsyncGenerator<{ readonly name: string; readonly files: Files }> {
    for await (const { first, made, label } of this.rows(spec, { what: 'pack', force: this.#force })) {
      if (!made.files) {
        this.#nothingToCut(label);
        continue;
      }
      const wanted = tagFileName(specName(basename(spec.file)), { ...first, row: made.row });
      const name = this.#nameOf(spec.file, { ...first, row: made.row });
      const files = name === wanted ? made.files : (await this.#packed(spec, made.row, name)).files!;
      for (const each of made.lacking ?? []) this.#tell(`${spec.file}: ${each}`);
      yield {
        name,
        files: Object.fromEntries(Object.entries(files).map(([file, content]) => [file, bytesOf(content)])),
      };
    }
  }

  /** Once more, under a name that is not taken: it stands in the pack. */
  #packed({ file, text, options }: SpecFile, row: number, name: string): Promise<RowResult> {
    const wish = { what: 'pack', force: this.#force, name } as const;
    return new RowWorker({ file, text, severities: options.severities ?? {}, wish }, this.#engine).make({ row });
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
    let title = '';
    const proofs: TagProof[] = [];
    for await (const { first, made, label } of this.rows(spec, wish)) {
      if (!made.files) {
        this.#nothingToCut(label);
        continue;
      }
      title = first.batch?.title ?? '';
      if (made.proof) proofs.push(made.proof);
      const name = this.#nameOf(spec.file, { ...first, row: made.row });
      yield Object.fromEntries(Object.entries(made.files).map(([ending, content]) => [name + ending, content]));
    }
    const proof = await toBatchProof(title, proofs, toolsOf(this.#engine));
    if (proof) yield { [specName(basename(spec.file)) + endings.proof]: proof };
  }

  /** The tags to be made, in the requested form. `label`: name of the tag in messages. */
  async *rows(
    spec: SpecFile,
    wish: RowRequest,
  ): AsyncGenerator<{ readonly first: Report; readonly made: RowResult; readonly label: string }> {
    const progress = (done: number, all: number): void =>
      this.#progress?.tell(spec.file, `${spec.file}: ${makingTag(done, all)}`);
    for await (const { first, made } of eachTag(this.#engine, spec, wish, progress)) {
      const label = labelFor(spec.file, { ...first, row: made.row });
      if (this.#isSound(label, spec.file, { ...made, source: first.source })) yield { first, made, label };
    }
  }

  #nameOf(file: string, tag: Pick<Report, 'batch' | 'row'>): string {
    const wanted = tagFileName(specName(basename(file)), tag);
    const name = tag.batch ? freeFileName(wanted, this.#names) : wanted;
    this.#names.add(name);
    return name;
  }

  /** Once, not for every tag of a batch. */
  #tell(message: string): void {
    if (!this.#told.has(message)) console.error(message);
    this.#told.add(message);
  }

  #nothingToCut(label: string): void {
    console.error(`${label}: there is nothing to cut.`);
    this.complete = false;
  }

  #isSound(label: string, file: string, report: Pick<Report, 'issues' | 'accepted' | 'source'>): boolean {
    const errors = report.issues.filter(isError);
    if (errors.length === 0) {
      if (isDraft(report))
        this.#tell(`${label}: words on it are not filled in; its proof and its pictures say “Draft”.`);
      return true;
    }
    this.complete = false;
    printReport(file, { ...report, issues: errors });
    console.error(
      `${label}: has errors and ${this.#force ? 'is exported anyway, as --force asks.' : 'was left out; --force exports it anyway.'}`,
    );
    return this.#force;
  }
}

function labelFor(file: string, tag: Pick<Report, 'batch' | 'row'>): string {
  const label = labelOf(tag);
  return label === undefined ? file : `${file} (${label})`;
}
