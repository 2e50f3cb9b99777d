/** Maps the pieces on sheets to the texts they come from, and a cursor back to its pieces. */

import * as vscode from 'vscode';
import { putCursor, showText } from '../common/tabs.ts';

export interface TextPlace {
  readonly uri: vscode.Uri;
  /** Offset in the present text; `undefined` if it is no longer there. */
  readonly offsetIn: (text: string) => number | undefined;
}

export interface PiecePlaces {
  /** The most specific first: the row of an order before the line of the job that names its table. */
  of(piece: string): readonly TextPlace[];
  at(uri: vscode.Uri, text: string, offset: number): readonly string[];
}

const settleMs = 80;

/**
 * Synchronises cursor and pieces for one page, in both directions. It remembers the cursors it has placed itself, so
 * that a click on one piece does not highlight all pieces from the same line.
 */
export class PieceSync implements vscode.Disposable {
  readonly #places: () => PiecePlaces | undefined;
  readonly #subscription: vscode.Disposable;
  readonly #put = new Map<string, number>();
  #timer: NodeJS.Timeout | undefined;

  constructor(places: () => PiecePlaces | undefined, light: (pieces: readonly string[]) => void) {
    this.#places = places;
    this.#subscription = vscode.window.onDidChangeTextEditorSelection(({ textEditor: { document, selection } }) => {
      clearTimeout(this.#timer);
      this.#timer = setTimeout(() => {
        const offset = document.offsetAt(selection.active);
        const isOwn = this.#put.get(document.uri.toString()) === offset;
        this.#put.delete(document.uri.toString());
        if (!isOwn) light(places()?.at(document.uri, document.getText(), offset) ?? []);
      }, settleMs);
    });
  }

  /** Moves the cursor in every visible text; shows the first text if none is visible, or if the focus is to move. */
  async reveal(piece: string, focus: boolean): Promise<void> {
    const places = this.#places()?.of(piece) ?? [];
    const editors = vscode.window.visibleTextEditors;
    const seen = places.flatMap((place) => {
      const editor = editors.find(({ document }) => document.uri.toString() === place.uri.toString());
      return editor ? [{ place, editor }] : [];
    });
    for (const { place, editor } of seen) this.#go(editor, place);
    const [first] = places;
    if (!first || (!focus && seen.length > 0)) return;
    this.#go(await showText(first.uri, { preserveFocus: !focus }), first);
  }

  dispose(): void {
    clearTimeout(this.#timer);
    this.#subscription.dispose();
  }

  #go(editor: vscode.TextEditor, { offsetIn }: TextPlace): void {
    const { document } = editor;
    const offset = offsetIn(document.getText());
    if (offset === undefined || document.offsetAt(editor.selection.active) === offset) return;
    this.#put.set(document.uri.toString(), offset);
    putCursor(editor, offset);
  }
}
