/** The sheets of a job beside its text, laid out again once that has rested. */

import * as vscode from 'vscode';
import type { Engine } from '../../engine/engine.ts';
import { isError } from '../../core/issue.ts';
import type { Issue } from '../../core/issue.ts';
import { captionFont } from '../../export/job.ts';
import { layOutJob } from '../../jobs/job.ts';
import type { CheckedJob } from '../../jobs/job.ts';
import { sheetOverview } from '../../jobs/sheet-map.ts';
import { jobFacts } from '../../jobs/sums.ts';
import { inBackground } from '../common/background.ts';
import { putCursor, showText } from '../common/tabs.ts';
import { nameOf } from '../common/write-whole.ts';
import { breather } from '../service/compute-options.ts';
import { parseFromPage } from '../sheets/from-page.ts';
import { sheetsHtml } from '../sheets/sheets-html.ts';
import type { SheetProblem, Shown } from '../sheets/sheets-html.ts';
import type { JobChecks } from './job-checks.ts';

export class JobSheets implements vscode.Disposable {
  readonly #extensionUri: vscode.Uri;
  readonly #engine: Engine;
  readonly #checks: JobChecks;
  /** By the jobs they show. */
  readonly #panels = new Map<string, JobPanel>();

  constructor(extensionUri: vscode.Uri, engine: Engine, checks: JobChecks) {
    this.#extensionUri = extensionUri;
    this.#engine = engine;
    this.#checks = checks;
  }

  show(job: vscode.Uri): void {
    const key = job.toString();
    const known = this.#panels.get(key);
    if (known) known.reveal();
    else {
      const gone = () => this.#panels.delete(key);
      this.#panels.set(key, new JobPanel(job, this.#extensionUri, this.#engine, this.#checks, gone));
    }
  }

  dispose(): void {
    for (const panel of [...this.#panels.values()]) panel.dispose();
  }
}

class JobPanel implements vscode.Disposable {
  readonly #job: vscode.Uri;
  readonly #engine: Engine;
  readonly #checks: JobChecks;
  readonly #panel: vscode.WebviewPanel;
  readonly #folder: vscode.Uri;
  #running: AbortController | undefined;
  #shown: CheckedJob | undefined;

  constructor(job: vscode.Uri, extensionUri: vscode.Uri, engine: Engine, checks: JobChecks, gone: () => void) {
    this.#job = job;
    this.#engine = engine;
    this.#checks = checks;
    this.#folder = vscode.Uri.joinPath(extensionUri, 'dist', 'webview');
    const place = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
    this.#panel = vscode.window.createWebviewPanel('tagwright.jobSheets', `Sheets: ${nameOf(job)}`, place, {
      enableScripts: true,
      localResourceRoots: [this.#folder],
    });
    this.#panel.webview.onDidReceiveMessage((data: unknown) => {
      inBackground(this.#heed(data), 'do what the sheets view asked for');
    });
    const changes = checks.onDidChange((changed) => {
      if (changed.toString() === job.toString()) this.#layOut();
    });
    this.#panel.onDidDispose(() => {
      changes.dispose();
      this.#running?.abort();
      gone();
    });
    this.#put({ kind: 'waiting' });
    this.#layOut();
  }

  reveal(): void {
    this.#panel.reveal(undefined, true);
  }

  dispose(): void {
    this.#panel.dispose();
  }

  #layOut(): void {
    const checked = this.#checks.get(this.#job);
    if (!checked) return;
    this.#running?.abort();
    const controller = new AbortController();
    this.#running = controller;
    inBackground(this.#show(checked, controller.signal), 'lay out a job');
  }

  async #show(checked: CheckedJob, signal: AbortSignal): Promise<void> {
    const laid = await layOutJob(checked, { checkpoint: breather(signal) });
    signal.throwIfAborted();
    this.#shown = checked;
    const problems = problemsOf(laid ?? checked);
    if (!laid || laid.layout.sheets.length === 0) {
      this.#put({ kind: 'nothing', why: problems[0]?.message ?? 'There is nothing to cut yet.' });
      return;
    }
    const page = await sheetOverview(laid, { captions: (weight) => captionFont(this.#engine.fonts, weight) });
    this.#put({ kind: 'sheets', title: laid.title, page, facts: jobFacts(laid), problems });
  }

  async #heed(data: unknown): Promise<void> {
    const message = parseFromPage(data);
    if (message?.type === 'export') await vscode.commands.executeCommand('tagwright.exportJob', this.#job);
    if (message?.type !== 'show') return;
    const editor = await showText(this.#job);
    if (editor.document.getText() === this.#shown?.source.text) putCursor(editor, message.offset);
  }

  #put(shown: Shown): void {
    const { webview } = this.#panel;
    const uriOf = (name: string) => webview.asWebviewUri(vscode.Uri.joinPath(this.#folder, name)).toString();
    webview.html = sheetsHtml(shown, {
      cspSource: webview.cspSource,
      styleUri: uriOf('sheets.css'),
      scriptUri: uriOf('sheets.js'),
    });
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
