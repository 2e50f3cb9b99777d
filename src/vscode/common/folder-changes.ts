/** Folders that appear or go as a whole: of these the editor tells by themselves, not of the files in them. */

import * as vscode from 'vscode';

/** `isWithin`: whether a file, by its URI as a string, lies in what has appeared or gone. */
export function onFolderChange(listener: (isWithin: (file: string) => boolean) => void): vscode.Disposable {
  const watcher = vscode.workspace.createFileSystemWatcher('**', false, true, false);
  const tell = (uri: vscode.Uri): void => {
    const folder = `${uri.toString()}/`;
    listener((file) => file.startsWith(folder));
  };
  return vscode.Disposable.from(watcher, watcher.onDidCreate(tell), watcher.onDidDelete(tell));
}
