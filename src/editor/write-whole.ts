/** Files as the editor writes them. */

import * as vscode from 'vscode';

/** Written under another name first, so that a file of the wanted name is always a whole one. */
export async function writeWhole(target: vscode.Uri, content: Uint8Array): Promise<void> {
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
