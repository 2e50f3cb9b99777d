/** The page of sheets beside the text that they are of, whatever lays them out; one for each text. */

import * as vscode from 'vscode';
import { inBackground } from '../common/background.ts';
import { nameOf } from '../common/write-whole.ts';
import type { FromSheetsPage } from '../../protocol/sheets.ts';
import { parseFromPage } from './from-page.ts';
import { sheetsHtml } from './sheets-html.ts';
import type { Shown } from './sheets-html.ts';

export class SheetsPage implements vscode.Disposable {
  readonly #panel: vscode.WebviewPanel;
  /** Of the page's style sheet and script. */
  readonly #folder: vscode.Uri;
  #running: AbortController | undefined;

  /** @param heed What is done when the page asks for something. */
  constructor(
    viewType: string,
    uri: vscode.Uri,
    extensionUri: vscode.Uri,
    heed: (message: FromSheetsPage) => Promise<void>,
  ) {
    this.#folder = vscode.Uri.joinPath(extensionUri, 'dist', 'webview');
    const place = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
    this.#panel = vscode.window.createWebviewPanel(viewType, `Sheets: ${nameOf(uri)}`, place, {
      enableScripts: true,
      localResourceRoots: [this.#folder],
    });
    this.#panel.webview.onDidReceiveMessage((data: unknown) => {
      const message = parseFromPage(data);
      if (message) inBackground(heed(message), 'do what the sheets view asked for');
    });
    this.#panel.onDidDispose(() => this.#running?.abort());
    this.#put({ kind: 'waiting' });
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
      this.#put({ kind: 'nothing', why: 'The sheets could not be laid out.' });
      throw error;
    }
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
