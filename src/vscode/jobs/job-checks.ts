/**
 * Checks open jobs after a pause in changes to their text or to the files they read, and shows problems in every file
 * that has them.
 */

import * as vscode from 'vscode';
import type { Issue } from '../../core/issue.ts';
import type { Engine } from '../../engine/engine.ts';
import { nextTask, turnTaker } from '../../engine/turns.ts';
import { checkJob } from '../../jobs/job.ts';
import type { CheckedJob } from '../../jobs/job.ts';
import { isSameWork } from '../../jobs/same-work.ts';
import { readOffcuts } from '../../jobs/read/offcuts.ts';
import { KeptTags } from '../../jobs/orders/kept-tags.ts';
import type { JobReading } from '../../jobs/orders/reading.ts';
import { SpecSource } from '../../spec/yaml/source.ts';
import { inBackground } from '../common/background.ts';
import { companionGlob, isJob, isOffcutsFile, openDocument } from '../common/documents.ts';
import { onFolderChange } from '../common/folder-changes.ts';
import { baseName } from '../common/write-whole.ts';
import { diagnosticOf } from '../features/problems.ts';
import { computeOptions } from '../service/compute-options.ts';
import { locateBeside } from '../service/font-files.ts';
import { severitySection } from '../service/severities.ts';

/** Pause before checking, in ms: making all tags of a job takes as long as many drawings. */
const restMs = 500;

export class JobChecks implements vscode.Disposable {
  readonly #engine: Engine;
  readonly #collection = vscode.languages.createDiagnosticCollection('tagwright.jobs');
  readonly #known = new Map<string, CheckedJob>();
  /** What the last layout of a job has found besides, until the job asks for something else. */
  readonly #onSheets = new Map<string, readonly Issue[]>();
  readonly #kept = new Map<string, KeptTags>();
  readonly #timers = new Map<string, NodeJS.Timeout>();
  readonly #running = new Map<string, AbortController>();
  /** Diagnostics of each file, by the job or file that found them. */
  readonly #found = new Map<string, Map<string, readonly vscode.Diagnostic[]>>();
  readonly #changed = new vscode.EventEmitter<vscode.Uri>();
  /** Files that a job reads can be changed by other programs. */
  readonly #watcher = vscode.workspace.createFileSystemWatcher(companionGlob);
  readonly #subscriptions: vscode.Disposable;
  readonly onDidChange = this.#changed.event;

  /** `engine`: its own, as the many tags of a job would leave nothing of what is kept of the spec that is open. */
  constructor(engine: Engine) {
    this.#engine = engine;
    this.#subscriptions = vscode.Disposable.from(
      this.#collection,
      this.#changed,
      this.#watcher,
      onFolderChange((isWithin) => {
        this.#onFileChange(isWithin);
      }),
      vscode.workspace.onDidChangeConfiguration((change) => {
        if (change.affectsConfiguration(severitySection)) this.#onFileChange(() => true);
      }),
      vscode.workspace.onDidOpenTextDocument(({ uri }) => {
        this.#onChange(uri, 0);
      }),
      vscode.workspace.onDidChangeTextDocument(({ document: { uri } }) => {
        this.#onChange(uri, restMs);
      }),
      vscode.workspace.onDidSaveTextDocument(({ uri }) => {
        this.#onChange(uri, restMs);
      }),
      vscode.workspace.onDidCloseTextDocument(({ uri }) => {
        this.#forget(uri);
      }),
    );
    for (const event of [this.#watcher.onDidChange, this.#watcher.onDidCreate, this.#watcher.onDidDelete])
      event((uri) => {
        this.#onChange(uri, restMs);
      });
    for (const { uri } of vscode.workspace.textDocuments) this.#onChange(uri, 0);
  }

  /** How a job is read in the editor. What an open one has made is kept for the next time. */
  reading(job: vscode.Uri, signal: AbortSignal, progress?: JobReading['progress']): JobReading {
    return {
      engine: this.#engine,
      locate: locateBeside(job),
      optionsFor: (spec) => computeOptions(vscode.Uri.parse(spec), signal),
      checkpoint: turnTaker(signal, nextTask),
      kept: this.#kept.get(job.toString()) ?? new KeptTags(0),
      ...(progress ? { progress } : {}),
    };
  }

  /** The job as last checked. */
  get(job: vscode.Uri): CheckedJob | undefined {
    return this.#known.get(job.toString());
  }

  /** Shows what laying out a job has found, if the job is open and asks for the same. `laid`: its issues, those of `checked` among them. */
  foundOnSheets(job: vscode.Uri, checked: CheckedJob, laid: readonly Issue[]): void {
    const key = job.toString();
    const known = this.#known.get(key);
    if (!known || !isSameWork(known, checked)) return;
    const own = laid.filter((issue) => !checked.issues.includes(issue));
    this.#onSheets.set(key, own);
    this.#publish(sheetsOf(key), new Map([[key, own.map((issue) => diagnosticOf(issue, checked.source))]]));
  }

  /**
   * Problems of a job, a file of offcuts or a table of orders that are still in its text at the place where they were
   * found.
   */
  foundIn(document: vscode.TextDocument): { readonly issue: Issue; readonly place: vscode.Range }[] {
    const key = document.uri.toString();
    const issues = [...this.#known].flatMap(([job, checked]) => [
      ...(job === key && checked.source.text === document.getText()
        ? [...checked.issues, ...(this.#onSheets.get(key) ?? [])]
        : []),
      ...checked.inFiles.filter(({ file }) => vscode.Uri.parse(file).toString() === key).flatMap((file) => file.issues),
    ]);
    if (isOffcutsFile(document.uri)) issues.push(...readOffcuts(new SpecSource(document.getText())).issues);
    const shown = this.#collection.get(document.uri) ?? [];
    return issues.flatMap((issue) => {
      const { start, end } = issue.range;
      const place = new vscode.Range(document.positionAt(start), document.positionAt(end));
      // The text may have changed since; the diagnostic must still be shown at the same place.
      const isThere = shown.some((each) => each.message === issue.message && each.range.isEqual(place));
      return isThere ? [{ issue, place }] : [];
    });
  }

  dispose(): void {
    this.#subscriptions.dispose();
    for (const timer of this.#timers.values()) clearTimeout(timer);
    for (const controller of this.#running.values()) controller.abort();
  }

  #onChange(uri: vscode.Uri, ms: number): void {
    if (isJob(uri)) this.#scheduleCheck(uri, ms);
    if (isOffcutsFile(uri)) this.#lookAtOffcuts(uri);
    const key = uri.toString();
    this.#onFileChange((file) => file === key);
  }

  #onFileChange(isChanged: (file: string) => boolean): void {
    for (const [job, { files }] of this.#known) {
      if (files.some(isChanged)) this.#scheduleCheck(vscode.Uri.parse(job), restMs);
    }
  }

  #scheduleCheck(job: vscode.Uri, ms: number): void {
    const key = job.toString();
    clearTimeout(this.#timers.get(key));
    this.#timers.set(
      key,
      setTimeout(() => {
        inBackground(this.#check(job), 'check a job');
      }, ms),
    );
  }

  async #check(job: vscode.Uri): Promise<void> {
    const key = job.toString();
    this.#running.get(key)?.abort();
    const document = openDocument(job);
    if (!document) return;
    const controller = new AbortController();
    this.#running.set(key, controller);
    const { signal } = controller;
    if (!this.#kept.has(key)) this.#kept.set(key, new KeptTags());
    const checked = await checkJob(document.getText(), baseName(job), this.reading(job, signal));
    signal.throwIfAborted();
    const before = this.#known.get(key);
    if (!before || !isSameWork(before, checked)) this.#forgetSheets(key);
    this.#known.set(key, checked);
    const found = new Map([[key, checked.issues.map((issue) => diagnosticOf(issue, checked.source))]]);
    for (const { file, issues, position } of checked.inFiles) {
      const before = found.get(vscode.Uri.parse(file).toString()) ?? [];
      const own = issues.map((issue) => diagnosticOf(issue, { position: (offset) => ({ ...position(offset) }) }));
      found.set(vscode.Uri.parse(file).toString(), [...before, ...own]);
    }
    this.#publish(key, found);
    this.#changed.fire(job);
  }

  #lookAtOffcuts(uri: vscode.Uri): void {
    const document = openDocument(uri);
    if (!document) return;
    const source = new SpecSource(document.getText());
    const key = uri.toString();
    this.#publish(key, new Map([[key, readOffcuts(source).issues.map((issue) => diagnosticOf(issue, source))]]));
  }

  #forget(uri: vscode.Uri): void {
    const key = uri.toString();
    clearTimeout(this.#timers.get(key));
    this.#running.get(key)?.abort();
    for (const known of [this.#known, this.#kept]) known.delete(key);
    if (this.#kept.size === 0) this.#engine.forget();
    this.#publish(key, new Map());
    this.#forgetSheets(key);
  }

  #forgetSheets(job: string): void {
    if (this.#onSheets.delete(job)) this.#publish(sheetsOf(job), new Map());
  }

  /** A problem that two jobs find in one file is shown once. */
  #publish(finder: string, found: ReadonlyMap<string, readonly vscode.Diagnostic[]>): void {
    for (const [file, finders] of this.#found) if (finders.delete(finder) && !found.has(file)) this.#show(file);
    for (const [file, own] of found) {
      const finders = this.#found.get(file) ?? new Map<string, readonly vscode.Diagnostic[]>();
      this.#found.set(file, finders.set(finder, own));
      this.#show(file);
    }
  }

  #show(file: string): void {
    const all = [...(this.#found.get(file)?.values() ?? [])].flat();
    const once = new Map(all.map((each) => [JSON.stringify([each.range, each.message]), each]));
    this.#collection.set(vscode.Uri.parse(file), [...once.values()]);
  }
}

/** What the layout of a job has found is told beside what reading it has, which is renewed more often. */
function sheetsOf(job: string): string {
  return `sheets of ${job}`;
}
