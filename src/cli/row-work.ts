/** The work of a command on one tag of a batch, in this thread or another: input and output are plain data. */

import { basename, resolve, dirname } from 'node:path';
import { rowCount } from '../engine/batch.ts';
import type { RowIssues } from '../engine/batch.ts';
import type { Engine, Report } from '../engine/engine.ts';
import type { AcceptedIssue, Severities } from '../engine/severity.ts';
import { isError } from '../core/issue.ts';
import type { Issue } from '../core/issue.ts';
import { tagFileName } from '../export/file-names.ts';
import { filesIn } from '../export/formats.ts';
import type { Format } from '../export/formats.ts';
import { jobOf } from '../export/job/job.ts';
import type { Job } from '../export/job/job.ts';
import { packOf } from '../export/pack.ts';
import { tagProof } from '../export/proof/tag-proof.ts';
import type { TagProof } from '../export/proof/tag-proof.ts';
import { withSpec } from '../language/along/spec-along.ts';
import type { TagAsk } from '../jobs/orders/tag-ask.ts';
import { labelOf } from '../spec/batch/batch.ts';
import { approvedTag } from '../tag/approval/approval-text.ts';
import type { ApprovedTag } from '../tag/approval/read-approval.ts';
import { outlinesOnly } from '../tag/outlines-only.ts';
import type { Tag } from '../tag/tag.ts';
import { specName } from '../core/names.ts';
import { ownFault } from './each-file.ts';
import { newEngine } from './files.ts';
import { rowJson } from './report-json.ts';
import { toolsOf } from './tools.ts';

/**
 * `json`: the row as in `check --json`. `files`: in some formats. `tag`: for laying out. `approval`: as it is recorded. `pack`: every file, under the
 * name given or else the tag's own. Tags with errors are skipped
 * unless `force` is set.
 */
export type RowRequest =
  | { readonly what: 'issues' }
  | { readonly what: 'json' }
  | {
      readonly what: 'files';
      readonly formats: readonly Format[];
      readonly pictureWidth?: number;
      readonly force: boolean;
    }
  | { readonly what: 'tag'; readonly force: boolean }
  | { readonly what: 'approval' }
  | { readonly what: 'pack'; readonly force: boolean; readonly name?: string };

export interface RowTask {
  readonly file: string;
  readonly text: string;
  readonly severities: Severities;
  readonly wish: RowRequest;
}

export interface RowResult {
  readonly row: number;
  readonly issues: readonly Issue[];
  readonly accepted: readonly AcceptedIssue[];
  readonly alike?: Report['alike'];
  readonly json?: object;
  /** By file name ending, those of a pack by whole name; absent if there is nothing to cut. */
  readonly files?: Readonly<Record<string, string | Uint8Array>>;
  /** What the spec of a pack needs and is not in it. */
  readonly lacking?: readonly string[];
  /** For the proof of its batch. */
  readonly proof?: TagProof;
  readonly tag?: Tag;
  /** As a customer approves it. */
  readonly approved?: ApprovedTag;
}

/** What is kept of a row for the report on its batch. */
export function issuesOfRow({ batch }: Pick<Report, 'batch'>, { row, issues, alike }: RowResult): RowIssues {
  return { row, issues, ...(batch ? { batch } : {}), ...(alike ? { alike } : {}) };
}

/** Works on a spec with the engine of one thread. */
export class RowWorker {
  readonly #engine: Engine;
  readonly #task: RowTask;

  constructor(task: RowTask, engine = newEngine({ isOnce: true })) {
    this.#engine = engine;
    this.#task = task;
  }

  readonly #locate = (relative: string): string => resolve(dirname(resolve(this.#task.file)), relative);

  /** A tag that the program fails on is one with an error, so that the others are made. */
  async make(ask: TagAsk): Promise<RowResult> {
    const { text, severities } = this.#task;
    try {
      return await this.of(await this.#engine.compute(text, { locate: this.#locate, severities, ...ask }));
    } catch (error) {
      const range = { start: 0, end: 0 };
      const issue: Issue = { code: 'empty-shape', severity: 'error', path: [], range, message: ownFault(error) };
      return { row: ask.row, issues: [issue], accepted: [] };
    }
  }

  /** For a report that has already been computed. */
  async of(report: Report): Promise<RowResult> {
    const { row, issues, accepted, alike } = report;
    return { row, issues, accepted, ...(alike ? { alike } : {}), ...(await this.#requested(report)) };
  }

  async #requested(report: Report): Promise<Omit<RowResult, 'row' | 'issues' | 'accepted' | 'alike'>> {
    const { wish } = this.#task;
    if (wish.what === 'issues') return {};
    if (wish.what === 'json') return { json: rowJson(report) };
    if (wish.what === 'approval')
      return report.tag && !report.issues.some(isError) ? { approved: approvedTag(report.tag, labelOf(report)) } : {};
    if (report.issues.some(isError) && !wish.force) return {};
    if (wish.what === 'tag') return report.tag ? { tag: outlinesOnly(report.tag) } : {};
    const job = jobOf(report);
    if (!job) return {};
    const tools = toolsOf(this.#engine);
    if (wish.what === 'pack') {
      const name = wish.name ?? tagFileName(specName(basename(this.#task.file)), report);
      const { fonts, read } = this.#engine;
      const whole = await withSpec(job, report, { fonts, read, locate: this.#locate });
      return { files: await packOf(whole, name, tools), lacking: whole.along?.lacking ?? [] };
    }
    const drawnJob = wish.pictureWidth === undefined ? job : withPictures(job, wish.pictureWidth);
    const files: Record<string, string | Uint8Array> = {};
    // The tags of a batch have one proof together.
    const isTogether = (format: Format): boolean => format === 'proof' && rowCount(report) > 1;
    for (const format of wish.formats)
      if (!isTogether(format)) Object.assign(files, await filesIn(format, drawnJob, '', tools));
    return { files, ...(wish.formats.some(isTogether) ? { proof: await tagProof(job, tools) } : {}) };
  }
}

function withPictures(job: Job, pictureWidth: number): Job {
  const { tag } = job;
  return { ...job, tag: { ...tag, output: { ...tag.output, pictureWidth } } };
}
