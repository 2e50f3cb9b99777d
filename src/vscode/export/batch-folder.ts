/** Where the files of a batch go: together, in a folder of their own within the one that was chosen. */

import * as vscode from 'vscode';
import type { Report } from '../../engine/engine.ts';
import type { ExportRequest } from './request.ts';
import { nameOf } from '../common/write-whole.ts';

/** With a slash behind it; empty for what is no batch, for packs, which have folders already, and where that folder was chosen. */
export function batchFolder({ what, row, to }: ExportRequest, spec: vscode.Uri, { batch }: Report): string {
  if (!batch || row !== undefined || !('formats' in what)) return '';
  const wished = vscode.workspace.getConfiguration('tagwright', spec).get<string>('export.batchFolder', 'cut');
  // Never out of the folder that was chosen.
  const steps = wished.split(/[\\/]/).filter((step) => step.trim() !== '' && !/^\.+$/.test(step.trim()));
  return steps.length === 0 || nameOf(to) === steps.at(-1) ? '' : `${steps.join('/')}/`;
}
