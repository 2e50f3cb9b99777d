/** The extension where there is Node: on a desktop, or on the computer that serves an editor. */

import type * as vscode from 'vscode';
import { registerTasks } from './editor/tasks.ts';
import { compose } from './extension.ts';
import { writeWhole } from './output/node-write-whole.ts';
import { nodeInstalledFonts } from './text/node-font-files.ts';

export function activate(context: vscode.ExtensionContext): void {
  compose(context, { installedFonts: nodeInstalledFonts, writeOnDisk: writeWhole });
  context.subscriptions.push(registerTasks(context.extensionUri));
}
