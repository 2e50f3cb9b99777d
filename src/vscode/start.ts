/**
 * The small part that is loaded at startup. The rest, the engine and everything that needs it, takes several times as
 * long to compile as an extension should delay an editor that is opening a folder, so it is loaded in a later task.
 * Whatever the editor may ask for before then is registered here and handed on.
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
  /** From here on, the rest answers directly. */
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
