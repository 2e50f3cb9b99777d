/** Folder for the files of a batch or a job, inside the folder that was chosen. */

import * as vscode from 'vscode';
import type { Report } from '../../engine/engine.ts';
import type { ExportRequest } from './request.ts';
import { baseName } from '../common/write-whole.ts';

/** Empty for a single tag, and for packs, which have folders of their own. */
export function batchFolder({ what, row, to }: ExportRequest, spec: vscode.Uri, { batch }: Report): string {
  return batch && row === undefined && !('packs' in what) ? subfolderIn(to, spec) : '';
}

/** Ends in a slash; empty if the subfolder itself was chosen, or none is wished. */
export function subfolderIn(to: vscode.Uri, of: vscode.Uri): string {
  const wished = vscode.workspace.getConfiguration('tagwright', of).get<string>('export.batchFolder', 'cut');
  // Never leads out of the chosen folder.
  const steps = wished.split(/[\\/]/).filter((step) => step.trim() !== '' && !/^\.+$/.test(step.trim()));
  return steps.length === 0 || baseName(to) === steps.at(-1) ? '' : `${steps.join('/')}/`;
}
