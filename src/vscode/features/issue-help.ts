/** Fixes and acceptance for an issue: computed once, for the light bulb in the text and the pins of the preview. */

import * as vscode from 'vscode';
import type { Engine } from '../../engine/engine.ts';
import { acceptanceOf } from '../../fixes/accept.ts';
import type { Acceptance } from '../../fixes/accept.ts';
import { findFixes, whyNone } from '../../fixes/find-fixes.ts';
import type { Fix, Issue } from '../../core/issue.ts';
import { applyEdits } from '../common/apply-edits.ts';
import { computeOptions } from '../service/compute-options.ts';
import { toRange } from './problems.ts';
import type { FixesMessage } from '../../protocol/preview.ts';
import type { TagResult } from '../service/results.ts';
import { showText } from '../common/tabs.ts';

export interface Help {
  /** Each has been tried on the whole tag. */
  readonly fixes: readonly Fix[];
  readonly acceptance: Acceptance | undefined;
  /** Where there are no fixes: which tags of a batch are in the way of one, in words. */
  readonly inTheWay: string | undefined;
}

export class IssueHelp {
  readonly #engine: Engine;
  /** Works as a cache because every computation creates new issue objects. */
  readonly #found = new WeakMap<Issue, Help>();

  constructor(engine: Engine) {
    this.#engine = engine;
  }

  /** Rejects with the signal's reason once that is aborted. */
  async for(issue: Issue, { uri, report }: TagResult, signal: AbortSignal): Promise<Help> {
    const known = this.#found.get(issue);
    if (known) return known;
    const options = computeOptions(uri, signal, report.row);
    const fixes = await findFixes(this.#engine, report, issue, options);
    const acceptance = await acceptanceOf(this.#engine, report, issue, options);
    const inTheWay = fixes.length === 0 ? await whyNone(this.#engine, report, issue, options) : undefined;
    const help = { fixes, acceptance, inTheWay };
    this.#found.set(issue, help);
    return help;
  }
}

/** In display order, which is what `makeHelp` indexes. */
export function titlesOf(
  { fixes, acceptance, inTheWay }: Help,
  { code }: Issue,
): Pick<FixesMessage, 'titles' | 'accept' | 'inTheWay'> {
  const titles = fixes.map(({ title }) => title);
  return { titles, ...(acceptance && { accept: acceptTitle(code) }), ...(inTheWay !== undefined && { inTheWay }) };
}

export function acceptTitle(code: string): string {
  return `Accept this ${code} with a reason`;
}

/** Applies the fix with that index; for acceptance, moves the cursor to where the reason goes. */
export async function makeHelp(
  { fixes, acceptance }: Help,
  index: number,
  { uri, report: { source } }: TagResult,
): Promise<void> {
  const fix = fixes[index];
  if (fix) await applyEdits(uri, source, fix.edits);
  else if (acceptance && index === fixes.length) {
    const editor = await showText(uri, { preview: false });
    if (editor.document.getText() !== source.text) return;
    const place = toRange({ start: acceptance.at, end: acceptance.at }, source.position.bind(source));
    await editor.insertSnippet(acceptSnippet(acceptance), place);
  }
}

/** The comment, with the cursor where the reason goes. */
export function acceptSnippet({ before, after }: Acceptance): vscode.SnippetString {
  return new vscode.SnippetString().appendText(before).appendTabstop(0).appendText(after);
}
