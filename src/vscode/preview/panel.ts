/** One preview: sends the page of a spec its data and answers its messages. */

import * as vscode from 'vscode';
import { inBackground } from '../common/background.ts';
import { previewTitle } from '../common/tabs.ts';
import type { IssueHelp } from '../features/issue-help.ts';
import { tagsToCheck, type TagResult, type TagResults } from '../service/results.ts';
import type { EditTrial } from '../service/trial.ts';
import { baseName } from '../common/write-whole.ts';
import { estimateOfTag } from '../../export/job/known-estimates.ts';
import { estimateFacts } from '../../export/words/estimate-facts.ts';
import { sceneGrips } from '../../scene/grips.ts';
import { gripsIn } from './grips-in.ts';
import { HandChanges } from './hand-changes.ts';
import type { PreviewMemory } from './memory.ts';
import { shellHtml } from './html.ts';
import { parseToHost } from './messages.ts';
import { highlightedIds } from '../../scene/highlighted.ts';
import { cutPathsOf, wallsOf } from '../../scene/measures.ts';
import { loadsOf } from '../../scene/loads.ts';
import { PinFixes } from './pin-fixes.ts';
import type { ExportKind, SceneMessage, ToPage } from '../../protocol/preview.ts';
import { acceptedOf, pinsOf } from '../../scene/pins.ts';
import { sceneOf } from '../../scene/scene.ts';

/** Pause before computing measures, in ms: loads and the like take as long as a drawing. */
const measuresAfterMs = 250;
/** Pause before planning the cuts, in ms: that takes several times as long. */
const estimateAfterMs = 700;

export interface PreviewServices {
  readonly results: TagResults;
  readonly help: IssueHelp;
  readonly trial: EditTrial;
  readonly memory: PreviewMemory;
}

export interface PreviewActions {
  reveal(uri: vscode.Uri, offset: number, focus: boolean): void;
  makeFiles(uri: vscode.Uri, what: ExportKind): void;
  /** Makes the preview of this spec follow the editor, or stop following it. */
  follow(uri: vscode.Uri, follows: boolean): void;
  /** Makes the preview of this spec, which is gone, show another that is open. */
  showOther(uri: vscode.Uri): void;
  /** Informs all previews. */
  screenMeasured(): void;
  /** Undo or redo in the text; `after` is called when it is done. */
  undo(uri: vscode.Uri, step: 'undo' | 'redo', after: () => void): void;
}

export class PreviewPanel implements vscode.Disposable {
  private readonly subscriptions: vscode.Disposable[] = [];
  /** The last cursor offset that was highlighted; sent again when the page is recreated. */
  private cursor: number | undefined;
  private coveredRows = 0;
  private wantsCutPaths = false;
  private later: readonly NodeJS.Timeout[] = [];
  private readonly results: TagResults;
  private readonly memory: PreviewMemory;
  private readonly fixes: PinFixes;
  private readonly handChanges: HandChanges;

  constructor(
    readonly uri: vscode.Uri,
    private readonly panel: vscode.WebviewPanel,
    { results, help, trial, memory }: PreviewServices,
    private readonly actions: PreviewActions,
    pageFolder: vscode.Uri,
    follows: boolean,
  ) {
    this.results = results;
    this.memory = memory;
    this.fixes = new PinFixes(help, trial, (message) => {
      this.send(message);
    });
    this.handChanges = new HandChanges(trial, {
      showTrial: (result, { grip, change }) => {
        this.sendResult(result, { grip, change });
      },
      showText: () => {
        this.sendScene();
      },
    });
    const { webview } = panel;
    panel.title = previewTitle(uri);
    webview.options = { enableScripts: true, localResourceRoots: [pageFolder] };
    this.subscriptions.push(
      webview.onDidReceiveMessage((data: unknown) => {
        this.receive(data);
      }),
      panel.onDidChangeViewState(() => {
        // A hidden page is destroyed, so work for it stops.
        if (!panel.visible) this.rest();
      }),
      results.onDidChange((result) => {
        if (result.uri.toString() !== uri.toString()) return;
        this.fixes.stop();
        this.handChanges.stop();
        this.sendScene();
      }),
    );
    webview.html = shellHtml({
      cspSource: webview.cspSource,
      scriptUri: webview.asWebviewUri(vscode.Uri.joinPath(pageFolder, 'main.js')).toString(),
      styleUri: webview.asWebviewUri(vscode.Uri.joinPath(pageFolder, 'main.css')).toString(),
      nonce: crypto.randomUUID(),
      source: uri.toString(),
      remembered: JSON.stringify({
        kept: memory.kept(uri),
        devicePixelsPerMm: memory.screen,
        exports: memory.exports,
        cautions: memory.cautions,
        follows,
      }),
    });
  }

  get isVisible(): boolean {
    return this.panel.visible;
  }

  get isActive(): boolean {
    return this.panel.active;
  }

  reveal(): void {
    this.panel.reveal(undefined, true);
  }

  /** `follow`: the view may move to what is highlighted. */
  highlight(offset: number, follow: boolean): void {
    this.cursor = offset;
    const result = this.results.get(this.uri);
    if (!result?.model) return;
    this.send({
      type: 'highlight',
      source: this.uri.toString(),
      ids: highlightedIds(result.model, result.pathAt(offset)),
      follow,
    });
  }

  /** A list of so many rows at the top of the window may lie over the page. */
  cover(rows: number): void {
    this.coveredRows = rows;
    this.send({ type: 'covered', source: this.uri.toString(), rows });
  }

  sendScreen(): void {
    const { screen } = this.memory;
    const known = screen !== undefined && { devicePixelsPerMm: screen };
    this.send({ type: 'screen', source: this.uri.toString(), ...known });
  }

  /** Says that the spec is gone; `other`: an open spec to offer instead. */
  showGone(other: vscode.Uri | undefined): void {
    this.rest();
    const offer = other !== undefined && { other: baseName(other) };
    this.send({ type: 'gone', source: this.uri.toString(), fileName: baseName(this.uri), ...offer });
  }

  onDidDispose(listener: () => void): void {
    this.subscriptions.push(this.panel.onDidDispose(listener));
  }

  /** Gives up the panel, for another preview to take over. */
  release(): vscode.WebviewPanel {
    this.rest();
    for (const subscription of this.subscriptions.splice(0)) subscription.dispose();
    return this.panel;
  }

  dispose(): void {
    this.release().dispose();
  }

  private rest(): void {
    this.later.forEach(clearTimeout);
    this.fixes.stop();
    this.handChanges.stop();
  }

  private receive(data: unknown): void {
    const message = parseToHost(data);
    if (!message || (message.type !== 'ready' && message.source !== this.uri.toString())) return;
    const result = this.results.get(this.uri);
    switch (message.type) {
      case 'ready':
        this.sendScreen();
        if (this.coveredRows > 0) this.cover(this.coveredRows);
        if (result) this.sendScene();
        else this.results.request(this.uri);
        return;
      case 'reveal':
        this.actions.reveal(this.uri, message.offset, message.focus);
        return;
      case 'export':
        // One job for a tag is enough; files are made again and again.
        if (message.what !== 'job') this.memory.exports = message.what;
        this.actions.makeFiles(this.uri, message.what);
        return;
      case 'read-caution':
        this.memory.readCaution(message.caution);
        return;
      case 'show-row':
        this.results.showRow(this.uri, message.row);
        return;
      case 'want-cut-paths':
        this.wantsCutPaths = message.wanted;
        if (message.wanted) this.sendMeasures();
        return;
      case 'ask-fixes':
        if (result) inBackground(this.fixes.offer(result, message), 'look for fixes');
        return;
      case 'make-fix':
        if (result) inBackground(this.fixes.make(result, message), 'make the fix');
        return;
      case 'show-fix':
        if (result) inBackground(this.fixes.show(result, message), 'show what a fix would make');
        return;
      case 'try-change':
        if (result) this.handChanges.try(result, message);
        return;
      case 'make-change':
        if (result) inBackground(this.handChanges.make(result, message), 'write the change');
        return;
      case 'follow':
        this.actions.follow(this.uri, message.follows);
        return;
      case 'keep':
        this.memory.keep(this.uri, message.kept);
        return;
      case 'screen':
        this.memory.screen = message.devicePixelsPerMm;
        this.actions.screenMeasured();
        return;
      case 'show-other':
        this.actions.showOther(this.uri);
        return;
      case 'drop-change':
        this.handChanges.drop();
        return;
      case 'undo':
      case 'redo':
        this.actions.undo(this.uri, message.type, () => {
          this.panel.reveal(undefined, false);
        });
        return;
      default:
        message satisfies never;
    }
  }

  /** Always sends the newest result, so that an older one can never follow. */
  private sendScene(): void {
    const result = this.results.get(this.uri);
    if (!result) return;
    this.sendResult(result);
    // The tags of a broken spec have nothing to show.
    const { version, batchTags: tags, stale } = result;
    if (tags && !stale) this.send({ type: 'batch', source: this.uri.toString(), version, tags });
    this.later.forEach(clearTimeout);
    this.later = [
      setTimeout(() => {
        this.sendMeasures();
      }, measuresAfterMs),
      setTimeout(() => {
        this.sendEstimate();
      }, estimateAfterMs),
    ];
    // The same cursor may now be in text that makes other parts.
    if (this.cursor !== undefined) this.highlight(this.cursor, false);
  }

  private sendResult(result: TagResult, trying?: SceneMessage['trying']): void {
    const { tag, version, fileName, stale, issues, report } = result;
    const grips = sceneGrips(gripsIn(result));
    this.send({
      type: 'scene',
      source: this.uri.toString(),
      version,
      fileName,
      ...(report.batch && { batch: { labels: report.batch.rows.map(({ label }) => label), row: report.row } }),
      ...(tag && { scene: sceneOf(tag, (path) => result.rangeOf(path)?.start ?? 0, grips) }),
      stale,
      toCheck: tagsToCheck(result),
      ...(trying && { trying }),
      pins: pinsOf(issues, (offset) => result.lineOf(offset)),
      accepted: acceptedOf(report.accepted, (offset) => result.lineOf(offset)),
    });
  }

  private sendMeasures(): void {
    const result = this.results.get(this.uri);
    if (!result?.tag || !this.panel.visible) return;
    this.send({
      type: 'measures',
      source: this.uri.toString(),
      version: result.version,
      loads: loadsOf(result.tag),
      walls: wallsOf(result.tag, result.report.issues),
      cutPaths: this.wantsCutPaths ? cutPathsOf(result.tag) : [],
    });
  }

  /** The page already knows if its drawing is out of date. */
  private sendEstimate(): void {
    const result = this.results.get(this.uri);
    if (!result?.tag || result.stale || !this.panel.visible) return;
    const { version, tag } = result;
    const estimate = estimateOfTag(tag);
    const facts = estimate ? estimateFacts(estimate, tag.units) : [];
    this.send({ type: 'takes', source: this.uri.toString(), version, facts });
  }

  /** A hidden page is destroyed; when it is recreated it sends `ready` and receives everything again. */
  private send(message: ToPage): void {
    if (this.panel.visible) void this.panel.webview.postMessage(message);
  }
}
