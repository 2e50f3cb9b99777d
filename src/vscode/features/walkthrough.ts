/** Ticks off a step of the walkthrough, once what it is about has been done and not merely asked for. */

import * as vscode from 'vscode';

/** The steps name these contexts in `package.json`. */
export function stepDone(step: 'previewed' | 'fixed' | 'exported'): void {
  void vscode.commands.executeCommand('setContext', `tagwright.${step}`, true);
}
