/** The sheets of a job beside its text, laid out again after a pause in changes. */

import * as vscode from 'vscode';
import type { TextEdit } from '../../core/issue.ts';
import { jobOnSheets, layOutJob } from '../../jobs/job.ts';
import type { CheckedJob, LaidOutJob } from '../../jobs/job.ts';
import { gapEdits, gapsOf } from '../../jobs/layout/gaps.ts';
import type { DraftSheet } from '../../jobs/layout/layout.ts';
import { pinEdits, unpinEdits } from '../../jobs/pins.ts';
import type { PinnedJob } from '../../jobs/pins.ts';
import type { Nester } from '../../nesting/best-of.ts';
import { isSameWork } from '../../jobs/same-work.ts';
import { jobFacts } from '../../jobs/totals.ts';
import { jobOnPage } from '../../scene/job-on-page.ts';
import { figuresOfJob } from '../../scene/layout-figures.ts';
import { ShownText } from '../common/shown-text.ts';
import { applyEdits } from '../common/apply-edits.ts';
import { inBackground } from '../common/background.ts';
import { editorTurn } from '../service/compute-options.ts';
import type { AskedOfText, SheetsScene } from '../../protocol/sheets.ts';
import { SheetsPanel } from '../sheets/sheets-panel.ts';
import { SheetsPanels } from '../sheets/sheets-panels.ts';
import type { SheetsContent } from '../sheets/sheets-panel.ts';
import type { JobChecks } from './job-checks.ts';
import { problemsOf, showProblem, whyNothing } from './job-problems.ts';
import { JobPiecePlaces } from './job-piece-places.ts';

/** Longest wait of a change by hand for the sheets of the present text, in ms. */
const mostWaitMs = 10_000;

export class JobSheets implements vscode.Disposable {
  readonly #pages: SheetsPanels;
  readonly #open = new Map<string, SheetsOfJob>();

  constructor(extensionUri: vscode.Uri, checks: JobChecks, nest: Nester) {
    this.#pages = new SheetsPanels((job) => {
      const sheets = new SheetsOfJob(job, extensionUri, checks, nest);
      this.#open.set(job.toString(), sheets);
      sheets.page.onDidDispose(() => this.#open.delete(job.toString()));
      return sheets.page;
    });
  }

  /** The job as its sheets are shown, if they are and nothing has changed since. A search for better ones ends with it. */
  laidOut(job: vscode.Uri, checked: CheckedJob): Promise<LaidOutJob | undefined> {
    return this.#open.get(job.toString())?.asShown(checked) ?? Promise.resolve(undefined);
  }

  show(job: vscode.Uri): void {
    this.#pages.show(job);
  }

  dispose(): void {
    this.#pages.dispose();
  }
}

class SheetsOfJob {
  readonly page: SheetsPanel;
  readonly #job: vscode.Uri;
  readonly #checks: JobChecks;
  readonly #nest: Nester;
  #shown: CheckedJob | undefined;
  /** The sheets shown, of the job in `#shown`. */
  #drafts: readonly DraftSheet[] = [];
  /** The job with these sheets, once somebody has asked for it. */
  #laid: Promise<LaidOutJob | undefined> | undefined;
  readonly #shownText = new ShownText(mostWaitMs);

  constructor(job: vscode.Uri, extensionUri: vscode.Uri, checks: JobChecks, nest: Nester) {
    this.#job = job;
    this.#checks = checks;
    this.#nest = nest;
    this.page = new SheetsPanel(
      'tagwright.jobSheets',
      job,
      extensionUri,
      (message) => this.#onMessage(message),
      () => this.#complete(),
    );
    const changes = checks.onDidChange((changed) => {
      if (changed.toString() === job.toString()) this.#layOut();
    });
    this.page.onDidDispose(() => {
      changes.dispose();
    });
    this.#layOut();
  }

  #layOut(): void {
    const checked = this.#checks.get(this.#job);
    if (!checked) return;
    inBackground(
      this.page.show((signal, better) => this.#laidOut(checked, signal, better)),
      'lay out a job',
    );
  }

  async #laidOut(
    checked: CheckedJob,
    signal: AbortSignal,
    better: (make: () => SheetsContent) => void,
  ): Promise<SheetsContent> {
    const laid = await layOutJob(checked, {
      checkpoint: editorTurn(signal),
      nest: this.#nest,
      onBetter: (sheets) => {
        better(() => {
          const drafts = sheets();
          this.#show(checked, drafts);
          return jobShown(this.#job, checked, drafts);
        });
      },
    });
    signal.throwIfAborted();
    if (laid && laid.layout.sheets.length > 0) {
      this.#show(checked, laid.layout.sheets);
      this.#laid = Promise.resolve(laid);
      this.#checks.foundOnSheets(this.#job, checked, laid.issues);
      return jobShown(this.#job, laid, laid.layout.sheets, laid);
    }
    this.#show(checked, []);
    return { type: 'nothing', why: whyNothing(laid ?? checked) ?? 'There is nothing to cut yet.' };
  }

  /** What is shown, if it is a layout of this job. What is cut is what was seen: it stays, though a search might still find better. */
  async asShown(checked: CheckedJob): Promise<LaidOutJob | undefined> {
    if (!this.page.showsSheets || !this.#shown || !isSameWork(this.#shown, checked)) return undefined;
    await this.page.stop();
    return this.#laidAsShown();
  }

  async #complete(): Promise<SheetsContent | undefined> {
    const laid = await this.#laidAsShown();
    return laid && jobShown(this.#job, laid, laid.layout.sheets, laid);
  }

  #laidAsShown(): Promise<LaidOutJob | undefined> {
    if (!this.#shown) return Promise.resolve(undefined);
    this.#laid ??= this.#completed(this.#shown, this.#drafts);
    return this.#laid;
  }

  async #completed(shown: CheckedJob, drafts: readonly DraftSheet[]): Promise<LaidOutJob | undefined> {
    const laid = await jobOnSheets(shown, drafts, editorTurn());
    if (laid && this.#drafts === drafts && !this.page.isSearching)
      this.#checks.foundOnSheets(this.#job, shown, laid.issues);
    return laid;
  }

  /** The shown sheets are the ones that can be edited by hand, together with their text. */
  #show(checked: CheckedJob, sheets: readonly DraftSheet[]): void {
    this.#laid = undefined;
    this.#shown = checked;
    this.#drafts = sheets;
    this.#shownText.set(checked.source.text);
  }

  async #onMessage(message: AskedOfText): Promise<void> {
    switch (message.type) {
      case 'export':
        await vscode.commands.executeCommand('tagwright.exportJob', this.#job);
        break;
      case 'show':
        if (this.#shown) await showProblem(this.#job, this.#shown, message);
        break;
      case 'pin':
        await this.#write((job) => pinEdits(message.places, job));
        break;
      case 'unpin':
        await this.#write((job) => unpinEdits(message.pieces, job));
        break;
      case 'effort':
        await this.#write(({ source }) => [source.setKey([], 'effort', `${message.effort}`)]);
        break;
      case 'gap':
        await this.#write((job) => gapEdits(message.stock, message.gap, job));
        break;
      case 'again':
        this.#layOut();
        break;
      case 'size':
        break;
    }
  }

  /**
   * As one undo step, and only if the text is still that of the sheets. One change by hand soon follows another, so it
   * waits for the sheets of the text that the one before has made.
   */
  async #write(make: (job: PinnedJob) => readonly (TextEdit | undefined)[] | undefined): Promise<void> {
    const document = await vscode.workspace.openTextDocument(this.#job);
    await this.#shownText.until(() => document.getText());
    const { model, pieces, source } = this.#shown ?? {};
    const edits = model && pieces && source && make({ sheets: this.#drafts, model, pieces, source });
    const made = edits?.filter((edit) => edit !== undefined);
    const isWritable = made !== undefined && made.length === edits?.length;
    if (isWritable && source && (await applyEdits(this.#job, source, made))) return;
    this.page.again();
    void vscode.window.showInformationMessage(
      isWritable
        ? 'The job has changed in the meantime; try again.'
        : 'Write the job in lines, without braces around all of it.',
    );
  }
}

function jobShown(uri: vscode.Uri, job: CheckedJob, drafts: readonly DraftSheet[], laid?: LaidOutJob): SheetsContent {
  const { sheets, shapes } = jobOnPage(drafts, job);
  const { title, model } = job;
  const scene: SheetsScene = {
    title,
    units: model!.units,
    pins: true,
    effort: model!.effort,
    gaps: gapsOf(model!),
    sheets,
    facts: laid ? jobFacts(laid) : [],
    figures: laid ? figuresOfJob(laid) : [],
    problems: problemsOf(job),
    // The rest is cut all the same.
    warning: 'Not in the cut files',
  };
  return { type: 'sheets', scene, shapes, places: new JobPiecePlaces(uri, job, drafts) };
}
