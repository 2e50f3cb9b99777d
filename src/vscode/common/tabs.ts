/** The editor's tabs: which file each text tab shows, and in which column; what a preview's is called. */

import * as vscode from 'vscode';
import { isTagSpec } from './documents.ts';
import { baseName } from './write-whole.ts';

/** Of the tab with the preview of a spec. */
export const previewTitle = (spec: vscode.Uri): string => `Preview: ${baseName(spec)}`;

/** Column of the first tab with the file, whether or not it is in front. */
export function columnOf(uri: vscode.Uri): vscode.ViewColumn | undefined {
  const key = uri.toString();
  return vscode.window.tabGroups.all.find(({ tabs }) => tabs.some((tab) => shownIn(tab)?.toString() === key))
    ?.viewColumn;
}

/** Shows the file in its tab, or else in the first column: never over a preview. */
export async function showText(
  uri: vscode.Uri,
  options: Omit<vscode.TextDocumentShowOptions, 'viewColumn'> = {},
): Promise<vscode.TextEditor> {
  return vscode.window.showTextDocument(uri, { viewColumn: columnOf(uri) ?? vscode.ViewColumn.One, ...options });
}

/** Moves the cursor to the offset and scrolls it into view. */
export function putCursor(editor: vscode.TextEditor, offset: number): void {
  const at = editor.document.positionAt(offset);
  editor.selection = new vscode.Selection(at, at);
  editor.revealRange(editor.selection, vscode.TextEditorRevealType.InCenterIfOutsideViewport);
}

/** Every spec in a tab, once, in tab order. */
export function openSpecs(): vscode.Uri[] {
  const uris = vscode.window.tabGroups.all.flatMap(({ tabs }) => tabs.flatMap((tab) => shownIn(tab) ?? []));
  return [...new Map(uris.filter(isTagSpec).map((uri) => [uri.toString(), uri])).values()];
}

/** Files of all text tabs, those at the front of their group first. */
export function shownTexts(): vscode.Uri[] {
  const tabs = vscode.window.tabGroups.all.flatMap((group) => group.tabs);
  return tabs.sort((a, b) => Number(b.isActive) - Number(a.isActive)).flatMap((tab) => shownIn(tab) ?? []);
}

function shownIn({ input }: vscode.Tab): vscode.Uri | undefined {
  return input instanceof vscode.TabInputText ? input.uri : undefined;
}
