/**
 * What starts with the editor, and is small. The rest, which is the engine and all that needs it, takes several times as long
 * to compile as an extension should hold up an editor that is opening a folder; it comes in a turn of its own. What the editor
 * may ask for before that is promised here, and handed on.
 */

import * as vscode from 'vscode';
import type { Host } from './extension.ts';
import { previewViewType } from './preview/view-type.ts';

type Rest = typeof import('./extension.ts');

interface Manifest {
  readonly contributes: { readonly commands: readonly { readonly command: string }[] };
}

export function start(context: vscode.ExtensionContext, host: Host, load: () => Rest | Promise<Rest>): void {
  const rest = nextTurn().then(async () => {
    const { compose } = await load();
    keepPromises();
    return compose(context, host);
  });
  const { contributes } = context.extension.packageJSON as Manifest;
  const promises = [
    ...contributes.commands.map(({ command }) =>
      vscode.commands.registerCommand(command, async (...values: unknown[]) => {
        await rest;
        return vscode.commands.executeCommand(command, ...values);
      }),
    ),
    vscode.window.registerWebviewPanelSerializer(previewViewType, {
      deserializeWebviewPanel: async (panel, state) => (await rest).deserializeWebviewPanel(panel, state),
    }),
  ];
  /** From here on the rest answers by itself. */
  const keepPromises = (): void => {
    for (const promise of promises.splice(0)) promise.dispose();
  };
  context.subscriptions.push({ dispose: keepPromises });
  rest.catch((error: unknown) => {
    void vscode.window.showErrorMessage(`Tagwright could not start: ${String(error)}`);
  });
}

function nextTurn(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 0));
}
