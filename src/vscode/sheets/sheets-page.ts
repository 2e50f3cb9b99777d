/** The page of sheets beside the text that they are of, whatever lays them out; one for each text. */

import * as vscode from 'vscode';
import { inBackground } from '../common/background.ts';
import { showText } from '../common/tabs.ts';
import { nameOf } from '../common/write-whole.ts';
import type { AskedOfText, SheetShape, SheetsScene, ToSheetsPage } from '../../protocol/sheets.ts';
import { parseFromPage } from './from-page.ts';
import { PieceSync } from './piece-places.ts';
import type { PiecePlaces } from './piece-places.ts';
import { sheetsHtml } from './sheets-html.ts';

/** What comes of a layout. */
export type Shown =
  | Extract<ToSheetsPage, { type: 'nothing' | 'sizes' }>
  | {
      readonly type: 'sheets';
      readonly scene: SheetsScene;
      readonly shapes: readonly SheetShape[];
      readonly places: PiecePlaces;
    };

type Waiting = Extract<ToSheetsPage, { type: 'waiting' }>;

export class SheetsPage implements vscode.Disposable {
  readonly #panel: vscode.WebviewPanel;
  #running: AbortController | undefined;
  #shown: Shown | Waiting = { type: 'waiting' };
  /** Shapes that the page has. */
  readonly #sent = new Set<string>();
  /** It tells when it can be told something: shown again, it begins afresh. */
  #isReady = false;

  /** @param heed What is done when the page asks for something that is the text's own. */
  constructor(
    viewType: string,
    uri: vscode.Uri,
    extensionUri: vscode.Uri,
    heed: (message: AskedOfText) => Promise<void>,
  ) {
    const folder = vscode.Uri.joinPath(extensionUri, 'dist', 'webview');
    const place = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
    this.#panel = vscode.window.createWebviewPanel(viewType, `Sheets: ${nameOf(uri)}`, place, {
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
      if (message?.type === 'ready') this.#begin();
      else if (message?.type === 'undo') inBackground(this.#undo(uri, message.step), 'undo');
      else if (message?.type === 'reveal')
        inBackground(sync.reveal(message.piece, message.focus), 'show where a piece comes from');
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

  /** Shows what comes of a layout; `undefined` leaves what is shown. The layout before is given up. */
  async show(layOut: (signal: AbortSignal) => Promise<Shown | undefined>): Promise<void> {
    this.#running?.abort();
    const { signal } = (this.#running = new AbortController());
    try {
      const shown = await layOut(signal);
      signal.throwIfAborted();
      if (shown) this.#put(shown);
    } catch (error) {
      if (signal.aborted) return;
      this.#put({ type: 'nothing', why: 'The sheets could not be laid out.' });
      throw error;
    }
  }

  /** What is shown, once more: what the hand has done to it has come to nothing. */
  again(): void {
    this.#put(this.#shown);
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

  /** The editor's own, which only works where the keyboard is; it comes back. */
  async #undo(uri: vscode.Uri, step: 'undo' | 'redo'): Promise<void> {
    await showText(uri);
    await vscode.commands.executeCommand(step);
    this.#panel.reveal(undefined, false);
  }

  #begin(): void {
    this.#isReady = true;
    this.#sent.clear();
    this.#put(this.#shown);
  }

  #put(shown: Shown | Waiting): void {
    this.#shown = shown;
    if (!this.#isReady) return;
    if (shown.type !== 'sheets') {
      this.#post(shown);
      return;
    }
    const { type, scene } = shown;
    const shapes = shown.shapes.filter(({ id }) => !this.#sent.has(id));
    for (const { id } of shapes) this.#sent.add(id);
    this.#post({ type, scene, shapes });
  }

  #post(message: ToSheetsPage): void {
    if (this.#isReady) void this.#panel.webview.postMessage(message);
  }
}

/** What is open, by the texts that it is of. */
export class SheetsPages implements vscode.Disposable {
  readonly #open: (uri: vscode.Uri) => SheetsPage;
  readonly #pages = new Map<string, SheetsPage>();

  constructor(open: (uri: vscode.Uri) => SheetsPage) {
    this.#open = open;
  }

  show(uri: vscode.Uri): void {
    const key = uri.toString();
    const known = this.#pages.get(key);
    if (known) {
      known.reveal();
      return;
    }
    const page = this.#open(uri);
    this.#pages.set(key, page);
    page.onDidDispose(() => this.#pages.delete(key));
  }

  /** What shows the sheets of a text that has another name now. */
  move(from: vscode.Uri, to: vscode.Uri): void {
    const page = this.#pages.get(from.toString());
    if (!page) return;
    page.dispose();
    this.show(to);
  }

  dispose(): void {
    for (const page of [...this.#pages.values()]) page.dispose();
  }
}
