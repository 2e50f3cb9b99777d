/**
 * Specs whose text gets another name: an unsaved one that is saved, a file by “Save As”, a draft that is given its name. To the
 * editor that is no rename: it saves a file with the same text, shows it, and then closes what it was made from.
 */

import * as vscode from 'vscode';
import { isTagSpec } from '../common/documents.ts';
import { columnOf } from '../common/tabs.ts';

interface Move {
  readonly from: vscode.Uri;
  readonly to: vscode.Uri;
}

/** Between saving a file and closing what it was made from. A file system far away may take its time. */
const longestMs = 10_000;

export class SpecMoves implements vscode.Disposable {
  readonly #moved = new vscode.EventEmitter<Move>();
  readonly #subscriptions: readonly { dispose(): unknown }[];
  /** Saved just now: the file, the specs that had the same text then, and when, in ms. */
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

  /** For a move that is made here, and that nothing has to be concluded from. */
  tell(move: Move): void {
    this.#moved.fire(move);
  }

  dispose(): void {
    for (const subscription of this.#subscriptions) subscription.dispose();
  }

  #note(saved: vscode.TextDocument): void {
    const text = withoutBlanks(saved);
    // A file that is in a tab already was saved in its place; only an unsaved text may have been put over it.
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

/** Saving may take blanks off the ends of lines, and put a line break at the end. */
function withoutBlanks(document: vscode.TextDocument): string {
  return document
    .getText()
    .replace(/[^\S\n]+$/gm, '')
    .trimEnd();
}
