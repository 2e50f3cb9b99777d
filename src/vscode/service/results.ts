/** What the editor knows of each open spec, as the parts that show it see it. `service.ts` computes it. */

import type * as vscode from 'vscode';
import type { Report } from '../../engine/engine.ts';
import type { Issue, TextRange, YamlPath } from '../../core/issue.ts';
import type { TagModel } from '../../spec/model.ts';
import type { Tag } from '../../tag/tag.ts';
import type { BatchTag } from '../../protocol/preview.ts';

/** The outcome of one computation of one version of a spec's text. */
export interface TagResult {
  readonly uri: vscode.Uri;
  /** The document's version that was read. */
  readonly version: number;
  readonly fileName: string;
  /** The last tag that could be made of this document; absent when none ever could. */
  readonly tag: Tag | undefined;
  /** What `tag` was made of. */
  readonly model: TagModel | undefined;
  /** True when `tag` is of an earlier version, because this one cannot be made. */
  readonly stale: boolean;
  readonly issues: readonly Issue[];
  /** Every tag of its batch in short; absent until all have been computed, and where there is no batch. */
  readonly batchTags?: readonly BatchTag[];
  /** Of this version's text. */
  readonly report: Report;
  /** The 1-based line of an offset in this version's text. */
  lineOf(offset: number): number;
  /** Where a path of `tag` stands in the text that `tag` was made of. */
  rangeOf(path: YamlPath): TextRange | undefined;
  /** The path of the innermost value that holds an offset, in the same text. */
  pathAt(offset: number): YamlPath;
}

export interface TagResults {
  /** The newest result, if the spec was computed yet. */
  get(uri: vscode.Uri): TagResult | undefined;
  /** Asks for a result if there is none; it arrives by `onDidChange`. */
  request(uri: vscode.Uri): void;
  /** Has another tag of a batch drawn; it arrives likewise. */
  showRow(uri: vscode.Uri, row: number): void;
  readonly onDidChange: vscode.Event<TagResult>;
  /** Nothing is left to compute: the spec was closed without having been saved, or was deleted. */
  readonly onDidRemove: vscode.Event<vscode.Uri>;
}
