/** The editor's tabs with texts: which file each shows, and where. */

import * as vscode from 'vscode';
import { isTagSpec } from './documents.ts';

/** The column of the first tab that shows the file, whether or not it is in front. */
export function columnOf(uri: vscode.Uri): vscode.ViewColumn | undefined {
  const key = uri.toString();
  return vscode.window.tabGroups.all.find(({ tabs }) => tabs.some((tab) => shownIn(tab)?.toString() === key))
    ?.viewColumn;
}

/** Shows the file in the tab that has it, or else in the first column: never over a preview. */
export async function showText(
  uri: vscode.Uri,
  options: Omit<vscode.TextDocumentShowOptions, 'viewColumn'> = {},
): Promise<vscode.TextEditor> {
  return vscode.window.showTextDocument(uri, { viewColumn: columnOf(uri) ?? vscode.ViewColumn.One, ...options });
}

/** Puts the cursor there, and that into view. */
export function putCursor(editor: vscode.TextEditor, offset: number): void {
  const at = editor.document.positionAt(offset);
  editor.selection = new vscode.Selection(at, at);
  editor.revealRange(editor.selection, vscode.TextEditorRevealType.InCenterIfOutsideViewport);
}

/** Every spec that has a tab, once, in the order of the tabs. */
export function openSpecs(): vscode.Uri[] {
  const uris = vscode.window.tabGroups.all.flatMap(({ tabs }) => tabs.flatMap((tab) => shownIn(tab) ?? []));
  return [...new Map(uris.filter(isTagSpec).map((uri) => [uri.toString(), uri])).values()];
}

/** The files of all tabs with a text, those in front of their group first. */
export function shownTexts(): vscode.Uri[] {
  const tabs = vscode.window.tabGroups.all.flatMap((group) => group.tabs);
  return tabs.sort((a, b) => Number(b.isActive) - Number(a.isActive)).flatMap((tab) => shownIn(tab) ?? []);
}

function shownIn({ input }: vscode.Tab): vscode.Uri | undefined {
  return input instanceof vscode.TabInputText ? input.uri : undefined;
}
