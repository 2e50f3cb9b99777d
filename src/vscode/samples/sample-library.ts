/** The bundled samples: opens a copy, or inserts one into the open spec. */

import * as vscode from 'vscode';
import { merged } from '../../language/refactor/merge.ts';
import { parseSpec } from '../../spec/parse.ts';
import { inBackground } from '../common/background.ts';
import { DraftDocument } from '../features/draft.ts';
import { back, askPick } from '../common/quick-input.ts';
import { showText } from '../common/tabs.ts';
import { editsBetween } from '../common/text-edits.ts';

export interface Sample {
  readonly fileName: string;
  readonly title: string;
  /** First comment of the spec. */
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
      // Lets the next call try again.
      this.#samples = undefined;
      throw error;
    });
    return this.#samples;
  }

  async #read(): Promise<Sample[]> {
    // Folders of an extension loaded over HTTP cannot be listed, so the build writes a list.
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

/** Opens an unsaved copy of the named sample, or of one that is chosen. */
export async function openSample(library: SampleLibrary, fileName?: unknown): Promise<void> {
  const samples = await library.all();
  const sample = samples.find((each) => each.fileName === fileName) ?? (await browsed(samples));
  if (sample) await DraftDocument.open(draftName(sample.fileName), sample.text);
}

/** Shows each sample with its preview while its item has focus; the drafts are removed again, whatever is chosen. */
async function browsed(samples: readonly Sample[]): Promise<Sample | undefined> {
  const [first] = samples;
  if (!first) return undefined;
  const opening = DraftDocument.open('sample.tag.yaml', first.text, true);
  const items = samples.map((sample) => ({ label: sample.title, detail: sample.purpose, value: sample }));
  const question = { title: 'Tag samples', prompt: 'Open a copy to play with', items };
  const answer = await askPick(question, ({ text }) => {
    inBackground(
      opening.then((draft) => draft.set(text)),
      'show a sample',
    );
  });
  await (await opening).discard();
  return answer === back ? undefined : answer;
}

/** Without the number that orders the samples. */
const draftName = (fileName: string): string => fileName.replace(/^\d+-/, '');

/** Adds a sample to a spec as one undo step; opens a copy if there is no spec. */
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

/** Removes the description of the sample, which would not be true of a tag made from it. */
export function withoutFirstComment(text: string): string {
  return text.split('\n').slice(commentLength(text)).join('\n');
}

/** Number of lines in the comment at the start. */
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
