/** Questions before an export. Each answer is `undefined` if the question was dismissed. */

import * as vscode from 'vscode';
import type { Batch } from '../../spec/batch/batch.ts';
import type { Format } from '../../export/formats.ts';
import { tagSpecGlob } from '../common/documents.ts';
import type { TagService } from '../service/service.ts';
import { openSpecs } from '../common/tabs.ts';
import { baseName } from '../common/write-whole.ts';

/** A folder with more specs than this is probably not the one that was meant. */
const mostSpecs = 1000;

export interface ExportScope {
  readonly specs: readonly vscode.Uri[];
  readonly piece?: string;
  readonly row?: number;
}

interface ScopeItem extends vscode.QuickPickItem {
  readonly scope: () => Promise<ExportScope | undefined>;
}

/** The whole tag, one of its pieces, every open spec, or those of a folder; not asked if there is only one answer. */
export async function askScope(spec: vscode.Uri, service: TagService): Promise<ExportScope | undefined> {
  const open = openSpecs();
  const result = service.get(spec);
  const pieces = result?.tag?.pieces ?? [];
  const shown = result?.report.batch && { row: result.report.row };
  const items: ScopeItem[] = [
    ...(result?.report.batch
      ? batchItems(spec, result.report.batch, result.report.row)
      : [item('This tag', baseName(spec), { specs: [spec] })]),
    ...(pieces.length > 1
      ? pieces.map(({ id, title }) => item(`Only “${title}”`, 'one piece', { specs: [spec], piece: id, ...shown }))
      : []),
    ...(open.length > 1 ? [item('All open specs', String(open.length), { specs: open })] : []),
    { label: 'A folder…', description: 'every spec in it', scope: askFolderOfSpecs },
  ];
  const chosen = await vscode.window.showQuickPick(items, { title: 'Export', placeHolder: 'What to export?' });
  return chosen?.scope();
}

function batchItems(spec: vscode.Uri, { rows }: Batch, row: number): ScopeItem[] {
  return [
    item(`All ${rows.length} tags of the batch`, baseName(spec), { specs: [spec] }),
    item(`Only “${rows[row]!.label}”`, 'the tag that is shown', { specs: [spec], row }),
  ];
}

function item(label: string, description: string, scope: ExportScope): ScopeItem {
  return { label, description, scope: () => Promise.resolve(scope) };
}

async function askFolderOfSpecs(): Promise<ExportScope | undefined> {
  const folder = await askFolder('Export the specs in', vscode.workspace.workspaceFolders?.[0]?.uri);
  if (!folder) return undefined;
  const specs = await vscode.workspace.findFiles(new vscode.RelativePattern(folder, tagSpecGlob), undefined, mostSpecs);
  if (specs.length > 0) return { specs: specs.sort((a, b) => (a.path < b.path ? -1 : 1)) };
  void vscode.window.showInformationMessage(`There is no tag spec in ${baseName(folder)}.`);
  return undefined;
}

const offers: Readonly<Record<Format, readonly [label: string, description: string]>> = {
  svg: ['SVG', 'for the laser'],
  dxf: ['DXF', 'for programs that read drawings'],
  pdf: ['PDF', 'the proof, and the cut page at true size'],
  png: ['PNG', 'the proof as a picture, for the customer'],
  cover: ['Cover picture', 'the tag alone on white, as a PNG for a listing'],
  proof: ['Proof', 'a PDF to sign, for the customer; one for all tags of a batch'],
  job: ['Job sheet', 'a PDF for the bench: order, times, cost, warnings, assembly'],
  assembly: ['Assembly sheet', 'a PDF for the bench: how glued layers go together, where there are any'],
};

/** The formats of the last time are preselected. */
export async function askFormats<T extends Format>(
  memory: vscode.Memento,
  choice: readonly T[],
): Promise<readonly T[] | undefined> {
  const key = 'export.formats';
  const last = memory.get<readonly string[]>(key, ['svg']);
  const items = choice.map((format) => {
    const [label, description] = offers[format];
    return { label, description, picked: last.includes(format), format };
  });
  const chosen = await vscode.window.showQuickPick(items, {
    canPickMany: true,
    title: 'Export',
    placeHolder: 'Which formats?',
  });
  if (!chosen || chosen.length === 0) return undefined;
  const picked = chosen.map(({ format }) => format);
  await memory.update(key, picked);
  return picked;
}

export async function askFolder(title: string, start: vscode.Uri | undefined): Promise<vscode.Uri | undefined> {
  const [folder] =
    (await vscode.window.showOpenDialog({
      title,
      openLabel: 'Choose',
      canSelectFiles: false,
      canSelectFolders: true,
      ...(start ? { defaultUri: start } : {}),
    })) ?? [];
  return folder;
}

export async function askPackKind(): Promise<'folders' | 'archive' | undefined> {
  const items = [
    { label: 'A folder', description: 'to look into and add to', packs: 'folders' },
    { label: 'An archive', description: '.zip, to send', packs: 'archive' },
  ] as const;
  return (await vscode.window.showQuickPick(items, { title: 'Make a Pack', placeHolder: 'Folder or archive?' }))?.packs;
}
