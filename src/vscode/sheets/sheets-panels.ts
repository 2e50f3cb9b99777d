/** The open sheets pages, one for each text. */

import * as vscode from 'vscode';
import type { SheetsPanel } from './sheets-panel.ts';

/** Open pages by the URI of their text. */
export class SheetsPanels implements vscode.Disposable {
  readonly #open: (uri: vscode.Uri) => SheetsPanel;
  readonly #pages = new Map<string, SheetsPanel>();

  constructor(open: (uri: vscode.Uri) => SheetsPanel) {
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

  /** Moves the page of a text to the text's new name. */
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
