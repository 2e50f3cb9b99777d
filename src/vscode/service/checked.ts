/** The result of a spec as the editor's features need it: with the last drawing that could be made. */

import * as vscode from 'vscode';
import type { Report } from '../../engine/engine.ts';
import type { UsedIssues } from '../../spec/read/scope.ts';
import type { TagResult } from './results.ts';
import { baseName } from '../common/write-whole.ts';

/** A result with what the editor's own features need in addition to previews. */
export interface Checked extends TagResult {
  /** The report that `tag` is from: this one or, while the spec is broken, the last with a tag. */
  readonly drawn: Report | undefined;
  /** Issues in the files it uses; in the table of its batch, those of all rows checked so far. */
  readonly inUsed: readonly UsedIssues[];
}

/** `before`: the last report with a tag, which stays on show together with the text it was made from. */
export function resultOf(uri: vscode.Uri, version: number, report: Report, before: Report | undefined): Checked {
  const { source, tag, issues } = report;
  const drawn = tag ? report : before;
  return {
    uri,
    version,
    report,
    drawn,
    fileName: baseName(uri),
    tag: drawn?.tag,
    model: drawn?.model,
    stale: !tag && drawn !== undefined,
    issues,
    inUsed: inUsedOf(report),
    lineOf: (offset) => source.position(offset).line,
    rangeOf: (path) => drawn?.source.range(path),
    pathAt: (offset) => drawn?.source.pathAt(offset) ?? [],
  };
}

export function inUsedOf({ inUsed = [] }: Report): readonly UsedIssues[] {
  return inUsed;
}
