/** What the editor tells of specs and of the files that they use: opened, typed into, closed, changed on disk. */

import * as vscode from 'vscode';
import { companionGlob, tagSpecGlob } from '../common/documents.ts';
import { onFolderChange } from '../common/folder-changes.ts';
import { severitySection } from './severities.ts';

export interface SpecListener {
  readonly opened: (uri: vscode.Uri) => void;
  readonly typed: (uri: vscode.Uri) => void;
  readonly closed: (uri: vscode.Uri) => void;
  /** A spec on disk is new or changed; an open one reports its changes itself. */
  readonly appeared: (uri: vscode.Uri) => void;
  readonly deleted: (uri: vscode.Uri) => void;
  /** A file that specs may use, open or on disk. */
  readonly fileChanged: (uri: vscode.Uri) => void;
  readonly folderChanged: (isWithin: (file: string) => boolean) => void;
  /** Which specs are checked may be others now. */
  readonly scopeChanged: () => void;
  /** All that is checked may come out otherwise. */
  readonly rulesChanged: () => void;
}

export function listenToSpecs(listener: SpecListener): vscode.Disposable {
  const { workspace } = vscode;
  const specs = workspace.createFileSystemWatcher(tagSpecGlob);
  const companions = workspace.createFileSystemWatcher(companionGlob);
  const { opened, typed, closed, appeared, deleted, fileChanged } = listener;
  return vscode.Disposable.from(
    specs,
    companions,
    workspace.onDidOpenTextDocument(({ uri }) => {
      opened(uri);
    }),
    workspace.onDidChangeTextDocument(({ document: { uri }, contentChanges }) => {
      if (contentChanges.length === 0) return;
      typed(uri);
      // Edits of a file that specs use show in them before it is saved.
      fileChanged(uri);
    }),
    workspace.onDidCloseTextDocument(({ uri }) => {
      closed(uri);
      fileChanged(uri);
    }),
    workspace.onDidGrantWorkspaceTrust(listener.rulesChanged),
    workspace.onDidChangeWorkspaceFolders(listener.scopeChanged),
    workspace.onDidChangeConfiguration((change) => {
      if (change.affectsConfiguration('tagwright.workspaceFileLimit')) listener.scopeChanged();
      if (change.affectsConfiguration(severitySection)) listener.rulesChanged();
    }),
    specs.onDidCreate(appeared),
    specs.onDidChange(appeared),
    specs.onDidDelete(deleted),
    companions.onDidCreate(fileChanged),
    companions.onDidChange(fileChanged),
    companions.onDidDelete(fileChanged),
    onFolderChange(listener.folderChanged),
  );
}
