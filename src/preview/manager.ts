/** All previews: at most one for each spec, opened beside it and revived after a reload of the window. */

import * as vscode from 'vscode';
import { isTagSpec } from '../editor/documents.ts';
import type { SpecMoves } from '../editor/spec-moves.ts';
import { shownTexts } from '../editor/tabs.ts';
import { stepDone } from '../editor/walkthrough.ts';
import { parseRestoredSource } from './messages.ts';
import { PreviewPanel, type PreviewActions, type PreviewServices } from './panel.ts';
import { previewViewType } from './view-type.ts';

/** From the end of a spec to its text under another name: the editor reports the one shortly before the other. */
const moveMs = 300;

export class PreviewManager implements vscode.WebviewPanelSerializer, vscode.Disposable {
  private readonly previews = new Map<string, PreviewPanel>();
  private readonly subscriptions: readonly { dispose(): unknown }[];
  /** Those that go along with the editor, the newest last. */
  private readonly followers = new Set<PreviewPanel>();

  constructor(
    private readonly services: PreviewServices,
    private readonly actions: PreviewActions,
    moves: SpecMoves,
    /** `dist/webview`, the only folder a page may load from. */
    private readonly pageFolder: vscode.Uri,
  ) {
    this.subscriptions = [
      moves.onDidMove(({ from, to }) => {
        this.moved(from, to);
      }),
      services.results.onDidRemove((uri) => {
        this.gone(uri);
      }),
      vscode.workspace.onDidRenameFiles(({ files }) => {
        for (const { oldUri, newUri } of files) this.renamed(oldUri, newUri);
      }),
      vscode.workspace.onDidDeleteFiles(({ files }) => {
        for (const uri of files) for (const preview of this.within(uri)) this.close(preview);
      }),
      vscode.window.onDidChangeActiveTextEditor((editor) => {
        if (!editor || !isTagSpec(editor.document.uri)) return;
        this.openWithSpec(editor.document.uri);
        this.goAlong(editor.document.uri);
        // Another one to offer.
        for (const preview of this.previews.values()) this.gone(preview.uri);
      }),
    ];
    const shown = vscode.window.activeTextEditor?.document.uri;
    if (shown && isTagSpec(shown)) this.openWithSpec(shown);
  }

  get(uri: vscode.Uri): PreviewPanel | undefined {
    return this.previews.get(uri.toString());
  }

  /** The spec of a preview that can be seen, the one with the keyboard first. */
  get inFront(): vscode.Uri | undefined {
    const seen = [...this.previews.values()].filter(({ isVisible }) => isVisible);
    return (seen.find(({ isActive }) => isActive) ?? seen[0])?.uri;
  }

  /** The preview of this spec goes along with the editor from now on, or stays with the spec. */
  follow(uri: vscode.Uri, follows: boolean): void {
    const preview = this.get(uri);
    if (!preview) return;
    this.followers.delete(preview);
    if (follows) this.followers.add(preview);
  }

  /** What was measured in one is true for all. */
  screenMeasured(): void {
    for (const preview of this.previews.values()) preview.sendScreen();
  }

  /** Opens the preview beside the editor, or shows the one there is; the keyboard stays where it was. */
  openToSide(uri: vscode.Uri): void {
    const existing = this.get(uri);
    if (existing) {
      existing.reveal();
      return;
    }
    const place = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
    this.adopt(uri, vscode.window.createWebviewPanel(previewViewType, 'Preview', place, {}));
    stepDone('previewed');
  }

  deserializeWebviewPanel(panel: vscode.WebviewPanel, state: unknown): Promise<void> {
    const source = parseRestoredSource(state);
    const uri = source === undefined ? undefined : vscode.Uri.parse(source);
    if (!uri || this.get(uri)) panel.dispose();
    else this.adopt(uri, panel);
    return Promise.resolve();
  }

  dispose(): void {
    for (const subscription of this.subscriptions) subscription.dispose();
    for (const preview of [...this.previews.values()]) this.close(preview);
  }

  /** Of the file itself, or of files in the folder. */
  private within(uri: vscode.Uri): PreviewPanel[] {
    const key = uri.toString();
    return [...this.previews].flatMap(([own, preview]) => (own === key || own.startsWith(`${key}/`) ? [preview] : []));
  }

  /** The preview goes on in its place under the new name. */
  private renamed(oldUri: vscode.Uri, newUri: vscode.Uri): void {
    for (const preview of this.within(oldUri)) {
      const own = preview.uri.toString();
      this.previews.delete(own);
      const uri = vscode.Uri.parse(newUri.toString() + own.slice(oldUri.toString().length));
      this.pass(preview, uri);
    }
  }

  /** Where that is wished for, the first preview comes by itself. */
  private openWithSpec(uri: vscode.Uri): void {
    const isWished = vscode.workspace.getConfiguration('tagwright').get<boolean>('preview.openWithSpec', false);
    if (isWished && this.previews.size === 0) this.openToSide(uri);
  }

  /** The text has another name now, and its preview goes along; where that name has a preview already, one is enough. */
  private moved(from: vscode.Uri, to: vscode.Uri): void {
    const preview = this.get(from);
    if (!preview || !isTagSpec(to)) return;
    const kept = this.services.memory.kept(from);
    if (kept) this.services.memory.keep(to, kept);
    const other = this.get(to);
    this.previews.delete(from.toString());
    if (!other) this.pass(preview, to);
    else {
      preview.dispose();
      other.reveal();
    }
  }

  /** Says so in its preview, unless its text is on the way to another name, or it is not gone at all. */
  private gone(uri: vscode.Uri): void {
    setTimeout(() => {
      if (!this.services.results.get(uri)) this.get(uri)?.showGone(this.otherThan(uri));
    }, moveMs);
  }

  /** The spec in front, else any that is open. */
  private otherThan(uri: vscode.Uri): vscode.Uri | undefined {
    return shownTexts().find((each) => isTagSpec(each) && each.toString() !== uri.toString());
  }

  /** The preview of a spec that is gone shows one that is open; where that has a preview, this one makes room for it. */
  showOther(uri: vscode.Uri): void {
    const other = this.otherThan(uri);
    if (other) this.moved(uri, other);
  }

  /** One preview turns to the spec that is edited now, unless another shows it already. */
  private goAlong(uri: vscode.Uri): void {
    const follower = [...this.followers].at(-1);
    if (!follower || this.get(uri)) return;
    this.previews.delete(follower.uri.toString());
    this.pass(follower, uri);
  }

  private pass(preview: PreviewPanel, uri: vscode.Uri): void {
    const follows = this.followers.delete(preview);
    this.adopt(uri, preview.release(), follows);
  }

  private adopt(uri: vscode.Uri, panel: vscode.WebviewPanel, follows = false): void {
    const preview = new PreviewPanel(uri, panel, this.services, this.actions, this.pageFolder, follows);
    this.previews.set(uri.toString(), preview);
    if (follows) this.followers.add(preview);
    preview.onDidDispose(() => {
      this.close(preview);
    });
  }

  private close(preview: PreviewPanel): void {
    this.previews.delete(preview.uri.toString());
    this.followers.delete(preview);
    preview.dispose();
  }
}
