/** Sheets page beside its text, independent of what lays the sheets out; one for each text. */

import * as vscode from 'vscode';
import { SpecSource } from '../../spec/yaml/source.ts';
import { applyEdits } from '../common/apply-edits.ts';
import { inBackground } from '../common/background.ts';
import { showText } from '../common/tabs.ts';
import { editsBetween } from '../common/text-edits.ts';
import { baseName } from '../common/write-whole.ts';
import type {
  AskedOfText,
  FromSheetsPage,
  LayoutState,
  SheetShape,
  SheetsScene,
  ToSheetsPage,
} from '../../protocol/sheets.ts';
import { parseFromPage } from './from-page.ts';
import { PieceSync } from './piece-places.ts';
import type { PiecePlaces } from './piece-places.ts';
import { sheetsHtml } from './sheets-html.ts';

/** Outcome of a layout. */
export type SheetsContent =
  | Extract<ToSheetsPage, { type: 'nothing' } | { type: 'sizes' }>
  | {
      readonly type: 'sheets';
      readonly scene: SheetsScene;
      readonly shapes: readonly SheetShape[];
      readonly places: PiecePlaces;
    };

type WaitingMessage = Extract<ToSheetsPage, { type: 'waiting' }>;

/** Shortest time between updates from a running layout, in ms. */
const updateMs = 250;

export class SheetsPanel implements vscode.Disposable {
  readonly #panel: vscode.WebviewPanel;
  #running: AbortController | undefined;
  #shown: SheetsContent | WaitingMessage = { type: 'waiting' };
  #state: LayoutState = 'done';
  #kept: { readonly scene: SheetsScene; readonly shapes: readonly SheetShape[]; readonly text: string } | undefined;
  readonly #uri: vscode.Uri;
  /** Ids of the shapes that the page already has. */
  readonly #sent = new Set<string>();
  /** The page says when it is ready; if it is hidden and shown again, it starts from scratch. */
  #isReady = false;

  readonly #complete: () => Promise<SheetsContent | undefined>;

  /**
   * @param heed Handles messages that concern the text.
   * @param complete What is shown of an unfinished layout, with all that is said of a finished one.
   */
  constructor(
    viewType: string,
    uri: vscode.Uri,
    extensionUri: vscode.Uri,
    heed: (message: AskedOfText) => Promise<void>,
    complete: () => Promise<SheetsContent | undefined> = () => Promise.resolve(undefined),
  ) {
    this.#complete = complete;
    this.#uri = uri;
    const folder = vscode.Uri.joinPath(extensionUri, 'dist', 'webview');
    const place = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
    this.#panel = vscode.window.createWebviewPanel(viewType, `Sheets: ${baseName(uri)}`, place, {
      enableScripts: true,
      localResourceRoots: [folder],
    });
    const { webview } = this.#panel;
    const sync = new PieceSync(
      () => (this.#shown.type === 'sheets' ? this.#shown.places : undefined),
      (pieces) => {
        this.#post({ type: 'light', pieces });
      },
    );
    webview.onDidReceiveMessage((data: unknown) => {
      const message = parseFromPage(data);
      if (message?.type === 'reveal')
        inBackground(sync.reveal(message.piece, message.focus), 'show where a piece comes from');
      else if (message && isOwnMessage(message)) inBackground(this.#heed(message), 'do what the sheets view asked for');
      else if (message) inBackground(heed(message), 'do what the sheets view asked for');
    });
    this.#panel.onDidDispose(() => {
      sync.dispose();
      this.#running?.abort();
    });
    const uriOf = (name: string) => webview.asWebviewUri(vscode.Uri.joinPath(folder, name)).toString();
    const sources = { cspSource: webview.cspSource, styleUri: uriOf('sheets.css'), scriptUri: uriOf('sheets.js') };
    webview.html = sheetsHtml(sources);
  }

  /**
   * Runs a layout and shows its result, and better intermediate ones on the way; `undefined` leaves what is shown.
   * Aborts the previous layout; one that is stopped leaves its best result so far.
   */
  async show(
    layOut: (signal: AbortSignal, better: (make: () => SheetsContent) => void) => Promise<SheetsContent | undefined>,
  ): Promise<void> {
    this.#running?.abort();
    const running = (this.#running = new AbortController());
    const { signal } = running;
    let last = Date.now();
    this.#post({ type: 'busy' });
    try {
      const shown = await layOut(signal, (make) => {
        if (signal.aborted || (Date.now() - last < updateMs && this.#shown.type === 'sheets')) return;
        this.#put(make(), 'improving');
        last = Date.now();
      });
      signal.throwIfAborted();
      this.#put(shown ?? this.#shown, 'done');
    } catch (error) {
      // Another layout is running, or stopping was requested.
      if (signal.aborted) return;
      this.#put({ type: 'nothing', why: 'The sheets could not be laid out.' }, 'done');
      throw error;
    } finally {
      if (this.#running === running) this.#running = undefined;
    }
  }

  get showsSheets(): boolean {
    return this.#shown.type === 'sheets';
  }

  get isSearching(): boolean {
    return this.#running !== undefined;
  }

  /** Ends a search; what is shown stays. */
  async stop(): Promise<void> {
    if (!this.#running) return;
    this.#running.abort();
    this.#running = undefined;
    const shown = this.#shown;
    this.#put(shown, 'stopped');
    const complete = await this.#complete();
    if (complete && this.#shown === shown) this.#put(complete, this.#state);
  }

  /** Sends what is shown once more, because a change by hand has come to nothing. */
  again(): void {
    this.#put(this.#shown, this.#state);
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

  async #heed(message: Own): Promise<void> {
    switch (message.type) {
      case 'ready':
        this.#begin();
        break;
      case 'stop':
        await this.stop();
        break;
      case 'undo':
        await this.#undo(message.step);
        break;
      case 'keep':
        await this.#keep();
        break;
      case 'forget':
        this.#kept = undefined;
        this.#postKept();
        break;
      case 'restore':
        await this.#restore();
        break;
    }
  }

  /** The editor's own undo works only with focus; the page is revealed again afterwards. */
  async #undo(step: 'undo' | 'redo'): Promise<void> {
    await showText(this.#uri);
    await vscode.commands.executeCommand(step);
    this.#panel.reveal(undefined, false);
  }

  async #keep(): Promise<void> {
    if (this.#shown.type !== 'sheets') return;
    const shown = this.#shown;
    const complete = shown.scene.facts.length === 0 ? await this.#complete() : undefined;
    const { scene, shapes } = complete?.type === 'sheets' ? complete : shown;
    const document = await vscode.workspace.openTextDocument(this.#uri);
    this.#kept = { scene, shapes, text: document.getText() };
    this.#postKept();
  }

  /** Restores the text of the kept layout as one undo step. */
  async #restore(): Promise<void> {
    if (!this.#kept) return;
    const document = await vscode.workspace.openTextDocument(this.#uri);
    const source = new SpecSource(document.getText());
    await applyEdits(this.#uri, source, editsBetween(source.text, this.#kept.text));
  }

  #begin(): void {
    this.#isReady = true;
    this.#sent.clear();
    this.#put(this.#shown, this.#running ? 'improving' : this.#state);
    if (this.#kept) this.#postKept();
  }

  #put(shown: SheetsContent | WaitingMessage, state: LayoutState): void {
    this.#shown = shown;
    this.#state = state;
    if (!this.#isReady) return;
    if (shown.type !== 'sheets') {
      this.#post(shown);
      return;
    }
    const { type, scene } = shown;
    this.#post({ type, scene, shapes: this.#unsent(shown.shapes), state });
  }

  #postKept(): void {
    const { scene, shapes = [] } = this.#kept ?? {};
    this.#post({ type: 'kept', ...(scene ? { scene } : {}), shapes: this.#unsent(shapes) });
  }

  #unsent(shapes: readonly SheetShape[]): SheetShape[] {
    const unsent = shapes.filter(({ id }) => !this.#sent.has(id));
    for (const { id } of unsent) this.#sent.add(id);
    return unsent;
  }

  #post(message: ToSheetsPage): void {
    if (this.#isReady) void this.#panel.webview.postMessage(message);
  }
}

/** Messages that the page itself handles, whatever its sheets show. */
type Own = Exclude<FromSheetsPage, AskedOfText | { type: 'reveal' }>;
const own: readonly string[] = ['ready', 'stop', 'undo', 'keep', 'forget', 'restore'] satisfies Own['type'][];

function isOwnMessage(message: FromSheetsPage): message is Own {
  return own.includes(message.type);
}
