/** The sheets that a spec's tags take, shown beside it and laid out anew once its text has rested. */

import * as vscode from 'vscode';
import { reportsOf } from '../batch.ts';
import type { Engine, Report } from '../engine.ts';
import { captionFont } from '../output/job.ts';
import { sheetJobs } from '../output/sheet-job.ts';
import { sheetPage } from '../output/sheet-page.ts';
import { breather, computeOptions } from './compute-options.ts';
import type { Checked, TagService } from './service.ts';
import { sheetsHtml } from './sheets-html.ts';
import type { Shown } from './sheets-html.ts';
import { nameOf } from './write-whole.ts';

/** A layout takes as long as many drawings: it waits until nobody types. */
const restMs = 700;

export class SheetsView implements vscode.Disposable {
  readonly #extensionUri: vscode.Uri;
  readonly #service: TagService;
  readonly #engine: Engine;
  /** By the specs they show. */
  readonly #panels = new Map<string, SheetsPanel>();

  constructor(extensionUri: vscode.Uri, service: TagService, engine: Engine) {
    this.#extensionUri = extensionUri;
    this.#service = service;
    this.#engine = engine;
  }

  show(uri: vscode.Uri): void {
    const key = uri.toString();
    const known = this.#panels.get(key);
    if (known) known.reveal();
    else {
      const panel = new SheetsPanel(uri, this.#extensionUri, this.#service, this.#engine);
      this.#panels.set(key, panel);
      panel.onDidDispose(() => this.#panels.delete(key));
    }
  }

  dispose(): void {
    for (const panel of [...this.#panels.values()]) panel.dispose();
  }
}

class SheetsPanel implements vscode.Disposable {
  readonly #uri: vscode.Uri;
  readonly #service: TagService;
  readonly #engine: Engine;
  readonly #panel: vscode.WebviewPanel;
  readonly #styleUri: vscode.Uri;
  readonly #changes: vscode.Disposable;
  #timer: NodeJS.Timeout | undefined;
  #running: AbortController | undefined;
  /** What was laid out last. */
  #laidOut: Report | undefined;

  constructor(uri: vscode.Uri, extensionUri: vscode.Uri, service: TagService, engine: Engine) {
    this.#uri = uri;
    this.#service = service;
    this.#engine = engine;
    const place = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
    const folder = vscode.Uri.joinPath(extensionUri, 'dist', 'webview');
    this.#panel = vscode.window.createWebviewPanel('tagwright.sheets', `Sheets: ${nameOf(uri)}`, place, {
      enableCommandUris: ['tagwright.exportSheets'],
      localResourceRoots: [folder],
    });
    this.#styleUri = vscode.Uri.joinPath(folder, 'sheets.css');
    this.#changes = service.onDidChange((result) => {
      if (result.uri.toString() === uri.toString()) this.#soon(restMs);
    });
    this.onDidDispose(() => {
      this.#changes.dispose();
      clearTimeout(this.#timer);
      this.#running?.abort();
    });
    this.#put({ kind: 'waiting' });
    service.request(uri);
    this.#soon(0);
  }

  reveal(): void {
    this.#panel.reveal(undefined, true);
  }

  onDidDispose(listener: () => void): void {
    this.#panel.onDidDispose(listener);
  }

  dispose(): void {
    this.#panel.dispose();
  }

  #soon(ms: number): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => {
      const result = this.#service.get(this.#uri);
      if (result && isOther(result.report, this.#laidOut)) void this.#layOut(result);
    }, ms);
  }

  async #layOut(result: Checked): Promise<void> {
    this.#running?.abort();
    const controller = new AbortController();
    this.#running = controller;
    const { signal } = controller;
    try {
      const shown = await this.#shown(result, signal);
      signal.throwIfAborted();
      // While the text is broken, the sheets of the last good one stay.
      if (shown.kind === 'nothing' && this.#laidOut && !result.report.tag) return;
      this.#laidOut = result.report;
      this.#put(shown);
    } catch (error) {
      if (!signal.aborted) throw error;
    }
  }

  async #shown({ uri, report }: Checked, signal: AbortSignal): Promise<Shown> {
    const options = computeOptions(uri, signal, report.row);
    const pause = breather(signal);
    const sheets = await sheetJobs(await reportsOf(this.#engine, report, options, pause), pause);
    if ('problem' in sheets) return { kind: 'nothing', why: sheets.problem };
    if (sheets.jobs.length === 0) return { kind: 'nothing', why: 'No piece goes on the sheet.' };
    const page = await sheetPage(sheets, { captions: (weight) => captionFont(this.#engine.fonts, weight) });
    return { kind: 'sheets', page, facts: sheets.facts };
  }

  #put(shown: Shown): void {
    const { webview } = this.#panel;
    webview.html = sheetsHtml(shown, {
      cspSource: webview.cspSource,
      styleUri: webview.asWebviewUri(this.#styleUri).toString(),
      source: this.#uri.toString(),
    });
  }
}

/** Another tag of the same batch is another drawing, and the same sheets. */
function isOther(report: Report, before: Report | undefined): boolean {
  if (!before || report === before) return report !== before;
  return report.row === before.row || report.source.text !== before.source.text;
}
