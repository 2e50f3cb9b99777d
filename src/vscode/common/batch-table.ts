/** The table that the batch of a spec is read from, and which of its rows a place in it is in. */

import * as vscode from 'vscode';
import type { Report } from '../../engine/engine.ts';
import { tableNameIn } from '../../spec/files/used-files.ts';
import { locateBeside } from '../service/font-files.ts';
import { rowAt } from '../sheets/offsets.ts';

export function batchTable(spec: vscode.Uri, { source }: Pick<Report, 'source'>): vscode.Uri | undefined {
  const { batch } = (source.value ?? {}) as { readonly batch?: unknown };
  const table = tableNameIn(batch);
  const file = table === undefined ? undefined : locateBeside(spec)(table);
  return file === undefined ? undefined : vscode.Uri.parse(file);
}

/** `undefined` where no tag is made of what is there. */
export function tagAt({ batch }: Pick<Report, 'batch'>, text: string, offset: number): number | undefined {
  const line = rowAt(text, offset);
  const row = line === undefined ? -1 : (batch?.rows.findIndex((each) => each.line === line) ?? -1);
  return row < 0 ? undefined : row;
}
