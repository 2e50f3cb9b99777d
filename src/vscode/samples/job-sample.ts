/** The sample job: a folder of files that belong together, copied as a whole. */

import * as vscode from 'vscode';
import { fileExists } from '../common/documents.ts';
import { showText } from '../common/tabs.ts';
import { jobSample, jobSampleFiles } from './job-sample-files.ts';

export function jobSampleUri(extensionUri: vscode.Uri, file: (typeof jobSampleFiles)[number]): vscode.Uri {
  return vscode.Uri.joinPath(extensionUri, 'samples', jobSample.folder, file);
}

/** Asks for a folder, copies the files into a new folder inside it, and shows the job. Existing files are kept. */
export async function openJobSample(extensionUri: vscode.Uri): Promise<void> {
  const [into] =
    (await vscode.window.showOpenDialog({
      title: 'Copy the plant swap into',
      openLabel: 'Copy Here',
      canSelectFolders: true,
      canSelectFiles: false,
      ...(vscode.workspace.workspaceFolders?.[0] ? { defaultUri: vscode.workspace.workspaceFolders[0].uri } : {}),
    })) ?? [];
  if (into) await copyJobSample(extensionUri, into);
}

export async function copyJobSample(extensionUri: vscode.Uri, into: vscode.Uri): Promise<vscode.Uri> {
  const target = vscode.Uri.joinPath(into, jobSample.folder);
  for (const file of jobSampleFiles) {
    const copy = vscode.Uri.joinPath(target, file);
    if (await fileExists(copy)) continue;
    await vscode.workspace.fs.writeFile(copy, await vscode.workspace.fs.readFile(jobSampleUri(extensionUri, file)));
  }
  const job = vscode.Uri.joinPath(target, jobSample.fileName);
  await showText(job);
  return job;
}
