/**
 * From the text of a job to its sheets. Every problem is reported at its place, and the rest is laid out all the same.
 */

import type { Issue, YamlPath } from '../core/issue.ts';
import { inOrder } from '../core/issue.ts';
import type { IssueCode, Severity } from '../core/issue-kinds.ts';
import { clip } from '../core/length.ts';
import { counted } from '../core/units.ts';
import { usualEffort } from '../nesting/nest.ts';
import { SpecSource } from '../spec/yaml/source.ts';
import { loadUses } from '../spec/files/used-files.ts';
import type { Uses } from '../spec/files/used-files.ts';
import { layOut, layoutOf } from './layout/layout.ts';
import type { DraftSheet, JobLayout, LayoutOptions } from './layout/layout.ts';
import { notKept } from './layout/not-kept.ts';
import type { FileIssues, JobModel } from './read/model.ts';
import { cameLater, cutFromSince } from './offcuts/offcut-words.ts';
import { outdatedOffcuts } from './offcuts/write-offcuts.ts';
import { laterOffcuts, readOffcuts } from './read/offcuts.ts';
import type { OffcutFile } from './read/offcuts.ts';
import { turnOf } from './orders/orders.ts';
import { jobPieces } from './layout/pieces.ts';
import type { JobPieces } from './layout/pieces.ts';
import { readJob } from './read/read-job.ts';
import { jobWork } from './orders/work.ts';
import type { JobReading } from './orders/reading.ts';
import type { JobWork, LeftOutTag } from './orders/work.ts';

/** A job whose tags have been made. */
export interface CheckedJob {
  readonly source: SpecSource;
  /** Name of the job in files of offcuts, which is its file name. */
  readonly name: string;
  readonly title: string;
  readonly uses: Uses;
  /** Absent if nothing could be made of the text. */
  readonly model?: JobModel;
  readonly pieces?: JobPieces;
  readonly offcuts: ReadonlyMap<string, OffcutFile>;
  readonly leftOut: readonly LeftOutTag[];
  /** What is wrong with tags that are made all the same, by its issue. */
  readonly warnings: JobWork['warnings'];
  /** In the order of the tables and their lines. */
  readonly orders: readonly string[];
  /** What the lines of each table of orders call the specs. */
  readonly products: JobWork['products'];
  /** Issues of the job itself, in text order. */
  readonly issues: readonly Issue[];
  readonly inFiles: readonly FileIssues[];
  /** Full paths of all files it depends on. */
  readonly files: readonly string[];
}

/**
 * `name`: file name without the folder. Rejects only with what the checkpoint throws, never because of the job's
 * contents.
 */
export async function checkJob(text: string, name: string, reading: JobReading): Promise<CheckedJob> {
  const source = new SpecSource(text);
  const { engine, locate } = reading;
  const uses = await loadUses(source, { read: (path) => engine.readText(path), locate, beside: engine.beside });
  const { model, issues: read } = readJob(source, uses);
  const title = model?.title ?? name.replace(/(\.job)?\.ya?ml$/i, '');
  const warnings: JobWork['warnings'] = new Map();
  const nothing = { leftOut: [], warnings, orders: [], products: new Map<string, string[]>(), inFiles: [] };
  const empty = { source, name, title, uses, offcuts: new Map<string, OffcutFile>(), ...nothing };
  if (!model) return { ...empty, issues: read, files: uses.files };
  const issues: Issue[] = [...read];
  const reportProblem = (severity: Severity, code: IssueCode, path: YamlPath, message: string) => {
    issues.push({ code, severity, path, range: source.range(path), message });
  };
  const offcuts = await loadOffcuts(model, name, reading, reportProblem);
  const told = read.flatMap(({ path, message }) => (path[0] === 'use' ? [message] : []));
  const work: JobWork = await jobWork(model, source, reading, new Set(told));
  const turn = turnOf(work.orders);
  const unread = model.unread.map((each) => ({ ...each, order: '', label: '' }));
  const pieces = jobPieces(model, work, source, { offcuts, job: name });
  const ofOffcuts = [...offcuts.values()].filter((file) => file.issues.length > 0);
  return {
    ...empty,
    model,
    pieces,
    offcuts,
    orders: work.orders,
    products: work.products,
    warnings: work.warnings,
    leftOut: [...unread, ...work.leftOut, ...pieces.leftOut].sort((a, b) => turn(a.order) - turn(b.order)),
    issues: inOrder([...issues, ...work.issues, ...pieces.issues]),
    inFiles: [
      ...work.inFiles,
      ...ofOffcuts.map(({ file, name: named, issues: found, source: own }) => ({
        file,
        name: named,
        position: (offset: number) => own!.position(offset),
        issues: found,
      })),
    ],
    files: [...new Set([...uses.files, ...work.files, ...[...offcuts.values()].map(({ file }) => file)])],
  };
}

type ReportProblem = (severity: Severity, code: IssueCode, path: YamlPath, message: string) => void;

async function loadOffcuts(
  { sheets }: JobModel,
  job: string,
  { engine, locate }: JobReading,
  reportProblem: ReportProblem,
): Promise<Map<string, OffcutFile>> {
  const found = new Map<string, OffcutFile>();
  for (const each of [...sheets.values()].flat()) {
    if (each.kind === 'sheets') continue;
    const path = [...each.path, 'offcuts'];
    const name = each.file;
    const file = locate(name);
    if (file === undefined) {
      reportProblem('error', 'bad-file', path, `“${clip(name)}” is not inside the job's folder.`);
      continue;
    }
    const text = await engine.readText(file).catch(() => undefined);
    if (text === undefined) {
      const isOther = await isThere(file, engine);
      found.set(name, { file, name, offcuts: [], issues: [], isOther });
      if (isOther)
        reportProblem(
          'error',
          'bad-file',
          path,
          `“${clip(name)}” is there, but cannot be read; nothing is written into it.`,
        );
      else reportProblem('info', 'bad-file', path, `“${clip(name)}” is not there yet; exporting the job writes it.`);
      continue;
    }
    const source = new SpecSource(text);
    const read = { file, name, source, ...readOffcuts(source) };
    found.set(name, read);
    const faults = read.issues.length;
    if (faults > 0)
      reportProblem(
        'warning',
        'bad-file',
        path,
        `“${clip(name)}” has ${counted(faults, 'problem')}; what it concerns is not used.`,
      );
    const later = laterOffcuts(read, job).filter(({ from }) => from === undefined);
    if (later.length > 0) reportProblem('info', 'bad-file', path, cameLater(later, job));
  }
  return found;
}

/** Whether the folder lists a file, which may be a folder itself or not be readable. */
async function isThere(file: string, { beside }: JobReading['engine']): Promise<boolean> {
  const name = /[^\\/]*$/.exec(file)![0];
  const names = await beside(file).catch(() => []);
  return names.some((each) => each === name || encodeURIComponent(each) === name);
}

/** Includes the problems found by the layout. */
export interface LaidOutJob extends CheckedJob {
  readonly model: JobModel;
  readonly pieces: JobPieces;
  readonly layout: JobLayout;
}

/** `undefined` if there is nothing to lay out. */
export async function layOutJob(
  job: CheckedJob,
  options: Omit<LayoutOptions, 'keepTogether'>,
): Promise<LaidOutJob | undefined> {
  const { model, pieces } = job;
  if (!model || !pieces || pieces.stocks.length === 0) return undefined;
  const { keepTogether, effort } = model;
  const layout = await layOut(pieces, { effort: effort * usualEffort, ...options, keepTogether });
  return withLayout({ ...job, model, pieces }, layout);
}

/** The job with sheets that a search has found on its way; `undefined` if there are none. */
export async function jobOnSheets(
  job: CheckedJob,
  sheets: readonly DraftSheet[],
  checkpoint: () => Promise<void>,
): Promise<LaidOutJob | undefined> {
  const { model, pieces } = job;
  if (!model || !pieces || sheets.length === 0) return undefined;
  return withLayout({ ...job, model, pieces }, await layoutOf(sheets, pieces, checkpoint));
}

function withLayout(job: Omit<LaidOutJob, 'layout'>, layout: JobLayout): LaidOutJob {
  const { model, pieces, source } = job;
  const { keepTogether } = model;
  const lacking = new Map<string, number>();
  for (const { stock } of layout.left) lacking.set(stock, (lacking.get(stock) ?? 0) + 1);
  // Where an entry of its list cannot be read, that is told.
  for (const stock of model.sheetsUnread) lacking.delete(stock);
  const issues = [...lacking].map(([stock, count]): Issue => {
    const path = ['sheets', stock];
    const message = `${counted(count, 'piece')} of “${clip(stock)}” ${count === 1 ? 'goes' : 'go'} on no sheet: all that are listed here are used up.`;
    return { code: 'exceeds-sheet', severity: 'error', path, range: source.keyRange(path), message };
  });
  const apart = notKept(layout, keepTogether).map(({ path, message }): Issue => {
    const range = source.range(path);
    return { code: 'exceeds-sheet', severity: 'info', path, range, message };
  });
  const files = outdatedOffcuts({ name: job.name, model, offcuts: job.offcuts, layout });
  const outdated = [...model.sheets.values()].flat().flatMap((each): Issue[] => {
    if (each.kind === 'sheets') return [];
    const path = [...each.path, 'offcuts'];
    const found = files.get(each.file);
    return found
      ? [{ code: 'bad-value', severity: 'warning', path, range: source.range(path), message: cutFromSince(found) }]
      : [];
  });
  return { ...job, model, pieces, layout, issues: inOrder([...job.issues, ...issues, ...apart, ...outdated]) };
}
