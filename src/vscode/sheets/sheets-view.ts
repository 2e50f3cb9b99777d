/** The sheets that a spec's tags take, shown beside it and laid out anew once its text has rested. */

import * as vscode from 'vscode';
import { inBackground } from '../common/background.ts';
import { reportsOf } from '../../engine/batch.ts';
import type { Engine, Report } from '../../engine/engine.ts';
import { sheetSizeEdit, sheetSizesFor } from '../../edits/sheet-size.ts';
import type { SheetSize } from '../../edits/sheet-size.ts';
import { boundsOf } from '../../geometry/measure.ts';
import { causeOf, isError } from '../../core/issue.ts';
import { captionFont } from '../../export/job.ts';
import { sheetJobs } from '../../export/sheet-job.ts';
import { sheetPage } from '../../export/sheet-page.ts';
import { labelOf } from '../../spec/batch.ts';
import { applyEdits } from '../common/apply-edits.ts';
import { breather, computeOptions } from '../service/compute-options.ts';
import type { Checked, TagService } from '../service/service.ts';
import type { SpecMoves } from '../service/spec-moves.ts';
import { sheetsHtml } from './sheets-html.ts';
import type { SheetProblem, Shown } from './sheets-html.ts';
import { parseFromPage } from './from-page.ts';
import { putCursor, showText } from '../common/tabs.ts';
import { nameOf } from '../common/write-whole.ts';

/** A layout takes as long as many drawings: it waits until nobody types. */
const restMs = 700;

export class SheetsView implements vscode.Disposable {
  readonly #extensionUri: vscode.Uri;
  readonly #service: TagService;
  readonly #engine: Engine;
  readonly #moves: vscode.Disposable;
  /** By the specs they show. */
  readonly #panels = new Map<string, SheetsPanel>();

  constructor(extensionUri: vscode.Uri, service: TagService, engine: Engine, moves: SpecMoves) {
    this.#moves = moves.onDidMove(({ from, to }) => {
      const panel = this.#panels.get(from.toString());
      if (!panel) return;
      panel.dispose();
      this.show(to);
    });
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
    this.#moves.dispose();
    for (const panel of [...this.#panels.values()]) panel.dispose();
  }
}

class SheetsPanel implements vscode.Disposable {
  readonly #uri: vscode.Uri;
  readonly #service: TagService;
  readonly #engine: Engine;
  readonly #panel: vscode.WebviewPanel;
  /** Of the page's style sheet and script. */
  readonly #folder: vscode.Uri;
  readonly #changes: vscode.Disposable;
  #timer: NodeJS.Timeout | undefined;
  #running: AbortController | undefined;
  /** What was looked at last for whether it changes the sheets. */
  #seen: Report | undefined;
  /** What was laid out last. */
  #laidOut: Report | undefined;

  constructor(uri: vscode.Uri, extensionUri: vscode.Uri, service: TagService, engine: Engine) {
    this.#uri = uri;
    this.#service = service;
    this.#engine = engine;
    const place = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
    const folder = vscode.Uri.joinPath(extensionUri, 'dist', 'webview');
    this.#panel = vscode.window.createWebviewPanel('tagwright.sheets', `Sheets: ${nameOf(uri)}`, place, {
      enableScripts: true,
      localResourceRoots: [folder],
    });
    this.#folder = folder;
    this.#panel.webview.onDidReceiveMessage((data: unknown) => {
      inBackground(this.#heed(data), 'do what the sheets view asked for');
    });
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
      if (!result) return;
      const before = this.#seen;
      this.#seen = result.report;
      if (isOther(result.report, before)) inBackground(this.#layOut(result), 'lay out the sheets');
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
      if (signal.aborted) return;
      this.#put({ kind: 'nothing', why: 'The sheets could not be laid out.' });
      throw error;
    }
  }

  async #shown({ uri, report }: Checked, signal: AbortSignal): Promise<Shown> {
    const options = computeOptions(uri, signal, report.row);
    const pause = breather(signal);
    const reports = await reportsOf(this.#engine, report, options, pause);
    const sheets = await sheetJobs(reports, pause);
    if ('problem' in sheets) return sheets.lacksSheet ? sizesFor(reports) : { kind: 'nothing', why: sheets.problem };
    if (sheets.jobs.length === 0) return { kind: 'nothing', why: 'No piece fits the sheet.' };
    const tools = { captions: (weight: number) => captionFont(this.#engine.fonts, weight) };
    const page = await sheetPage(sheets, tools, 'sheets alone');
    return { kind: 'sheets', title: sheets.title, page, facts: sheets.facts, problems: problemsOf(reports) };
  }

  async #heed(data: unknown): Promise<void> {
    const message = parseFromPage(data);
    switch (message?.type) {
      case 'export':
        await vscode.commands.executeCommand('tagwright.exportSheets', this.#uri);
        break;
      case 'show':
        await this.#showProblem(message.offset, message.row);
        break;
      case 'size':
        await this.#writeSize(message);
        break;
      case undefined:
        break;
    }
  }

  /** The problem's own tag is drawn, and the text shown where it comes from. */
  async #showProblem(offset: number, row: number): Promise<void> {
    this.#service.showRow(this.#uri, row);
    const editor = await showText(this.#uri);
    if (editor.document.getText() !== this.#laidOut?.source.text) return;
    putCursor(editor, offset);
  }

  async #writeSize(size: SheetSize): Promise<void> {
    const { source, tag } = this.#laidOut ?? {};
    const edit = source && tag && sheetSizeEdit(source, size, tag.units);
    if (edit && (await applyEdits(this.#uri, source, [edit]))) return;
    void vscode.window.showInformationMessage('The spec has changed; choose the size again.');
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

/** Sizes that the largest piece of any tag goes on. */
function sizesFor(reports: readonly Report[]): Shown {
  const boxes = reports.flatMap(({ tag }) => (tag?.pieces ?? []).flatMap(({ region }) => boundsOf(region) ?? []));
  const largest = {
    width: Math.max(...boxes.map(({ minX, maxX }) => maxX - minX)),
    height: Math.max(...boxes.map(({ minY, maxY }) => maxY - minY)),
  };
  const units = reports.find(({ tag }) => tag)?.tag?.units ?? 'mm';
  return { kind: 'sizes', sizes: sheetSizesFor(largest, units), units };
}

/** What keeps tags from being cut, by where it comes from: one slip is one problem, however many tags have it. */
function problemsOf(reports: readonly Report[]): SheetProblem[] {
  const found = new Map<string, SheetProblem>();
  for (const report of reports) {
    const label = labelOf(report);
    for (const issue of report.issues.filter(isError)) {
      const before = found.get(causeOf(issue));
      const labels = [...(before?.labels ?? []), ...(label === undefined ? [] : [label])];
      const { start } = issue.range;
      const { line } = report.source.position(start);
      found.set(causeOf(issue), {
        ...(before ?? { message: issue.message, line, offset: start, row: report.row }),
        labels: [...new Set(labels)],
      });
    }
  }
  return [...found.values()];
}

/** Another tag of the same batch is another drawing, and the same sheets. */
function isOther(report: Report, before: Report | undefined): boolean {
  if (!before || report === before) return report !== before;
  return report.row === before.row || report.source.text !== before.source.text;
}
