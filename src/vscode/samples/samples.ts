/** The samples that come with Tagwright, and what can be done with each: open a copy, or put it into the spec that is open. */

import * as vscode from 'vscode';
import { merged } from '../../language/refactor/merge.ts';
import { parseSpec } from '../../spec/parse.ts';
import { Draft } from '../features/draft.ts';
import { back, pick } from '../common/questions.ts';
import { showText } from '../common/tabs.ts';
import { editsBetween } from '../common/text-edits.ts';

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
    this.#samples ??= this.#read().catch((error: unknown) => {
      // It may be read the next time.
      this.#samples = undefined;
      throw error;
    });
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

/** Opens a copy that is saved nowhere yet: of the sample that is named, or of the one that is chosen. */
export async function openSample(library: SampleLibrary, fileName?: unknown): Promise<void> {
  const samples = await library.all();
  const sample = samples.find((each) => each.fileName === fileName) ?? (await browsed(samples));
  if (sample) await Draft.open(draftName(sample.fileName), sample.text);
}

/** Each is shown, with its preview, while it is pointed at; nothing of that is left when one is chosen or none. */
async function browsed(samples: readonly Sample[]): Promise<Sample | undefined> {
  const [first] = samples;
  if (!first) return undefined;
  const draft = await Draft.open('sample.tag.yaml', first.text);
  const items = samples.map((sample) => ({ label: sample.title, detail: sample.purpose, value: sample }));
  const question = { title: 'Tag samples', placeholder: 'Open a copy to play with', items };
  const answer = await pick(question, ({ text }) => void draft.set(text));
  await draft.discard();
  return answer === back ? undefined : answer;
}

/** Without the number that puts samples in order. */
const draftName = (fileName: string): string => fileName.replace(/^\d+-/, '');

/** Adds what a sample makes to a spec, as one step that can be undone; opens a copy where there is none. */
export async function insertSample(
  library: SampleLibrary,
  uri: vscode.Uri | undefined,
  fileName?: unknown,
): Promise<void> {
  if (!uri) {
    await openSample(library, fileName);
    return;
  }
  const sample = await named(library, fileName);
  if (!sample) return;
  const document = await vscode.workspace.openTextDocument(uri);
  const before = document.getText();
  const edit = new vscode.WorkspaceEdit();
  for (const { range, text } of editsBetween(before, merged(before, sample.text))) {
    edit.replace(uri, new vscode.Range(document.positionAt(range.start), document.positionAt(range.end)), text);
  }
  await vscode.workspace.applyEdit(edit);
  await showText(uri);
}

async function named(library: SampleLibrary, fileName: unknown): Promise<Sample | undefined> {
  const samples = await library.all();
  const sample = samples.find((each) => each.fileName === fileName);
  if (sample) return sample;
  const items = samples.map((each) => ({ label: each.title, detail: each.purpose, sample: each }));
  const chosen = await vscode.window.showQuickPick(items, {
    title: 'Tag samples',
    placeHolder: 'Add to this spec',
    matchOnDetail: true,
  });
  return chosen?.sample;
}

/** What is told of a sample is not true of a tag that is made from it. */
export function withoutFirstComment(text: string): string {
  return text.split('\n').slice(commentLength(text)).join('\n');
}

/** In lines. */
function commentLength(text: string): number {
  return text.split('\n').findIndex((line) => !line.startsWith('#'));
}

function firstComment(text: string): string {
  return text
    .split(/\r?\n/)
    .slice(0, commentLength(text))
    .map((line) => line.replace(/^#\s?/, ''))
    .join(' ');
}
