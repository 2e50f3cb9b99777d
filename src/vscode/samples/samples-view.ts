/** View of samples: each with a picture in the colours of its stock, a title and a line of description. */

import * as vscode from 'vscode';
import type { ComputeOptions, Engine } from '../../engine/engine.ts';
import { pictureOfTag } from '../../language/hover/picture.ts';
import { lookOfStock } from '../../look/stock-look.ts';
import { samplesHtml } from './samples-html.ts';
import type { FromSamplesPage, SamplePicture, ToSamplesPage } from '../../protocol/samples.ts';
import { locateBeside } from '../service/font-files.ts';
import { jobSampleUri, openJobSample } from './job-sample.ts';
import { jobSample } from './job-sample-files.ts';
import { openSample } from './sample-library.ts';
import type { Sample, SampleLibrary } from './sample-library.ts';

/** In pixels: twice the displayed size, for dense screens. */
const pictureSize = { width: 200, height: 128 };

type Pictured = Pick<Sample, 'fileName' | 'text'> & Pick<ComputeOptions, 'locate'>;

export class SamplesView implements vscode.WebviewViewProvider {
  readonly #extensionUri: vscode.Uri;
  readonly #library: SampleLibrary;
  readonly #engine: Engine;
  readonly #pictures = new Map<string, SamplePicture | undefined>();

  constructor(extensionUri: vscode.Uri, library: SampleLibrary, engine: Engine) {
    this.#extensionUri = extensionUri;
    this.#library = library;
    this.#engine = engine;
  }

  resolveWebviewView({ webview, onDidDispose }: vscode.WebviewView): void {
    const folder = vscode.Uri.joinPath(this.#extensionUri, 'dist', 'webview');
    webview.options = { enableScripts: true, localResourceRoots: [folder] };
    let isGone = false;
    onDidDispose(() => {
      isGone = true;
    });
    webview.onDidReceiveMessage((data: unknown) => {
      const message = parseFromPage(data);
      if (message?.type === 'ready') void this.#fill(webview, () => isGone);
      if (message?.type === 'open') void this.#open(message.fileName);
      if (message?.type === 'insert') void vscode.commands.executeCommand('tagwright.insertSample', message.fileName);
    });
    webview.html = samplesHtml({
      cspSource: webview.cspSource,
      scriptUri: webview.asWebviewUri(vscode.Uri.joinPath(folder, 'samples.js')).toString(),
      styleUri: webview.asWebviewUri(vscode.Uri.joinPath(folder, 'samples.css')).toString(),
    });
  }

  /** Sends the list at once, and the pictures as they are made. */
  async #fill(webview: vscode.Webview, isGone: () => boolean): Promise<void> {
    const post = (message: ToSamplesPage) => void webview.postMessage(message);
    const samples = await this.#library.all();
    if (isGone()) return;
    const cards = samples.map(({ fileName, title, purpose }) => ({ fileName, title, purpose }));
    const { fileName, title, purpose, pictured } = jobSample;
    post({ type: 'samples', samples: [...cards, { fileName, title, purpose, isJob: true }] });
    const spec = jobSampleUri(this.#extensionUri, pictured);
    const text = new TextDecoder().decode(await vscode.workspace.fs.readFile(spec));
    const all = [...samples.map((sample) => ({ ...sample, locate: () => undefined })), { fileName, text, locate: locateBeside(spec) }];
    for (const sample of all) {
      const picture = await this.#picture(sample);
      if (isGone()) return;
      if (picture) post({ type: 'picture', fileName: sample.fileName, picture });
    }
  }

  #open(fileName: string): Promise<void> {
    return fileName === jobSample.fileName ? openJobSample(this.#extensionUri) : openSample(this.#library, fileName);
  }

  async #picture({ fileName, text, locate }: Pictured): Promise<SamplePicture | undefined> {
    if (!this.#pictures.has(fileName)) {
      const { tag } = await this.#engine.compute(text, { locate });
      const picture = tag && pictureOfTag(tag, pictureSize);
      const { wood: face, edgeFace: edge, burn: engraved } = lookOfStock(tag?.stock ?? {});
      this.#pictures.set(fileName, picture && { ...picture, look: { face, edge, engraved } });
    }
    return this.#pictures.get(fileName);
  }
}

/** `undefined` for anything that is not a message of the protocol. */
function parseFromPage(data: unknown): FromSamplesPage | undefined {
  if (typeof data !== 'object' || data === null) return undefined;
  const { type, fileName } = data as Record<string, unknown>;
  if (type === 'ready') return { type };
  return (type === 'open' || type === 'insert') && typeof fileName === 'string' ? { type, fileName } : undefined;
}
