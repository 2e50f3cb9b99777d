/** Computes every spec that is open or in the workspace whenever it, or a file it uses, changes. */

import * as vscode from 'vscode';
import { inBackground } from '../common/background.ts';
import { eachReport, ofBatch, rowCount } from '../../engine/batch.ts';
import type { RowIssues } from '../../engine/batch.ts';
import type { ComputeOptions, Engine } from '../../engine/engine.ts';
import { besideOthers, tagByItself } from '../../scene/batch-tags.ts';
import type { TagByItself } from '../../scene/batch-tags.ts';
import { computeOptions } from './compute-options.ts';
import { fileExists, isTagSpec, openDocument, tagSpecGlob } from '../common/documents.ts';
import type { UsedIssues } from '../../spec/read/scope.ts';
import type { TagResults } from './results.ts';
import { listenToSpecs } from './spec-events.ts';
import { WaitingWork } from './waiting-work.ts';
import { resultOf, inUsedOf } from './checked.ts';
import type { Checked } from './checked.ts';

/** Delay in ms after the last keystroke of a burst: long enough to skip the letters within it, too short to notice. */
const settleDelayMs = 40;
/** Pause in ms before the other tags of a batch are computed: they would delay the next letter. */
const batchRestMs = 400;
/** A keystroke this long after the previous one, in ms, is not part of a burst: waiting for the next gains nothing. */
const burstMs = 100;

interface Watched {
  result?: Checked;
  /** Time of the last change of its text, in ms. */
  changedAt?: number;
  timer?: NodeJS.Timeout;
  running?: AbortController;
  /** Row of its batch that is shown. */
  row?: number;
  /** What is known of the tags of its batch, until the spec or a file it uses changes. */
  whole?: { readonly all: readonly RowIssues[] } & Pick<Checked, 'batchTags' | 'inUsed'>;
}

export class TagService implements TagResults, vscode.Disposable {
  readonly #engine: Engine;
  readonly #log: vscode.LogOutputChannel;
  readonly #specs = new Map<string, Watched>();
  /** Specs that are not open, and tags of batches that are not shown; urgent is what is on screen. */
  readonly #waiting = new WaitingWork<'tag' | 'batch'>(async (key, what) => {
    const watched = this.#specs.get(key);
    if (watched) await (what === 'tag' ? this.#compute(vscode.Uri.parse(key), watched) : this.#checkBatch(watched));
  });
  readonly #changed = new vscode.EventEmitter<Checked>();
  readonly #removed = new vscode.EventEmitter<vscode.Uri>();
  readonly #subscriptions: vscode.Disposable;
  readonly onDidChange = this.#changed.event;
  /** A spec was deleted, or closed without being in a checked folder: its problems go. */
  readonly onDidRemove = this.#removed.event;

  constructor(engine: Engine, log: vscode.LogOutputChannel) {
    this.#engine = engine;
    this.#log = log;
    const scan = () => {
      inBackground(this.#scan(), 'look for specs in the folder');
    };
    this.#subscriptions = listenToSpecs({
      opened: (uri) => {
        this.#schedule(uri, 0);
      },
      typed: (uri) => {
        this.#typed(uri);
      },
      closed: (uri) => {
        inBackground(this.#closed(uri), 'look at a closed spec again');
      },
      appeared: (uri) => {
        inBackground(this.#appeared(uri), 'read a spec that has changed');
      },
      deleted: (uri) => {
        if (!openDocument(uri)) this.#forget(uri);
      },
      fileChanged: (uri) => {
        const key = uri.toString();
        this.#filesChanged((file) => file === key);
      },
      folderChanged: (isWithin) => {
        this.#filesChanged(isWithin);
      },
      scopeChanged: scan,
      rulesChanged: () => {
        this.#recomputeAll();
      },
    });
    for (const { uri } of vscode.workspace.textDocuments) this.#schedule(uri, 0);
    scan();
  }

  get(uri: vscode.Uri): Checked | undefined {
    return this.#specs.get(uri.toString())?.result;
  }

  /** Results of every spec computed so far. */
  all(): Checked[] {
    return [...this.#specs.values()].flatMap(({ result }) => result ?? []);
  }

  /** Draws another tag of a batch. */
  showRow(uri: vscode.Uri, row: number): void {
    const watched = this.#specs.get(uri.toString());
    if (!watched?.result) return;
    const shown = watched.result.report.row;
    // Another may be on its way.
    if (shown === row && (watched.row ?? row) === row) return;
    watched.row = row;
    const { whole } = watched;
    this.#schedule(uri, 0, true);
    // Nothing has changed but which of them is looked at.
    if (whole) watched.whole = whole;
  }

  request(uri: vscode.Uri): void {
    const watched = this.#specs.get(uri.toString());
    if (watched?.result) this.#changed.fire(watched.result);
    else this.#schedule(uri, 0, true);
  }

  dispose(): void {
    for (const watched of this.#specs.values()) stop(watched);
    this.#specs.clear();
    this.#waiting.clear();
    this.#subscriptions.dispose();
    this.#changed.dispose();
    this.#removed.dispose();
  }

  #typed(uri: vscode.Uri): void {
    const watched = this.#specs.get(uri.toString());
    const isBurst = watched?.changedAt !== undefined && performance.now() - watched.changedAt < burstMs;
    this.#schedule(uri, isBurst ? settleDelayMs : 0);
    if (watched) watched.changedAt = performance.now();
  }

  #schedule(uri: vscode.Uri, delayMs: number, isUrgent = openDocument(uri) !== undefined): void {
    if (!isTagSpec(uri)) return;
    const key = uri.toString();
    const watched = this.#specs.get(key) ?? {};
    this.#specs.set(key, watched);
    stop(watched);
    delete watched.whole;
    this.#waiting.drop(key);
    if (!isUrgent) {
      inBackground(this.#waiting.add(key, 'tag'), 'check the specs that wait');
      return;
    }
    watched.timer = setTimeout(() => {
      this.#waiting.urgent(this.#compute(uri, watched));
    }, delayMs);
  }

  /** Checks the tags of a batch that are not shown. */
  async #checkBatch(watched: Watched): Promise<void> {
    const { result, running } = watched;
    if (!result || !running) return;
    const { uri } = result;
    try {
      const options = computeOptions(uri, running.signal);
      let { report } = result;
      let whole = result;
      if (report.isHasty) {
        report = await this.#engine.compute(report.source.text, { ...options, row: report.row });
        running.signal.throwIfAborted();
        whole = resultOf(uri, result.version, report, result.drawn);
        this.#settle(watched, whole);
      }
      const [all, tags, inUsed]: [RowIssues[], TagByItself[], UsedIssues[]] = [[], [], []];
      const before = async () => {
        await this.#waiting.nothingUrgent();
        running.signal.throwIfAborted();
      };
      for await (const each of eachReport(this.#engine, report, options, before)) {
        // Outlines are dropped: those of hundreds of tags that are not shown would fill the memory.
        const { row, issues, batch, alike } = each;
        all.push({ row, issues, ...(batch ? { batch } : {}), ...(alike ? { alike } : {}) });
        tags.push(tagByItself(each));
        inUsed.push(...inUsedOf(each));
      }
      running.signal.throwIfAborted();
      watched.whole = { all, inUsed, batchTags: besideOthers(tags) };
      this.#settle(watched, wholeOf(whole, watched.whole, options));
    } catch (error) {
      if (!running.signal.aborted) this.#failed(uri, error);
    }
  }

  async #compute(uri: vscode.Uri, watched: Watched): Promise<void> {
    const controller = new AbortController();
    watched.running = controller;
    const { signal } = controller;
    try {
      const document = openDocument(uri);
      const text = document ? document.getText() : new TextDecoder().decode(await vscode.workspace.fs.readFile(uri));
      const version = document?.version ?? 0;
      signal.throwIfAborted();
      const options = { ...computeOptions(uri, signal, watched.row), isHasty: true };
      const report = await this.#engine.compute(text, options);
      signal.throwIfAborted();
      const result = resultOf(uri, version, report, watched.result?.drawn);
      this.#log.debug(`${result.fileName}: ${report.timings.total.toFixed(1)} ms, ${report.issues.length} issues`);
      if (watched.whole && !report.isHasty) {
        this.#settle(watched, wholeOf(result, watched.whole, options));
        return;
      }
      this.#settle(watched, result);
      if (rowCount(report) > 1) {
        watched.timer = setTimeout(() => {
          inBackground(this.#waiting.add(uri.toString(), 'batch'), 'check the specs that wait');
        }, batchRestMs);
      }
    } catch (error) {
      if (signal.aborted) return;
      if (error instanceof vscode.FileSystemError) {
        this.#forget(uri);
        return;
      }
      this.#failed(uri, error);
    }
  }

  #settle(watched: Watched, result: Checked): void {
    watched.result = result;
    this.#changed.fire(result);
  }

  #failed(uri: vscode.Uri, error: unknown): void {
    this.#log.error(`${uri.path} could not be computed`, error instanceof Error ? error : String(error));
  }

  async #appeared(uri: vscode.Uri): Promise<void> {
    if (openDocument(uri)) return;
    if (this.#specs.has(uri.toString())) this.#schedule(uri, settleDelayMs);
    else await this.#scan();
  }

  async #closed(uri: vscode.Uri): Promise<void> {
    if (!this.#specs.has(uri.toString())) return;
    const onDisk = vscode.workspace.getWorkspaceFolder(uri) && (await fileExists(uri));
    if (openDocument(uri)) return;
    // Unsaved text is gone; the file on disk counts again.
    if (onDisk && workspaceFileLimit() > 0) this.#schedule(uri, 0);
    else this.#forget(uri);
  }

  #filesChanged(isOne: (file: string) => boolean): void {
    for (const { result } of this.#specs.values())
      if (result?.report.files.some(isOne)) this.#schedule(result.uri, settleDelayMs);
  }

  #recomputeAll(): void {
    for (const key of this.#specs.keys()) this.#schedule(vscode.Uri.parse(key), 0);
  }

  /** Adds the specs of the workspace, up to the limit in the settings, and drops those that no longer belong. */
  async #scan(): Promise<void> {
    const limit = workspaceFileLimit();
    const found = limit > 0 ? await vscode.workspace.findFiles(tagSpecGlob, undefined, limit) : [];
    const wanted = new Set(found.map(String));
    for (const uri of found) if (!this.#specs.has(uri.toString())) this.#schedule(uri, settleDelayMs);
    for (const key of [...this.#specs.keys()]) {
      const uri = vscode.Uri.parse(key);
      if (!wanted.has(key) && !openDocument(uri)) this.#forget(uri);
    }
  }

  #forget(uri: vscode.Uri): void {
    const watched = this.#specs.get(uri.toString());
    if (!watched) return;
    stop(watched);
    this.#specs.delete(uri.toString());
    this.#removed.fire(uri);
  }
}

/** The tag that is looked at with what is wrong on the others. */
function wholeOf(
  result: Checked,
  { all, inUsed, batchTags }: NonNullable<Watched['whole']>,
  { severities }: Pick<ComputeOptions, 'severities'>,
): Checked {
  const { issues } = ofBatch(result.report, all, { ...(severities ? { severities } : {}), joined: true });
  return { ...result, issues, inUsed, ...(batchTags ? { batchTags } : {}) };
}

function stop(watched: Watched): void {
  clearTimeout(watched.timer);
  watched.running?.abort();
}

function workspaceFileLimit(): number {
  return vscode.workspace.getConfiguration('tagwright').get<number>('workspaceFileLimit', 100);
}
