/** Background work, such as what an event triggers: nobody awaits it, so its errors are logged and shown once. */

import * as vscode from 'vscode';

let log: vscode.LogOutputChannel | undefined;
const reported = new Set<string>();

/** Sets the channel that failures are logged to; without one they are only shown. */
export function reportTo(channel: vscode.LogOutputChannel): void {
  log = channel;
}

/** @param what Completes the message “Tagwright could not … .” */
export function inBackground(work: PromiseLike<unknown>, what: string): void {
  work.then(undefined, (error: unknown) => {
    reportFailure(error, what);
  });
}

export function reportFailure(error: unknown, what: string): void {
  // Work that was aborted has not failed.
  if (error instanceof Error && error.name === 'AbortError') return;
  log?.error(`Could not ${what}.`, error instanceof Error ? (error.stack ?? error.message) : String(error));
  if (reported.has(what)) return;
  reported.add(what);
  const showLog = 'Show Log';
  void vscode.window.showErrorMessage(`Tagwright could not ${what}.`, ...(log ? [showLog] : [])).then((chosen) => {
    if (chosen === showLog) log?.show();
  });
}
