/** Completes a step of the walkthrough once its action has been done, not merely started. */

import * as vscode from 'vscode';

/** The steps refer to these contexts in `package.json`. */
export function stepDone(step: 'previewed' | 'fixed' | 'exported'): void {
  void vscode.commands.executeCommand('setContext', `tagwright.${step}`, true);
}
