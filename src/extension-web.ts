/** The extension in a browser: no process can be started there, and no fonts are installed that one could read. */

import type * as vscode from 'vscode';
import { compose } from './extension.ts';

export function activate(context: vscode.ExtensionContext): void {
  const installedFonts = {
    systemFonts: () => Promise.resolve([]),
    read: (path: string) => Promise.reject(new Error(`${path} cannot be read in a browser.`)),
  };
  compose(context, { installedFonts });
}
