/** Draft: an unsaved spec with its preview, which is removed completely if it is not kept. */

import * as vscode from 'vscode';
import { fileExists, openDocument } from '../common/documents.ts';
import type { SpecMoves } from '../service/spec-moves.ts';
import { previewTitle, showText } from '../common/tabs.ts';
import { editsBetween } from '../common/text-edits.ts';

export class DraftDocument {
  #document: vscode.TextDocument;
  readonly #tabsBefore: ReadonlySet<vscode.Tab>;
  /** Edits are applied one after the other, each to the text that the previous one left. */
  #last: Promise<void> = Promise.resolve();
  #wanted = '';
  /** The text as last set; anything else was typed by the user, and the draft is then theirs. */
  #put: string | undefined;

  private constructor(document: vscode.TextDocument, tabsBefore: ReadonlySet<vscode.Tab>) {
    this.#document = document;
    this.#tabsBefore = tabsBefore;
  }

  get uri(): vscode.Uri {
    return this.#document.uri;
  }

  /** Where it will lie once it is saved as proposed; from there on, files of the folder have their paths. */
  get home(): vscode.Uri {
    const folder = vscode.workspace.workspaceFolders?.[0]?.uri;
    return folder?.with({ path: this.uri.path }) ?? this.uri;
  }

  /** `asking`: beside a question that keeps the keyboard. */
  static async open(fileName: string, text: string, asking = false): Promise<DraftDocument> {
    const tabsBefore = new Set(allTabs());
    const document = await vscode.workspace.openTextDocument(await untitledUri(fileName));
    const draft = new DraftDocument(document, tabsBefore);
    await draft.set(text);
    await showText(draft.uri, { preview: false, preserveFocus: asking });
    await vscode.commands.executeCommand('tagwright.openPreview', draft.uri);
    return draft;
  }

  /** Of the texts that are set while another is being applied, only the last one counts. */
  set(text: string): Promise<void> {
    this.#wanted = text;
    this.#last = this.#last.then(() => this.#write());
    return this.#last;
  }

  async show(): Promise<void> {
    await showText(this.uri, { preview: false });
  }

  /**
   * Renames the draft while it is unsaved; its preview follows. If the user has written into it, that stays as it is, and the text as last set
   * goes into a draft of its own.
   */
  async rename(fileName: string, moves: SpecMoves): Promise<void> {
    await this.#last;
    const before = this.#document;
    const isTaken = this.#isTaken;
    if (!isTaken && before.uri.path.endsWith(`/${fileName}`)) return;
    this.#document = await vscode.workspace.openTextDocument(await untitledUri(fileName));
    this.#put = undefined;
    await this.#write();
    await this.show();
    moves.fire({ from: before.uri, to: this.uri });
    if (!isTaken) await close(before);
  }

  /** Closes it and its preview without asking, unless it holds anything that the user has written. */
  async discard(): Promise<void> {
    await this.#last;
    if (!openDocument(this.uri) || this.#isTaken) return;
    await close(this.#document);
    // Only its own: another draft may have been begun meanwhile.
    const title = previewTitle(this.uri);
    const previews = allTabs().filter(
      (tab) => !this.#tabsBefore.has(tab) && tab.input instanceof vscode.TabInputWebview && tab.label === title,
    );
    await vscode.window.tabGroups.close(previews, true);
  }

  get #isTaken(): boolean {
    return (
      this.#document.isClosed || (this.#put !== undefined && withUnixLineEnds(this.#document.getText()) !== this.#put)
    );
  }

  async #write(): Promise<void> {
    if (this.#isTaken) return;
    const before = this.#document.getText();
    this.#put = withUnixLineEnds(this.#wanted);
    if (before === this.#wanted) return;
    const edit = new vscode.WorkspaceEdit();
    for (const { range, text } of editsBetween(before, this.#wanted)) {
      const place = new vscode.Range(this.#document.positionAt(range.start), this.#document.positionAt(range.end));
      edit.replace(this.uri, place, text);
    }
    await vscode.workspace.applyEdit(edit);
  }
}

async function close(document: vscode.TextDocument): Promise<void> {
  const { document: shown } = await showText(document.uri, { preview: false });
  // Another editor that has come to the front meanwhile must not be reverted.
  if (vscode.window.activeTextEditor?.document !== shown) return;
  await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
}

function withUnixLineEnds(text: string): string {
  return text.replaceAll('\r\n', '\n');
}

function allTabs(): vscode.Tab[] {
  return vscode.window.tabGroups.all.flatMap(({ tabs }) => tabs);
}

/** URI for an unsaved document in the first folder, or in none, with a name that is free. */
async function untitledUri(fileName: string): Promise<vscode.Uri> {
  const folder = vscode.workspace.workspaceFolders?.[0]?.uri;
  for (let count = 1; ; count++) {
    const name = count === 1 ? fileName : fileName.replace('.tag.', `-${count}.tag.`);
    const file = folder ? vscode.Uri.joinPath(folder, name) : undefined;
    const uri = vscode.Uri.from({ scheme: 'untitled', path: file?.path ?? name });
    const open = vscode.workspace.textDocuments.some((document) => document.uri.path === uri.path);
    if (!open && !(file && (await fileExists(file)))) return uri;
  }
}
