/** Entry point under Node: on a desktop, or on the computer that serves an editor. */

import * as vscode from 'vscode';
import { registerTasks } from './features/tasks.ts';
import { writeWhole } from '../export/node-write-whole.ts';
import { nodeThreads } from '../nesting/threads/node-thread.ts';
import { start } from './start.ts';
import { nodeInstalledFonts } from '../text/node-font-files.ts';

export function activate(context: vscode.ExtensionContext): void {
  const program = vscode.Uri.joinPath(context.extensionUri, 'dist', 'nest-thread.mjs').fsPath;
  const host = { installedFonts: nodeInstalledFonts, writeOnDisk: writeWhole, nestThreads: nodeThreads(program) };
  // oxlint-disable-next-line typescript/no-require-imports -- the build puts it there, beside this script
  start(context, host, () => require('./extension.cjs') as typeof import('./extension.ts'));
  context.subscriptions.push(registerTasks(context.extensionUri));
}
