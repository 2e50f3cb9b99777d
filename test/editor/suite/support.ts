/** What the tests inside the editor share: the specs of the workspace, and their problems once they are as wanted. */

import assert from 'node:assert/strict';
import * as vscode from 'vscode';

/** For a machine that is slow and busy. */
const limitMs = 45_000;

export function workspaceFile(name: string): vscode.Uri {
  return vscode.Uri.joinPath(vscode.workspace.workspaceFolders![0]!.uri, name);
}

export async function show(name: string): Promise<vscode.TextEditor> {
  const document = await vscode.workspace.openTextDocument(workspaceFile(name));
  return vscode.window.showTextDocument(document, { preview: false });
}

/** Waits until it is so; fails with what was wanted and what was there instead. */
export async function eventually<T>(what: string, look: () => T | Promise<T>, isSo: (seen: T) => boolean): Promise<T> {
  const deadline = Date.now() + limitMs;
  for (;;) {
    const seen = await look();
    if (isSo(seen)) return seen;
    if (Date.now() > deadline) assert.fail(`Waited in vain for ${what}; last seen: ${JSON.stringify(seen)}`);
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
}

export function problems(uri: vscode.Uri): vscode.Diagnostic[] {
  return vscode.languages.getDiagnostics(uri).filter(({ source }) => source === 'Tagwright');
}

export function codes(uri: vscode.Uri): unknown[] {
  return problems(uri).map(codeOf);
}

/** The code alone, without the link to its page. */
export function codeOf({ code }: vscode.Diagnostic): unknown {
  return typeof code === 'object' ? code.value : code;
}

/** Replaces the only occurrence of a text. */
export async function replace(editor: vscode.TextEditor, from: string, to: string): Promise<void> {
  const { document } = editor;
  const start = document.getText().indexOf(from);
  assert.ok(start >= 0, `the document holds "${from}"`);
  const range = new vscode.Range(document.positionAt(start), document.positionAt(start + from.length));
  assert.ok(
    await editor.edit((edit) => {
      edit.replace(range, to);
    }),
  );
}

/** Forgets every unsaved change, so that each test starts from the files. */
export async function closeAll(): Promise<void> {
  for (const { document } of vscode.window.visibleTextEditors) {
    await vscode.window.showTextDocument(document);
    await vscode.commands.executeCommand('workbench.action.files.revert');
  }
  await vscode.commands.executeCommand('workbench.action.closeAllEditors');
}
