/** “Export SVG”: the tag of a spec as a file beside it. */

import * as vscode from 'vscode';
import { jobOf } from '../output/job.ts';
import { toSvg } from '../output/svg.ts';
import type { TagService } from './service.ts';

/** Asks where, writes the file whole or not at all, and offers to show it. */
export async function exportSvg(uri: vscode.Uri, service: TagService): Promise<vscode.Uri | undefined> {
  const result = service.get(uri);
  const errors = result?.issues.filter((issue) => issue.severity === 'error') ?? [];
  const job = result && !result.stale && errors.length === 0 ? jobOf(result.report) : undefined;
  if (!job) {
    const first = errors[0]?.message ?? 'There is nothing to cut yet.';
    void vscode.window.showErrorMessage(`Not exported: ${first}`);
    return undefined;
  }
  const target = await vscode.window.showSaveDialog({
    defaultUri: defaultTarget(uri),
    filters: { SVG: ['svg'] },
    title: 'Export SVG',
  });
  if (!target) return undefined;
  await writeWhole(target, toSvg(job));
  void offerToOpen(target);
  return target;
}

async function offerToOpen(target: vscode.Uri): Promise<void> {
  const open = 'Open';
  const name = target.path.slice(target.path.lastIndexOf('/') + 1);
  const answer = await vscode.window.showInformationMessage(`Exported ${name}.`, open);
  if (answer === open) await vscode.commands.executeCommand('vscode.open', target);
}

/** Beside the spec; a spec that is not saved yet has no folder of its own. */
function defaultTarget(spec: vscode.Uri): vscode.Uri {
  const name = spec.path.slice(spec.path.lastIndexOf('/') + 1).replace(/\.tag\.ya?ml$/i, '.svg');
  const folder = vscode.workspace.workspaceFolders?.[0]?.uri;
  if (spec.scheme === 'untitled') return folder ? vscode.Uri.joinPath(folder, name) : vscode.Uri.file(name);
  return vscode.Uri.joinPath(spec, '..', name);
}

/** Written under another name first, so that a file of the wanted name is always a whole one. */
async function writeWhole(target: vscode.Uri, content: string): Promise<void> {
  const partial = target.with({ path: `${target.path}.${Date.now()}.part` });
  const { fs } = vscode.workspace;
  try {
    await fs.writeFile(partial, new TextEncoder().encode(content));
    await fs.rename(partial, target, { overwrite: true });
  } catch (error) {
    await fs.delete(partial).then(undefined, () => undefined);
    throw error;
  }
}
