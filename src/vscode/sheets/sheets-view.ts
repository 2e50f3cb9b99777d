/** The sheets for a spec's tags, shown beside it and laid out again after a pause in typing. */

import * as vscode from 'vscode';
import { inBackground } from '../common/background.ts';
import { reportsOf } from '../../engine/batch.ts';
import type { Engine, Report } from '../../engine/engine.ts';
import { sheetSizeEdit, sheetSizesFor } from '../../edits/sheet-size.ts';
import type { SheetSize } from '../../edits/sheet-size.ts';
import { boundsOf } from '../../geometry/measure.ts';
import { causeOf, isError } from '../../core/issue.ts';
import { lengthText } from '../../edits/length-text.ts';
import { sheetJobs } from '../../export/sheets/sheet-job.ts';
import type { SheetPlan } from '../../export/sheets/sheet-plan.ts';
import type { Nester } from '../../nesting/best-of.ts';
import { labelOf } from '../../spec/batch/batch.ts';
import { applyEdits } from '../common/apply-edits.ts';
import { editorTurn, computeOptions } from '../service/compute-options.ts';
import type { Checked } from '../service/checked.ts';
import type { TagService } from '../service/service.ts';
import type { SpecMoves } from '../service/spec-moves.ts';
import type { AskedOfText, SheetProblem, SheetsScene } from '../../protocol/sheets.ts';
import { figuresOfSheets } from '../../scene/layout-figures.ts';
import { specOnPage } from '../../scene/spec-on-page.ts';
import { SheetsPanel } from './sheets-panel.ts';
import { SheetsPanels } from './sheets-panels.ts';
import type { SheetsContent } from './sheets-panel.ts';
import { SpecPiecePlaces } from './spec-piece-places.ts';
import { putCursor, showText } from '../common/tabs.ts';

/** Pause before a layout, in ms: it takes as long as many drawings. */
const restMs = 700;

/** What sheets are made with. */
export interface SheetMaking {
  readonly engine: Engine;
  readonly nest: Nester;
}

export class SheetsView implements vscode.Disposable {
  readonly #pages: SheetsPanels;
  readonly #moves: vscode.Disposable;

  constructor(extensionUri: vscode.Uri, service: TagService, making: SheetMaking, moves: SpecMoves) {
    this.#pages = new SheetsPanels((uri) => new SpecSheets(uri, extensionUri, service, making).page);
    this.#moves = moves.onDidMove(({ from, to }) => {
      this.#pages.move(from, to);
    });
  }

  show(uri: vscode.Uri): void {
    this.#pages.show(uri);
  }

  dispose(): void {
    this.#moves.dispose();
    this.#pages.dispose();
  }
}

class SpecSheets {
  readonly page: SheetsPanel;
  readonly #uri: vscode.Uri;
  readonly #service: TagService;
  readonly #making: SheetMaking;
  #timer: NodeJS.Timeout | undefined;
  /** The last report examined for changes that affect the sheets. */
  #seen: Report | undefined;
  #laidOut: Report | undefined;

  constructor(uri: vscode.Uri, extensionUri: vscode.Uri, service: TagService, making: SheetMaking) {
    this.#uri = uri;
    this.#service = service;
    this.#making = making;
    this.page = new SheetsPanel('tagwright.sheets', uri, extensionUri, (message) => this.#heed(message));
    const changes = service.onDidChange((result) => {
      if (result.uri.toString() === uri.toString()) this.#scheduleLayout(restMs);
    });
    this.page.onDidDispose(() => {
      changes.dispose();
      clearTimeout(this.#timer);
    });
    service.request(uri);
    this.#scheduleLayout(0);
  }

  #scheduleLayout(ms: number): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => {
      const result = this.#service.get(this.#uri);
      if (!result) return;
      const before = this.#seen;
      this.#seen = result.report;
      if (isOther(result.report, before)) inBackground(this.#layOut(result), 'lay out the sheets');
    }, ms);
  }

  #layOut(result: Checked): Promise<void> {
    return this.page.show(async (signal) => {
      const shown = await this.#shown(result, signal);
      signal.throwIfAborted();
      // While the text is broken, the last good sheets stay.
      if (shown.type === 'nothing' && this.#laidOut && !result.report.tag) return undefined;
      this.#laidOut = result.report;
      return shown;
    });
  }

  async #shown({ uri, report }: Checked, signal: AbortSignal): Promise<SheetsContent> {
    const options = computeOptions(uri, signal, report.row);
    const pause = editorTurn(signal);
    const reports = await reportsOf(this.#making.engine, report, options, pause);
    const sheets = await sheetJobs(reports, pause, this.#making.nest);
    if ('problem' in sheets) return sheets.lacksSheet ? sizesFor(reports) : { type: 'nothing', why: sheets.problem };
    if (sheets.jobs.length === 0) return { type: 'nothing', why: 'No piece fits the sheet.' };
    const { sheets: drawn, shapes } = specOnPage(sheets.plan, sheets.jobs);
    const { units } = reports.find(({ tag }) => tag)!.tag!;
    const scene = {
      title: sheets.title,
      pins: false,
      gaps: [gapOf(sheets.plan)],
      units,
      sheets: drawn,
      facts: sheets.facts,
      figures: figuresOfSheets(sheets, units),
      problems: problemsOf(reports),
      warning: 'Do not cut yet',
    };
    return { type: 'sheets', scene, shapes, places: new SpecPiecePlaces(uri, report, drawn) };
  }

  async #heed(message: AskedOfText): Promise<void> {
    switch (message.type) {
      case 'export':
        await vscode.commands.executeCommand('tagwright.exportSheets', this.#uri);
        break;
      case 'show':
        await this.#showProblem(message.offset, message.row);
        break;
      case 'gap':
        await this.#writeGap(message.gap);
        break;
      case 'again':
        await this.#layOut(this.#service.get(this.#uri)!);
        break;
      case 'pin':
      case 'unpin':
      case 'effort':
        break;
      case 'size':
        await this.#writeSize(message);
        break;
    }
  }

  /** Draws the tag with the problem and shows its place in the text. */
  async #showProblem(offset: number, row: number): Promise<void> {
    this.#service.showRow(this.#uri, row);
    const editor = await showText(this.#uri);
    if (editor.document.getText() !== this.#laidOut?.source.text) return;
    putCursor(editor, offset);
  }

  async #writeGap(gap: number): Promise<void> {
    const { source, tag } = this.#laidOut ?? {};
    const { sheet } = (source?.value ?? {}) as { readonly sheet?: { readonly gap?: unknown } };
    const edit = source && tag && source.setKey(['sheet'], 'gap', lengthText(gap, sheet?.gap, tag.units));
    if (edit && (await applyEdits(this.#uri, source, [edit]))) return;
    void vscode.window.showInformationMessage(
      edit
        ? 'The spec has changed in the meantime; try again.'
        : 'The sheet is in a file that the spec uses; set its gap there.',
    );
  }

  async #writeSize(size: SheetSize): Promise<void> {
    const { source, tag } = this.#laidOut ?? {};
    const edit = source && tag && sheetSizeEdit(source, size, tag.units);
    if (edit && (await applyEdits(this.#uri, source, [edit]))) return;
    void vscode.window.showInformationMessage('The spec has changed; choose the size again.');
  }
}

/** One gap for all stocks, because a spec states a single one. */
function gapOf({ sheet }: SheetPlan): SheetsScene['gaps'][number] {
  return { stock: '', gap: sheet.gap, most: Math.max(mostGapMm, sheet.gap) };
}

/** Largest gap offered, in mm; more wastes the sheet (our own judgement), but the text may ask for more. */
const mostGapMm = 10;

/** Sheet sizes that the largest piece of any tag fits. */
function sizesFor(reports: readonly Report[]): SheetsContent {
  const boxes = reports.flatMap(({ tag }) => (tag?.pieces ?? []).flatMap(({ region }) => boundsOf(region) ?? []));
  const largest = {
    width: Math.max(...boxes.map(({ minX, maxX }) => maxX - minX)),
    height: Math.max(...boxes.map(({ minY, maxY }) => maxY - minY)),
  };
  const units = reports.find(({ tag }) => tag)?.tag?.units ?? 'mm';
  return { type: 'sizes', sizes: sheetSizesFor(largest, units), units };
}

/**
 * Problems that keep tags from being cut, grouped by place in the text: one mistake is one problem, however many tags
 * have it.
 */
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

/** Another tag of the same batch changes the drawing but not the sheets. */
function isOther(report: Report, before: Report | undefined): boolean {
  if (!before || report === before) return report !== before;
  return report.row === before.row || report.source.text !== before.source.text;
}
