/** The engine's report on a spec: issues, each with a place in the text and, where it has one, on the piece. */

import { counted } from './units.ts';
import type { Point } from '../geometry/types.ts';
import type { IssueCode, Severity } from './issue-kinds.ts';

/** The more serious, the higher. */
export const severityRank: Readonly<Record<Severity, number>> = { info: 0, warning: 1, error: 2 };

export function isError({ severity }: { readonly severity: Severity }): boolean {
  return severity === 'error';
}

/** Keys and list indices from the root of the YAML document. */
export type YamlPath = readonly (string | number)[];

/** A stretch of the spec's text, as UTF-16 offsets; `end` is exclusive. */
export interface TextRange {
  readonly start: number;
  readonly end: number;
}

export interface TextEdit {
  readonly range: TextRange;
  readonly text: string;
}

/** A change of the text, offered under its title. */
export interface TextChange {
  readonly title: string;
  readonly edits: readonly TextEdit[];
}

/** A change that the engine has tried and found to solve its issue. */
export interface Fix extends TextChange {
  /** Share of the lettering, or of a piece without lettering, that looks different afterwards; 0 if nothing does. */
  readonly look: number;
  /** In a batch: the tags that have no such problem and would hang from another place. */
  readonly rehangs?: readonly string[];
  /** In a batch: the tags that it takes out, as it would not suit them. */
  readonly aside?: readonly string[];
  /** Whether it changes how tags are meant, and is made only when asked for. */
  readonly isChoice?: true;
  /** Whether letters have another shape afterwards: they may read as others, and somebody is to look at them first. */
  readonly redraws?: true;
  /** Whether something is off the middle afterwards, or close to an edge or an opening, that was not. */
  readonly isUntidy?: true;
}

/** A place where a fault is seen, on finished geometry in mm, y up. */
export interface FaultPlace {
  /** One point, or the two ends of a width. */
  readonly points: readonly Point[];
  /** The width in question, in mm. */
  readonly width?: number;
}

export interface Issue {
  readonly code: IssueCode;
  readonly severity: Severity;
  /** One sentence in plain words, figures included. */
  readonly message: string;
  /** The part of the spec that causes the issue. */
  readonly path: YamlPath;
  readonly range: TextRange;
  /** The piece on which the fault is seen, if any. */
  readonly piece?: string;
  /**
   * Place of the fault: one point, or the two ends of a width, on finished geometry in mm, y up. The worst of several.
   */
  readonly points?: readonly Point[];
  /** The width in question, in mm; the least of several. */
  readonly width?: number;
  /** The angle in question, in degrees, for faults of direction. */
  readonly angle?: number;
  /** How much is spoiled, such as the share of letters lost: of two findings of a kind, the one with more is the worse. */
  readonly amount?: number;
  /** The least width allowed, in mm, if the check has such a limit. */
  readonly minimum?: number;
  /** Every place where the fault is seen, the worst first; absent if there is only one. */
  readonly places?: readonly FaultPlace[];
  /** In a batch, the row in which it was found, if that is not the row drawn. */
  readonly row?: number;
  /** In a batch, every tag that it is about, the one that the message is of first; absent if it is about all of them. */
  readonly names?: readonly string[];
  /** Replacements for the text of `range` that are certain to be valid, such as the nearest known key. */
  readonly suggestions?: readonly string[];
  /** Changes that may put a slip of the text right, the likeliest first; each is tried before it is offered. */
  readonly repairs?: readonly TextChange[];
}

/** The text with the edits applied; they must not overlap. */
export function withEdits(text: string, edits: readonly TextEdit[]): string {
  const ordered = [...edits].sort((a, b) => b.range.start - a.range.start);
  return ordered.reduce(
    (result, { range, text: insert }) => result.slice(0, range.start) + insert + result.slice(range.end),
    text,
  );
}

/** The issues in the order of the text, and at one place first what cannot be read: of forty names that are a little thin, it is the one to see. */
export function inOrder(issues: readonly Issue[]): Issue[] {
  const later = ({ code }: Issue): number => (code === 'hard-to-read' ? 0 : 1);
  return [...issues].sort((a, b) => a.range.start - b.range.start || a.range.end - b.range.end || later(a) - later(b));
}

/** A key shared by issues of the same kind, on the same piece and from the same place in the spec. */
export function causeOf({ code, piece, path }: Issue): string {
  return JSON.stringify([code, piece, path]);
}

/** An issue that has no range in the text yet, as shapes and checks report it. */
export type Finding = Omit<Issue, 'range'>;

/** “1 error, 2 warnings, 1 info”; empty without issues. The one way to count problems, so that all counts agree. */
export function tally(issues: readonly Pick<Issue, 'severity'>[]): string {
  return (['error', 'warning', 'info'] as const)
    .map((kind) => ({ kind, count: issues.filter(({ severity }) => severity === kind).length }))
    .flatMap(({ kind, count }) => (count > 0 ? [counted(count, kind)] : []))
    .join(', ');
}
