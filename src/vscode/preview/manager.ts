/** All previews: at most one for each spec, opened beside it and restored after a reload of the window. */

import * as vscode from 'vscode';
import { inBackground } from '../common/background.ts';
import { fileExists, isTagSpec } from '../common/documents.ts';
import type { SpecMoves } from '../service/spec-moves.ts';
import { previewTitle, shownTexts } from '../common/tabs.ts';
import { stepDone } from '../features/walkthrough.ts';
import { parseRestoredSource } from './messages.ts';
import { PreviewPanel, type PreviewActions, type PreviewServices } from './panel.ts';
import { previewViewType } from './view-type.ts';

/**
 * Delay in ms between the end of a spec and its text under another name, which the editor reports one after the other.
 */
const moveMs = 300;

export class PreviewManager implements vscode.WebviewPanelSerializer, vscode.Disposable {
  private readonly previews = new Map<string, PreviewPanel>();
  private readonly subscriptions: readonly { dispose(): unknown }[];
  /** Specs that are gone, of previews that are still open. */
  private readonly goneSpecs = new Set<string>();
  /** Previews that follow the editor, the newest last. */
  private readonly followers = new Set<PreviewPanel>();

  constructor(
    private readonly services: PreviewServices,
    private readonly actions: PreviewActions,
    moves: SpecMoves,
    /** `dist/webview`, the only folder that a page may load from. */
    private readonly pageFolder: vscode.Uri,
  ) {
    this.subscriptions = [
      moves.onDidMove(({ from, to }) => {
        this.moved(from, to);
      }),
      services.results.onDidRemove((uri) => {
        inBackground(this.removed(uri), 'follow a spec that has gone');
      }),
      services.results.onDidChange(({ uri }) => {
        this.goneSpecs.delete(uri.toString());
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
        // The alternative offered may have changed.
        for (const key of this.goneSpecs) this.showGone(key);
      }),
    ];
    const shown = vscode.window.activeTextEditor?.document.uri;
    if (shown && isTagSpec(shown)) this.openWithSpec(shown);
  }

  get all(): readonly PreviewPanel[] {
    return [...this.previews.values()];
  }

  get(uri: vscode.Uri): PreviewPanel | undefined {
    return this.previews.get(uri.toString());
  }

  /** The spec of a visible preview, preferably the one with focus. */
  get inFront(): vscode.Uri | undefined {
    const seen = [...this.previews.values()].filter(({ isVisible }) => isVisible);
    return (seen.find(({ isActive }) => isActive) ?? seen[0])?.uri;
  }

  /** Makes the preview of this spec follow the editor, or stay with the spec. */
  follow(uri: vscode.Uri, follows: boolean): void {
    const preview = this.get(uri);
    if (!preview) return;
    this.followers.delete(preview);
    if (follows) this.followers.add(preview);
  }

  /** A measurement made in one preview applies to all. */
  screenMeasured(): void {
    for (const preview of this.previews.values()) preview.sendScreen();
  }

  /** Opens the preview beside the editor, or reveals the existing one, without moving the focus. */
  openToSide(uri: vscode.Uri): void {
    const existing = this.get(uri);
    if (existing) {
      existing.reveal();
      return;
    }
    const place = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
    this.adopt(uri, vscode.window.createWebviewPanel(previewViewType, previewTitle(uri), place, {}));
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

  /** Previews of the file itself, or of files in the folder. */
  private within(uri: vscode.Uri): PreviewPanel[] {
    const key = uri.toString();
    return [...this.previews].flatMap(([own, preview]) => (own === key || own.startsWith(`${key}/`) ? [preview] : []));
  }

  /** Keeps the preview in place under the new name. */
  private renamed(oldUri: vscode.Uri, newUri: vscode.Uri): void {
    for (const preview of this.within(oldUri)) {
      const own = preview.uri.toString();
      this.previews.delete(own);
      const uri = vscode.Uri.parse(newUri.toString() + own.slice(oldUri.toString().length));
      this.pass(preview, uri);
    }
  }

  /** Opens the first preview automatically, if the setting says so. */
  private openWithSpec(uri: vscode.Uri): void {
    const isWished = vscode.workspace.getConfiguration('tagwright').get<boolean>('preview.openWithSpec', false);
    if (isWished && this.previews.size === 0) this.openToSide(uri);
  }

  /** The text has a new name and its preview follows; if that name has a preview already, one is enough. */
  private moved(from: vscode.Uri, to: vscode.Uri): void {
    const kept = this.services.memory.kept(from);
    if (kept && isTagSpec(to)) this.services.memory.keep(to, kept);
    this.turn(from, to);
  }

  /** Makes the preview of one spec show another. */
  private turn(from: vscode.Uri, to: vscode.Uri): void {
    const preview = this.get(from);
    if (!preview || !isTagSpec(to)) return;
    const other = this.get(to);
    if (other) {
      this.close(preview);
      other.reveal();
    } else {
      this.previews.delete(from.toString());
      this.pass(preview, to);
    }
  }

  /**
   * A closed file that still exists can be drawn; otherwise its preview says that it is gone, unless the text moves to
   * another name.
   */
  private async removed(uri: vscode.Uri): Promise<void> {
    await new Promise((resolve) => setTimeout(resolve, moveMs));
    if (!this.get(uri) || this.services.results.get(uri)) return;
    if (await fileExists(uri)) {
      this.services.results.request(uri);
      return;
    }
    this.goneSpecs.add(uri.toString());
    this.showGone(uri.toString());
  }

  private showGone(key: string): void {
    const preview = this.previews.get(key);
    if (preview) preview.showGone(this.otherThan(preview.uri));
    else this.goneSpecs.delete(key);
  }

  /** The spec in front, else any that is open. */
  private otherThan(uri: vscode.Uri): vscode.Uri | undefined {
    return shownTexts().find((each) => isTagSpec(each) && each.toString() !== uri.toString());
  }

  /** Makes the preview of a spec that is gone show an open one, or closes it if that has a preview already. */
  showOther(uri: vscode.Uri): void {
    const other = this.otherThan(uri);
    if (other) this.turn(uri, other);
  }

  /** Makes one preview follow to the spec being edited, unless that has a preview already. */
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
