/** Files as the editor writes them. */

import * as vscode from 'vscode';

/** So that a file of the wanted name is always a whole one. */
export type WriteWhole = (target: vscode.Uri, content: Uint8Array) => Promise<void>;

/** `writeOnDisk`: writes files of this computer whole, where whoever runs the editor's host can. */
export function wholeWriter(writeOnDisk?: (path: string, content: Uint8Array) => Promise<void>): WriteWhole {
  return (target, content) =>
    target.scheme === 'file' && writeOnDisk ? writeOnDisk(target.fsPath, content) : writeElsewhere(target, content);
}

/** For an instant nothing is there: the editor cannot put one file in the place of another at once. */
async function writeElsewhere(target: vscode.Uri, content: Uint8Array): Promise<void> {
  const partial = target.with({ path: `${target.path}.${Date.now()}.part` });
  const { fs } = vscode.workspace;
  try {
    await fs.writeFile(partial, content);
    await fs.rename(partial, target, { overwrite: true });
  } catch (error) {
    await fs.delete(partial).then(undefined, () => undefined);
    throw error;
  }
}

/** Several files: none of them has its name before all of them are written. */
export async function writeAllWhole(
  files: readonly { readonly target: vscode.Uri; readonly content: Uint8Array }[],
): Promise<void> {
  const { fs } = vscode.workspace;
  const partials: { readonly partial: vscode.Uri; readonly target: vscode.Uri }[] = [];
  try {
    for (const { target, content } of files) {
      const partial = target.with({ path: `${target.path}.${Date.now()}.part` });
      partials.push({ partial, target });
      await fs.createDirectory(vscode.Uri.joinPath(target, '..'));
      await fs.writeFile(partial, content);
    }
    for (const { partial, target } of partials) await fs.rename(partial, target, { overwrite: true });
  } catch (error) {
    for (const { partial } of partials) await fs.delete(partial).then(undefined, () => undefined);
    throw error;
  }
}

/** Whether a file is there and holds anything else. */
export async function holdsOther(target: vscode.Uri, content: Uint8Array): Promise<boolean> {
  try {
    const there = await vscode.workspace.fs.readFile(target);
    return there.length !== content.length || there.some((byte, i) => byte !== content[i]);
  } catch {
    return false;
  }
}

/** The last part of a path. */
export function nameOf(uri: vscode.Uri): string {
  return uri.path.slice(uri.path.lastIndexOf('/') + 1);
}

/** A spec's name without what says that it is one. */
export function specName(spec: vscode.Uri): string {
  return nameOf(spec).replace(/(\.tag)?\.ya?ml$/i, '');
}
