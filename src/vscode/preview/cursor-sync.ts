/**
 * Synchronises cursor and preview: the cursor highlights parts, and a click on a part reveals its line. Each direction
 * ignores what the other caused, so that they do not chase each other.
 */

import * as vscode from 'vscode';
import type { TagResult, TagResults } from '../service/results.ts';
import { batchTable, tagAt } from '../common/batch-table.ts';
import { putCursor, showText } from '../common/tabs.ts';
import type { PreviewManager } from './manager.ts';

const settleDelayMs = 80;
/** A cursor that moves this soon after an edit, in ms, was moved by typing. */
const typingPauseMs = 600;

export class CursorSync implements vscode.Disposable {
  private readonly subscriptions: vscode.Disposable[];
  private timer: NodeJS.Timeout | undefined;
  private lastEdit = 0;
  /** Position set by `reveal`: the selection event that it causes must not move the view. */
  private revealed: vscode.Position | undefined;

  constructor(
    private readonly previews: PreviewManager,
    private readonly results: TagResults,
  ) {
    this.subscriptions = [
      vscode.window.onDidChangeTextEditorSelection(({ textEditor }) => {
        this.cursorMoved(textEditor);
      }),
      vscode.workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
        if (contentChanges.length > 0 && this.previews.get(document.uri)) this.lastEdit = Date.now();
      }),
    ];
  }

  /** Highlights what is at the cursor, for a preview that has just been opened. */
  show(uri: vscode.Uri): void {
    const key = uri.toString();
    const editor = vscode.window.visibleTextEditors.find(({ document }) => document.uri.toString() === key);
    if (editor) this.previews.get(uri)?.highlight(editor.document.offsetAt(editor.selection.active), false);
  }

  /** Shows the offset in the editor that has the spec, in its own column; `focus` moves keyboard focus there too. */
  async reveal(uri: vscode.Uri, offset: number, focus: boolean): Promise<void> {
    const document = await vscode.workspace.openTextDocument(uri);
    this.revealed = document.positionAt(offset);
    putCursor(await showText(uri, { preserveFocus: !focus }), offset);
  }

  /** The editor's own undo works only with focus, so the focus is moved there first. */
  async undo(uri: vscode.Uri, step: 'undo' | 'redo'): Promise<void> {
    await showText(uri);
    await vscode.commands.executeCommand(step);
  }

  dispose(): void {
    clearTimeout(this.timer);
    for (const subscription of this.subscriptions) subscription.dispose();
  }

  /** A cursor in a row of a batch selects that row. */
  private showRow(document: vscode.TextDocument, cursor: vscode.Position): void {
    const [key, row] = this.results.get(document.uri)?.pathAt(document.offsetAt(cursor)) ?? [];
    if (key === 'batch' && typeof row === 'number') this.results.showRow(document.uri, row);
  }

  /** The same for a row of a table, in the previews of batches that are read from it. */
  private showRowOfTable(document: vscode.TextDocument, cursor: vscode.Position): void {
    for (const { uri, report } of this.readFrom(document)) {
      const row = tagAt(report, document.getText(), document.offsetAt(cursor));
      if (row !== undefined) this.results.showRow(uri, row);
    }
  }

  private readFrom({ uri: table }: vscode.TextDocument): TagResult[] {
    return this.previews.all
      .flatMap(({ uri }) => this.results.get(uri) ?? [])
      .filter(({ uri, report }) => batchTable(uri, report)?.toString() === table.toString());
  }

  private cursorMoved(editor: vscode.TextEditor): void {
    const { document } = editor;
    const isSpec = this.previews.get(document.uri) !== undefined;
    if (!isSpec && this.readFrom(document).length === 0) return;
    clearTimeout(this.timer);
    this.timer = setTimeout(() => {
      if (!isSpec) {
        this.showRowOfTable(document, editor.selection.active);
        return;
      }
      const cursor = editor.selection.active;
      this.showRow(document, cursor);
      const echo = this.revealed?.isEqual(cursor) ?? false;
      this.revealed = undefined;
      const wanted = vscode.workspace
        .getConfiguration('tagwright', document)
        .get<boolean>('preview.followCursor', true);
      const typing = Date.now() - this.lastEdit < typingPauseMs;
      this.previews.get(document.uri)?.highlight(document.offsetAt(cursor), wanted && !echo && !typing);
    }, settleDelayMs);
  }
}
