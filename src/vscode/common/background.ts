/** Work that nobody waits for, such as what an event sets off: what goes wrong with it is logged, and said once. */

import * as vscode from 'vscode';

let log: vscode.LogOutputChannel | undefined;
const said = new Set<string>();

/** Where failures are written down; without one they are only said. */
export function reportTo(channel: vscode.LogOutputChannel): void {
  log = channel;
}

/** @param what For the message: “Tagwright could not … .” */
export function inBackground(work: PromiseLike<unknown>, what: string): void {
  work.then(undefined, (error: unknown) => {
    reportFailure(error, what);
  });
}

export function reportFailure(error: unknown, what: string): void {
  // What nobody wants any more has not failed.
  if (error instanceof Error && error.name === 'AbortError') return;
  log?.error(`Could not ${what}.`, error instanceof Error ? (error.stack ?? error.message) : String(error));
  if (said.has(what)) return;
  said.add(what);
  const showLog = 'Show Log';
  void vscode.window.showErrorMessage(`Tagwright could not ${what}.`, ...(log ? [showLog] : [])).then((chosen) => {
    if (chosen === showLog) log?.show();
  });
}
