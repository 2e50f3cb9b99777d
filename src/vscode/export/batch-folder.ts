/** Folder for the files of a batch, inside the folder that was chosen. */

import * as vscode from 'vscode';
import type { Report } from '../../engine/engine.ts';
import type { ExportRequest } from './request.ts';
import { baseName } from '../common/write-whole.ts';

/**
 * Ends in a slash; empty for a single tag, for packs, which have folders of their own, and if the batch's folder itself
 * was chosen.
 */
export function batchFolder({ what, row, to }: ExportRequest, spec: vscode.Uri, { batch }: Report): string {
  if (!batch || row !== undefined || !('formats' in what)) return '';
  const wished = vscode.workspace.getConfiguration('tagwright', spec).get<string>('export.batchFolder', 'cut');
  // Never leads out of the chosen folder.
  const steps = wished.split(/[\\/]/).filter((step) => step.trim() !== '' && !/^\.+$/.test(step.trim()));
  return steps.length === 0 || baseName(to) === steps.at(-1) ? '' : `${steps.join('/')}/`;
}
