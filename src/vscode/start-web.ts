/** Entry point in a browser: no processes can be started there, and no installed fonts can be read. */

import * as vscode from 'vscode';
import { webThreads } from './start-web-thread.ts';
import { start } from './start.ts';

type Run = (module: object, exports: object, require: NodeJS.Require) => void;

export function activate(context: vscode.ExtensionContext): void {
  const installedFonts = {
    systemFonts: () => Promise.resolve([]),
    read: (path: string) => Promise.reject(new Error(`${path} cannot be read in a browser.`)),
  };
  start(context, { installedFonts, nestThreads: webThreads(context.extensionUri) }, () =>
    load(vscode.Uri.joinPath(context.extensionUri, 'dist', 'web', 'extension.js')),
  );
}

/** Evaluates the script in the way the editor loads an extension's own: an import would not find it. */
async function load(script: vscode.Uri): Promise<typeof import('./extension.ts')> {
  const text = new TextDecoder().decode(await vscode.workspace.fs.readFile(script));
  const module = { exports: {} };
  // oxlint-disable-next-line typescript/no-implied-eval -- a script of this extension, as the build has put it there
  const run = new Function('module', 'exports', 'require', `${text}\n//# sourceURL=${script.toString()}`) as Run;
  run(module, module.exports, require);
  return module.exports as typeof import('./extension.ts');
}
