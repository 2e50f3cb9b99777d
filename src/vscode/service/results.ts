/** Results for open specs, as the features that show them see them. `service.ts` computes them. */

import type * as vscode from 'vscode';
import { rowCount } from '../../engine/batch.ts';
import type { Report } from '../../engine/engine.ts';
import type { Issue, TextRange, YamlPath } from '../../core/issue.ts';
import type { TagModel } from '../../spec/model/model.ts';
import type { Tag } from '../../tag/tag.ts';
import type { BatchTag } from '../../protocol/preview.ts';

/** Outcome of one computation of one version of a spec's text. */
export interface TagResult {
  readonly uri: vscode.Uri;
  /** Document version that was read. */
  readonly version: number;
  readonly fileName: string;
  /** The last tag that could be made from this document; absent if there never was one. */
  readonly tag: Tag | undefined;
  /** The model that `tag` was made from. */
  readonly model: TagModel | undefined;
  /** True if `tag` is from an earlier version because this one cannot be made. */
  readonly stale: boolean;
  readonly issues: readonly Issue[];
  /** A short entry for every tag of its batch; absent until all have been computed, and without a batch. */
  readonly batchTags?: readonly BatchTag[];
  /** Report of this version's text. */
  readonly report: Report;
  /** The 1-based line of an offset in this version's text. */
  lineOf(offset: number): number;
  /** Range of a path of `tag` in the text that `tag` was made from. */
  rangeOf(path: YamlPath): TextRange | undefined;
  /** Path of the innermost value around an offset, in the same text. */
  pathAt(offset: number): YamlPath;
}

/** How many other tags of its batch are still being checked. */
export function tagsToCheck({ report, batchTags }: Pick<TagResult, 'report' | 'batchTags'>): number {
  return batchTags || !report.tag ? 0 : rowCount(report) - 1;
}

export interface TagResults {
  /** The newest result, if the spec has been computed. */
  get(uri: vscode.Uri): TagResult | undefined;
  /** Requests a result if there is none; it arrives through `onDidChange`. */
  request(uri: vscode.Uri): void;
  /** Draws another tag of a batch; the result arrives through `onDidChange`. */
  showRow(uri: vscode.Uri, row: number): void;
  readonly onDidChange: vscode.Event<TagResult>;
  /** The spec was closed without having been saved, or deleted, so there is nothing left to compute. */
  readonly onDidRemove: vscode.Event<vscode.Uri>;
}
