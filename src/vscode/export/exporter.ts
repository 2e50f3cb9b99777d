/** Makes and writes the files of tags, for one piece, one tag or many. Asks only what the request leaves open. */

import { groupedBy } from '../../core/grouped.ts';
import { listed } from '../../core/names.ts';
import * as vscode from 'vscode';
import { reportsOf, rowCount } from '../../engine/batch.ts';
import type { Engine, Report } from '../../engine/engine.ts';
import { isError } from '../../core/issue.ts';
import { freeFileName, tagFileName } from '../../export/file-names.ts';
import { endings, filesIn } from '../../export/formats.ts';
import type { SheetFormat } from '../../export/formats.ts';
import { mostInQuestion, mostNames } from '../../core/in-words.ts';
import { isLayered } from '../../export/bench/assembly-sheet.ts';
import { captionFont, jobOf } from '../../export/job/job.ts';
import type { Job, Tools } from '../../export/job/job.ts';
import { archiveOf, bytesOf, packOf } from '../../export/pack.ts';
import type { Files } from '../../export/pack.ts';
import { sheetFiles } from '../../export/sheets/sheet-files.ts';
import { sheetJobs } from '../../export/sheets/sheet-job.ts';
import { toBatchProof } from '../../export/pdf/pdf.ts';
import { tagProof } from '../../export/proof/tag-proof.ts';
import type { Nester } from '../../nesting/best-of.ts';
import { withSpec } from '../../language/along/spec-along.ts';
import { askFaulty, type Faulty } from './ask-faulty.ts';
import { batchFolder } from './batch-folder.ts';
import { editorTurn, computeOptions, whileWanted } from '../service/compute-options.ts';
import type { SheetMaking } from '../sheets/sheets-view.ts';
import type { ExportRequest } from './request.ts';
import { openDocument } from '../common/documents.ts';
import { specName } from '../../core/names.ts';
import { hasOtherContent, baseName, writeAllWhole } from '../common/write-whole.ts';
import type { WriteWhole } from '../common/write-whole.ts';

interface OutputFile {
  readonly target: vscode.Uri;
  readonly content: Uint8Array;
}

export class Exporter {
  readonly #engine: Engine;
  readonly #tools: Tools;
  readonly #writeWhole: WriteWhole;
  readonly #nest: Nester;
  /** The batch of those that are exported with all of it, and the name of its files. */
  readonly #batchOf = new WeakMap<Job, { readonly title: string; readonly name: string }>();

  constructor({ engine, nest }: SheetMaking, extensionUri: vscode.Uri, writeWhole: WriteWhole) {
    this.#engine = engine;
    this.#writeWhole = writeWhole;
    this.#nest = nest;
    const rasteriser = vscode.Uri.joinPath(extensionUri, 'dist', 'resvg.wasm');
    this.#tools = {
      captions: (weight) => captionFont(engine.fonts, weight),
      rasteriser: () => Promise.resolve(vscode.workspace.fs.readFile(rasteriser)),
    };
  }

  /** The files written, in order; empty if cancelled. */
  async run(request: ExportRequest): Promise<vscode.Uri[]> {
    const title = request.specs.length === 1 ? `Exporting ${baseName(request.specs[0]!)}` : 'Exporting tags';
    const options = { location: vscode.ProgressLocation.Notification, cancellable: true, title };
    const outputs = await vscode.window.withProgress(options, (progress, token) =>
      whileWanted(token, (signal) => this.#make(request, progress, signal)),
    );
    if (!outputs) return [];
    // Among old sheets, new ones would have pieces cut twice or not at all.
    const write = 'sheets' in request.what ? writeAllWhole : oneAfterAnother(this.#writeWhole);
    return writeOutputs(outputs, request.existing ?? 'ask', write);
  }

  async #make(
    request: ExportRequest,
    progress: vscode.Progress<{ message?: string; increment?: number }>,
    signal: AbortSignal,
  ): Promise<OutputFile[]> {
    if ('sheets' in request.what) return this.#sheets(request, request.what.sheets, signal);
    const jobs = await this.#jobs(request, signal);
    const share = 100 / Math.max(1, jobs.size);
    const files: Record<string, Uint8Array> = {};
    sayNotGlued(request, jobs);
    sayLacking(jobs);
    for (const [name, job] of jobs) {
      progress.report({ message: name, increment: share });
      Object.assign(files, await this.#filesOf(job, name, oneByOne(request, this.#batchOf.get(job)), signal));
      signal.throwIfAborted();
    }
    if ('formats' in request.what && request.what.formats.includes('proof'))
      Object.assign(files, await this.#batchProofs([...jobs.values()]));
    if (Object.keys(files).length === 0) return [];
    if ('packs' in request.what && request.what.packs === 'archive')
      return [{ target: request.to, content: archiveOf(files) }];
    return outputsIn(request.to, files);
  }

  /** One proof for all tags of a batch. */
  async #batchProofs(jobs: readonly Job[]): Promise<Files> {
    const files: Record<string, Uint8Array> = {};
    for (const [batch, own] of groupedBy(jobs, (job) => this.#batchOf.get(job))) {
      if (!batch) continue;
      const proofs = await Promise.all(own.map((job) => tagProof(job, this.#tools)));
      const proof = await toBatchProof(batch.title, proofs, this.#tools);
      if (proof) files[batch.name + endings.proof] = proof;
    }
    return files;
  }

  /** For each spec, the sheets for all of its tags. */
  async #sheets(request: ExportRequest, wanted: readonly SheetFormat[], signal: AbortSignal): Promise<OutputFile[]> {
    const checkpoint = editorTurn(signal);
    const files: Record<string, Uint8Array> = {};
    for (const [spec, reports] of await this.#sound(request, signal)) {
      const sheets = await sheetJobs(reports, checkpoint, this.#nest);
      if ('problem' in sheets) {
        void vscode.window.showErrorMessage(`${baseName(spec)}: ${sheets.problem}`);
        continue;
      }
      const name = batchFolder(request, spec, reports[0]!) + specName(baseName(spec));
      Object.assign(files, await sheetFiles(sheets, name, wanted, this.#tools, checkpoint));
    }
    return outputsIn(request.to, files);
  }

  async #filesOf(job: Job, name: string, what: TagFiles, signal: AbortSignal): Promise<Files> {
    const checkpoint = editorTurn(signal);
    if ('packs' in what) {
      const pack = await packOf(job, name, this.#tools, checkpoint);
      return Object.fromEntries(Object.entries(pack).map(([file, content]) => [`${name}/${file}`, content]));
    }
    const files: Record<string, Uint8Array> = {};
    for (const format of what.formats) {
      await checkpoint();
      for (const [file, content] of Object.entries(await filesIn(format, job, name, this.#tools)))
        files[file] = bytesOf(content);
    }
    return files;
  }

  /** By base name of their files, which is unique. */
  async #jobs(request: ExportRequest, signal: AbortSignal): Promise<Map<string, Job>> {
    const jobs = new Map<string, Job>();
    const empty: string[] = [];
    for (const [spec, reports] of await this.#sound(request, signal)) {
      const [first] = reports;
      const isWhole = request.row === undefined && first !== undefined && rowCount(first) > 1;
      const folder = first ? batchFolder(request, spec, first) : '';
      const batch = isWhole && { title: first.batch!.title, name: folder + specName(baseName(spec)) };
      for (const report of reports) {
        const name = batchFolder(request, spec, report) + nameIn(request, spec, report);
        const job = jobOf(onlyPiece(report, request.piece));
        if (job) {
          const { fonts, read } = this.#engine;
          const { locate } = computeOptions(spec, signal);
          const made = 'packs' in request.what ? await withSpec(job, report, { fonts, read, locate }) : job;
          jobs.set(freeFileName(name, new Set(jobs.keys())), made);
          if (batch) this.#batchOf.set(made, batch);
        } else empty.push(name);
      }
    }
    if (empty.length > 0)
      void vscode.window.showErrorMessage(`Not exported, there is nothing to cut: ${empty.join(', ')}.`);
    return jobs;
  }

  /** All tags to export, by spec; empty if the export was cancelled because of errors. */
  async #sound(request: ExportRequest, signal: AbortSignal): Promise<Map<vscode.Uri, Report[]>> {
    const sound = new Map<vscode.Uri, Report[]>();
    const faulty: Faulty[] = [];
    const add = (spec: vscode.Uri, report: Report) => sound.set(spec, [...(sound.get(spec) ?? []), report]);
    for (const spec of request.specs) {
      const options = computeOptions(spec, signal, request.row);
      const first = await this.#engine.compute(await currentText(spec), options);
      for (const report of request.row === undefined ? await reportsOf(this.#engine, first, options) : [first]) {
        if (report.issues.some(isError)) faulty.push({ spec, name: nameIn(request, spec, report), report });
        else add(spec, report);
      }
    }
    if (faulty.length === 0) return sound;
    const wish = request.faulty ?? 'ask';
    const answer = wish === 'ask' ? await askFaulty(faulty, sound.size > 0) : wish;
    if (answer === undefined) return new Map();
    if (answer === 'include') for (const { spec, report } of faulty) add(spec, report);
    return sound;
  }
}

type TagFiles = Exclude<ExportRequest['what'], { sheets: unknown }>;

/** What each tag has of its own: those of a batch have one proof together. */
function oneByOne({ what }: { readonly what: ExportRequest['what'] }, batch: unknown): TagFiles {
  if ('sheets' in what || 'packs' in what || !batch) return what as TagFiles;
  return { ...what, formats: what.formats.filter((format) => format !== 'proof') };
}

/** Why a format that was asked for is not made of some tags. */
function sayNotGlued({ what }: ExportRequest, jobs: ReadonlyMap<string, Job>): void {
  if (!('formats' in what) || !what.formats.includes('assembly')) return;
  const flat = [...jobs].filter(([, { tag }]) => !isLayered(tag)).map(([name]) => name);
  if (flat.length === 0) return;
  const names = listed(flat, mostNames);
  void vscode.window.showInformationMessage(`No assembly sheet of ${names}: nothing is glued.`);
}

/** What the specs of packs need and is not in them. */
function sayLacking(jobs: ReadonlyMap<string, Job>): void {
  const lacking = new Set([...jobs.values()].flatMap(({ along }) => along?.lacking ?? []));
  if (lacking.size > 0) void vscode.window.showInformationMessage([...lacking].join(' '));
}

/** `files`: by path within the folder. */
function outputsIn(folder: vscode.Uri, files: Files): OutputFile[] {
  return Object.entries(files).map(([path, content]) => {
    return { target: vscode.Uri.joinPath(folder, ...path.split('/')), content };
  });
}

function nameIn({ piece }: ExportRequest, spec: vscode.Uri, report: Report): string {
  return [fileNameOf(spec, report), ...(piece === undefined ? [] : [piece])].join('-');
}

/** Without an ending: the spec's name or, in a batch, with the row's label. */
export function fileNameOf(spec: vscode.Uri, report: Report): string {
  return tagFileName(specName(baseName(spec)), report);
}

function onlyPiece(report: Report, piece: string | undefined): Report {
  const { tag } = report;
  if (!tag || piece === undefined) return report;
  return { ...report, tag: { ...tag, pieces: tag.pieces.filter(({ id }) => id === piece) } };
}

/** The text in the editor, else on disk. */
export async function currentText(spec: vscode.Uri): Promise<string> {
  return openDocument(spec)?.getText() ?? new TextDecoder().decode(await vscode.workspace.fs.readFile(spec));
}

async function writeOutputs(
  outputs: readonly OutputFile[],
  existing: NonNullable<ExportRequest['existing']>,
  write: (outputs: readonly OutputFile[]) => Promise<void>,
): Promise<vscode.Uri[]> {
  const others = new Set<OutputFile>();
  for (const output of outputs) if (await hasOtherContent(output.target, output.content)) others.add(output);
  let replace = existing === 'replace';
  if (others.size > 0 && existing === 'ask') {
    const [yes, no] = ['Replace', others.size === 1 ? 'Leave It' : 'Leave Them'];
    const names = listed(
      [...others].map(({ target }) => baseName(target)),
      mostInQuestion,
    );
    const [question, detail] =
      others.size === 1
        ? [`${names} is there already.`, 'Its current contents will be lost.']
        : [`These files are there already: ${names}.`, 'Their current contents will be lost.'];
    // If there is nothing else to write, keeping the existing files is the same as cancelling.
    const answers = others.size < outputs.length ? [yes, no] : [yes];
    const answer = await vscode.window.showWarningMessage(question, { modal: true, detail }, ...answers);
    if (answer === undefined) return [];
    replace = answer === yes;
  }
  const toWrite = outputs.filter((output) => replace || !others.has(output));
  await write(toWrite);
  return toWrite.map(({ target }) => target);
}

function oneAfterAnother(writeWhole: WriteWhole): (outputs: readonly OutputFile[]) => Promise<void> {
  return async (outputs) => {
    for (const { target, content } of outputs) {
      await vscode.workspace.fs.createDirectory(vscode.Uri.joinPath(target, '..'));
      await writeWhole(target, content);
    }
  };
}
