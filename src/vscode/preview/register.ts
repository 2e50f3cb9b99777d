/** Entry point of the previews for the extension. */

import * as vscode from 'vscode';
import type { SpecMoves } from '../service/spec-moves.ts';
import type { CommandTarget } from '../common/target.ts';
import { CursorSync } from './cursor-sync.ts';
import { PreviewManager } from './manager.ts';
import { PreviewMemory } from './memory.ts';
import type { PreviewServices } from './panel.ts';
import type { ExportKind } from '../../protocol/preview.ts';
import { previewViewType } from './view-type.ts';

export interface PreviewCommands {
  makeFiles(uri: vscode.Uri, what: ExportKind): void;
}

/** Returns the serializer that restores previews when a window is reloaded. */
export function registerPreview(
  context: vscode.ExtensionContext,
  target: CommandTarget,
  moves: SpecMoves,
  services: Omit<PreviewServices, 'memory'>,
  commands: PreviewCommands,
): PreviewManager {
  const previews = new PreviewManager(
    { ...services, memory: new PreviewMemory(context.workspaceState, context.globalState) },
    {
      reveal: (uri, offset, focus) => void cursor.reveal(uri, offset, focus),
      makeFiles: (uri, what) => {
        commands.makeFiles(uri, what);
      },
      follow: (uri, follows) => {
        previews.follow(uri, follows);
      },
      showOther: (uri) => {
        previews.showOther(uri);
      },
      screenMeasured: () => {
        previews.screenMeasured();
      },
      undo: (uri, step, after) => void cursor.undo(uri, step).then(after),
    },
    moves,
    vscode.Uri.joinPath(context.extensionUri, 'dist', 'webview'),
  );
  const cursor = new CursorSync(previews, services.results);
  context.subscriptions.push(
    previews,
    cursor,
    vscode.window.registerWebviewPanelSerializer(previewViewType, previews),
    target.command('tagwright.openPreview', (spec) => {
      previews.openToSide(spec);
      cursor.show(spec);
    }),
  );
  return previews;
}
