/** Applies the engine's text edits in the editor: as one undo step, and only to the text that they were made for. */

import * as vscode from 'vscode';
import type { TextEdit } from '../../core/issue.ts';
import type { SpecSource } from '../../spec/yaml/source.ts';
import { toRange } from '../features/problems.ts';

export function workspaceEdit(uri: vscode.Uri, source: SpecSource, edits: readonly TextEdit[]): vscode.WorkspaceEdit {
  const edit = new vscode.WorkspaceEdit();
  for (const { range, text } of edits) edit.replace(uri, toRange(range, source.position.bind(source)), text);
  return edit;
}

/** Resolves with whether they were applied: not if the text has changed since. */
export async function applyEdits(uri: vscode.Uri, source: SpecSource, edits: readonly TextEdit[]): Promise<boolean> {
  const document = await vscode.workspace.openTextDocument(uri);
  if (document.getText() !== source.text) return false;
  return vscode.workspace.applyEdit(workspaceEdit(uri, source, edits));
}
