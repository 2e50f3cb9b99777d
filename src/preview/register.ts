/** What the extension's entry calls to have previews. */

import * as vscode from 'vscode';
import { targetSpec } from '../editor/documents.ts';
import type { IssueHelp } from '../editor/issue-help.ts';
import type { TagResults } from '../editor/results.ts';
import { CursorSync } from './cursor-sync.ts';
import { PreviewManager, previewViewType } from './manager.ts';

export interface PreviewCommands {
  exportSvg(uri: vscode.Uri): void;
}

export function registerPreview(
  context: vscode.ExtensionContext,
  results: TagResults,
  help: IssueHelp,
  commands: PreviewCommands,
): void {
  const previews = new PreviewManager(
    { results, help },
    {
      reveal: (uri, offset, focus) => void cursor.reveal(uri, offset, focus),
      exportSvg: (uri) => {
        commands.exportSvg(uri);
      },
    },
    vscode.Uri.joinPath(context.extensionUri, 'dist', 'webview'),
  );
  const cursor = new CursorSync(previews);
  context.subscriptions.push(
    previews,
    cursor,
    vscode.window.registerWebviewPanelSerializer(previewViewType, previews),
    vscode.commands.registerCommand('tagwright.openPreview', (target?: unknown) => {
      const uri = targetSpec(target);
      if (!uri) return;
      previews.openToSide(uri);
      cursor.show(uri);
    }),
  );
}
