/**
 * Detects specs whose text moves to another name: an unsaved one that is saved, a file by “Save As”, a draft that gets
 * its name. To the editor that is not a rename: it saves a file with the same text, shows it, and then closes the
 * original.
 */

import * as vscode from 'vscode';
import { isTagSpec } from '../common/documents.ts';
import { columnOf } from '../common/tabs.ts';

interface Move {
  readonly from: vscode.Uri;
  readonly to: vscode.Uri;
}

/** Longest time between saving a file and closing the original, in ms. A remote file system may be slow. */
const longestMs = 10_000;

export class SpecMoves implements vscode.Disposable {
  readonly #moved = new vscode.EventEmitter<Move>();
  readonly #subscriptions: readonly { dispose(): unknown }[];
  /** The last save: the file, the specs that had the same text then, and the time in ms. */
  #saved: { readonly to: vscode.Uri; readonly from: readonly vscode.Uri[]; readonly at: number } | undefined;
  /** Fires once the spec is shown under its new name and no longer under the old one. */
  readonly onDidMove = this.#moved.event;

  constructor() {
    this.#subscriptions = [
      this.#moved,
      vscode.workspace.onDidSaveTextDocument((document) => {
        this.#note(document);
      }),
      vscode.window.tabGroups.onDidChangeTabs(() => {
        this.#settle();
      }),
    ];
  }

  /** Reports a move made by the extension itself, which need not be detected. */
  fire(move: Move): void {
    this.#moved.fire(move);
  }

  dispose(): void {
    for (const subscription of this.#subscriptions) subscription.dispose();
  }

  #note(saved: vscode.TextDocument): void {
    const text = withoutBlanks(saved);
    // A file that is already in a tab was saved in place; only an unsaved text can have been saved over it.
    const isInPlace = columnOf(saved.uri) !== undefined;
    const from = vscode.workspace.textDocuments
      .filter((each) => each !== saved && isTagSpec(each.uri) && columnOf(each.uri) !== undefined)
      .filter((each) => each.isUntitled || !isInPlace)
      .filter((each) => (each.isUntitled && each.uri.path === saved.uri.path) || withoutBlanks(each) === text)
      .map(({ uri }) => uri);
    this.#saved = { to: saved.uri, from, at: performance.now() };
    this.#settle();
  }

  #settle(): void {
    if (!this.#saved) return;
    const { to, from, at } = this.#saved;
    const gone = from.find((uri) => columnOf(uri) === undefined);
    if (!gone || !columnOf(to)) return;
    this.#saved = undefined;
    if (performance.now() - at < longestMs) this.#moved.fire({ from: gone, to });
  }
}

/** Saving may trim line ends and add a final line break. */
function withoutBlanks(document: vscode.TextDocument): string {
  return document
    .getText()
    .replace(/[^\S\n]+$/gm, '')
    .trimEnd();
}
