/** The samples that come with Tagwright, and what can be done with each: open a copy, or put it into the spec that is open. */

import * as vscode from 'vscode';
import { merged } from '../language/merge.ts';
import { parseSpec } from '../spec/parse.ts';
import { Draft } from './draft.ts';
import { showText } from './tabs.ts';
import { editsBetween } from './text-edits.ts';

export interface Sample {
  readonly fileName: string;
  readonly title: string;
  /** Its first comment. */
  readonly purpose: string;
  readonly text: string;
}

export class SampleLibrary {
  readonly #extensionUri: vscode.Uri;
  #samples: Promise<Sample[]> | undefined;

  constructor(extensionUri: vscode.Uri) {
    this.#extensionUri = extensionUri;
  }

  /** Read once: they do not change while the extension runs. */
  all(): Promise<Sample[]> {
    this.#samples ??= this.#read();
    return this.#samples;
  }

  async #read(): Promise<Sample[]> {
    // Folders of an extension that comes over HTTP cannot be listed; the build has written down what there is.
    const names = JSON.parse(await this.#textOf('dist', 'samples.json')) as string[];
    return Promise.all(
      names.map(async (fileName) => {
        const text = await this.#textOf('samples', fileName);
        const title = parseSpec(text).model?.title ?? fileName;
        return { fileName, title, purpose: firstComment(text), text };
      }),
    );
  }

  async #textOf(...path: string[]): Promise<string> {
    const uri = vscode.Uri.joinPath(this.#extensionUri, ...path);
    return new TextDecoder().decode(await vscode.workspace.fs.readFile(uri));
  }
}

/** Lets the user choose a sample, unless one is named, and opens a copy that is saved nowhere yet. */
export async function openSample(library: SampleLibrary, fileName?: unknown): Promise<void> {
  const sample = await named(library, fileName, 'Open a copy to play with');
  if (sample) await Draft.open(sample.fileName.replace(/^\d+-/, ''), sample.text);
}

/** Adds what a sample makes to a spec, as one step that can be undone; opens a copy where there is none. */
export async function insertSample(
  library: SampleLibrary,
  uri: vscode.Uri | undefined,
  fileName?: unknown,
): Promise<void> {
  const sample = await named(library, fileName, uri ? 'Add to this spec' : 'Open a copy to play with');
  if (!sample) return;
  if (!uri) {
    await openSample(library, sample.fileName);
    return;
  }
  const document = await vscode.workspace.openTextDocument(uri);
  const before = document.getText();
  const edit = new vscode.WorkspaceEdit();
  for (const { range, text } of editsBetween(before, merged(before, sample.text))) {
    edit.replace(uri, new vscode.Range(document.positionAt(range.start), document.positionAt(range.end)), text);
  }
  await vscode.workspace.applyEdit(edit);
  await showText(uri);
}

async function named(library: SampleLibrary, fileName: unknown, placeHolder: string): Promise<Sample | undefined> {
  const samples = await library.all();
  const sample = samples.find((each) => each.fileName === fileName);
  if (sample) return sample;
  const items = samples.map((each) => ({ label: each.title, detail: each.purpose, sample: each }));
  const chosen = await vscode.window.showQuickPick(items, { title: 'Tag samples', placeHolder, matchOnDetail: true });
  return chosen?.sample;
}

function firstComment(text: string): string {
  const lines = text.split(/\r?\n/);
  const end = lines.findIndex((line) => !line.startsWith('#'));
  return lines
    .slice(0, end)
    .map((line) => line.replace(/^#\s?/, ''))
    .join(' ');
}
