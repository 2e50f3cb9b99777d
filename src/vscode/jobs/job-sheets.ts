/** The sheets of a job beside its text, laid out again once that has rested. */

import * as vscode from 'vscode';
import { isError } from '../../core/issue.ts';
import type { Issue, TextEdit } from '../../core/issue.ts';
import { layOutJob } from '../../jobs/job.ts';
import type { CheckedJob, LaidOutJob } from '../../jobs/job.ts';
import { pinEdits, unpinEdits } from '../../jobs/pins.ts';
import { jobFacts } from '../../jobs/sums.ts';
import type { SheetProblem } from '../../protocol/sheets.ts';
import { jobOnPage } from '../../scene/job-on-page.ts';
import { applyEdits } from '../common/apply-edits.ts';
import { inBackground } from '../common/background.ts';
import { putCursor, showText } from '../common/tabs.ts';
import { breather } from '../service/compute-options.ts';
import type { AskedOfText } from '../../protocol/sheets.ts';
import { SheetsPage, SheetsPages } from '../sheets/sheets-page.ts';
import type { Shown } from '../sheets/sheets-page.ts';
import type { JobChecks } from './job-checks.ts';
import { JobPiecePlaces } from './job-piece-places.ts';

export class JobSheets implements vscode.Disposable {
  readonly #pages: SheetsPages;

  constructor(extensionUri: vscode.Uri, checks: JobChecks) {
    this.#pages = new SheetsPages((job) => new SheetsOfJob(job, extensionUri, checks).page);
  }

  show(job: vscode.Uri): void {
    this.#pages.show(job);
  }

  dispose(): void {
    this.#pages.dispose();
  }
}

class SheetsOfJob {
  readonly page: SheetsPage;
  readonly #job: vscode.Uri;
  readonly #checks: JobChecks;
  #shown: CheckedJob | undefined;
  #laid: LaidOutJob | undefined;

  constructor(job: vscode.Uri, extensionUri: vscode.Uri, checks: JobChecks) {
    this.#job = job;
    this.#checks = checks;
    this.page = new SheetsPage('tagwright.jobSheets', job, extensionUri, (message) => this.#heed(message));
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
      this.page.show((signal) => this.#laidOut(checked, signal)),
      'lay out a job',
    );
  }

  async #laidOut(checked: CheckedJob, signal: AbortSignal): Promise<Shown> {
    const laid = await layOutJob(checked, { checkpoint: breather(signal) });
    signal.throwIfAborted();
    this.#shown = checked;
    this.#laid = laid;
    const problems = problemsOf(laid ?? checked);
    if (!laid || laid.layout.sheets.length === 0)
      return { type: 'nothing', why: problems[0]?.message ?? 'There is nothing to cut yet.' };
    const { sheets, shapes } = jobOnPage(laid);
    const { title, model } = laid;
    // What is right is cut all the same.
    const warning = 'Not in the cut files';
    const scene = { title, units: model.units, pins: true, sheets, facts: jobFacts(laid), problems, warning };
    return { type: 'sheets', scene, shapes, places: new JobPiecePlaces(this.#job, laid) };
  }

  async #heed(message: AskedOfText): Promise<void> {
    switch (message.type) {
      case 'export':
        await vscode.commands.executeCommand('tagwright.exportJob', this.#job);
        break;
      case 'show':
        await this.#showProblem(message.offset);
        break;
      case 'pin':
        await this.#write((laid) => pinEdits(message.places, laid));
        break;
      case 'unpin':
        await this.#write((laid) => unpinEdits(message.pieces, laid));
        break;
      case 'size':
        break;
    }
  }

  async #showProblem(offset: number): Promise<void> {
    const editor = await showText(this.#job);
    if (editor.document.getText() === this.#shown?.source.text) putCursor(editor, offset);
  }

  /** One step of the editor's own undo, and only onto the text that the sheets are of. */
  async #write(edits: (laid: LaidOutJob) => readonly TextEdit[] | undefined): Promise<void> {
    const laid = this.#laid;
    const made = laid && edits(laid);
    if (laid && made && (await applyEdits(this.#job, laid.source, made))) return;
    this.page.again();
    void vscode.window.showInformationMessage(
      made
        ? 'The job has changed meanwhile; try again.'
        : 'The job’s text has no place for “fixed”: write it in lines.',
    );
  }
}

/** What keeps part of the job from being cut. In a table of orders, where the job names it. */
function problemsOf({ issues, inFiles, source, model }: CheckedJob): SheetProblem[] {
  const own = issues.filter(isError).map((issue) => problem(issue, issue.range.start));
  const ofTables = inFiles.flatMap(({ name, issues: found, position }) => {
    const entry = model?.tags.find(({ orders }) => orders === name);
    const start = source.range(entry ? [...entry.path, 'orders'] : ['sheets']).start;
    return found
      .filter(isError)
      .map((issue) =>
        problem({ ...issue, message: `${name}, line ${position(issue.range.start).line}: ${issue.message}` }, start),
      );
  });
  return [...own, ...ofTables];

  function problem({ message }: Pick<Issue, 'message'>, offset: number): SheetProblem {
    return { labels: [], message, line: source.position(offset).line, offset, row: 0 };
  }
}
