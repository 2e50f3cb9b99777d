/** Shows pages of the guide in the editor's Markdown preview. */

import * as vscode from 'vscode';

/** Command that links may call. */
export const guideCommand = 'tagwright.openGuide';

/** `page`: its name without an ending, below `guide/`. */
export function guidePage(extensionUri: vscode.Uri, page: string): vscode.Uri {
  return vscode.Uri.joinPath(extensionUri, 'dist', 'guide', `${page}.md`);
}

export function showGuide(uri: vscode.Uri): Thenable<unknown> {
  return vscode.commands.executeCommand('markdown.showPreview', uri);
}

export function registerGuide(extensionUri: vscode.Uri): vscode.Disposable {
  return vscode.commands.registerCommand(guideCommand, (page?: unknown, section?: unknown) =>
    showGuide(
      guidePage(extensionUri, isName(page) ? page : 'index').with({ fragment: isName(section) ? section : '' }),
    ),
  );
}

/** Markdown link to a section of the guide's reference; works only in text that trusts `guideCommand`. */
export function referenceLink(section: string): string {
  return `[In the guide](command:${guideCommand}?${encodeURIComponent(JSON.stringify(['reference', section]))})`;
}

/** Arguments of a link can be anything. */
function isName(value: unknown): value is string {
  return typeof value === 'string' && /^[a-z][a-z-]*$/.test(value);
}
