/** Writes files for the editor, so that none is ever incomplete. */

import * as vscode from 'vscode';

/** Writes a file so that one with the final name is always complete. */
export type WriteWhole = (target: vscode.Uri, content: Uint8Array) => Promise<void>;

/** `writeOnDisk`: atomic writing of local files, where the extension host has it. */
export function wholeWriter(writeOnDisk?: (path: string, content: Uint8Array) => Promise<void>): WriteWhole {
  return (target, content) =>
    target.scheme === 'file' && writeOnDisk ? writeOnDisk(target.fsPath, content) : writeElsewhere(target, content);
}

interface FileToWrite {
  readonly target: vscode.Uri;
  readonly content: Uint8Array;
}

/** For an instant there is no file: the editor cannot replace a file in one step. */
const writeElsewhere: WriteWhole = (target, content) => writeAllWhole([{ target, content }]);

/** Writes several files; none gets its final name until all have been written. */
export async function writeAllWhole(files: readonly FileToWrite[]): Promise<void> {
  await writeAll(files, { overwrite: true });
}

/** Writes several new files, all or none; rejects, and leaves nothing behind, if one of them is there already. */
export async function writeNew(files: readonly FileToWrite[]): Promise<void> {
  await writeAll(files, { overwrite: false });
}

async function writeAll(files: readonly FileToWrite[], { overwrite }: { readonly overwrite: boolean }): Promise<void> {
  const { fs } = vscode.workspace;
  const written: { readonly partial: vscode.Uri; readonly target: vscode.Uri }[] = [];
  const left: vscode.Uri[] = [];
  try {
    for (const { target, content } of files) {
      const partial = target.with({ path: `${target.path}.${Date.now()}.part` });
      written.push({ partial, target });
      left.push(partial);
      await fs.createDirectory(vscode.Uri.joinPath(target, '..'));
      await fs.writeFile(partial, content);
    }
    for (const { partial, target } of written) {
      await fs.rename(partial, target, { overwrite });
      if (!overwrite) left.push(target);
    }
  } catch (error) {
    for (const each of left) await fs.delete(each).then(undefined, () => undefined);
    throw error;
  }
}

/** Whether the file exists with different content. */
export async function hasOtherContent(target: vscode.Uri, content: Uint8Array): Promise<boolean> {
  try {
    const there = await vscode.workspace.fs.readFile(target);
    return there.length !== content.length || there.some((byte, i) => byte !== content[i]);
  } catch {
    return false;
  }
}

/** Last segment of the path. */
export function baseName(uri: vscode.Uri): string {
  return uri.path.slice(uri.path.lastIndexOf('/') + 1);
}
