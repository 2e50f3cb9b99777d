/** What the engine says of a spec: findings with a place in the text and on the piece. */

import { counted } from './units.ts';
import type { Point } from '../geometry/types.ts';
import type { IssueCode, Severity } from './issue-kinds.ts';

/** The graver, the more. */
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

/** One replacement in the spec's text. */
export interface TextEdit {
  readonly range: TextRange;
  readonly text: string;
}

/** A change of the text that is offered by its title. */
export interface TextChange {
  readonly title: string;
  readonly edits: readonly TextEdit[];
}

/** A change that was tried by the engine and found to solve its issue. */
export interface Fix extends TextChange {
  /** How much of the lettering, or of a piece without any, looks otherwise: a share, 0 where nothing does. */
  readonly look: number;
}

/** Where a fault is seen, on finished geometry in mm, y up. */
export interface FaultPlace {
  /** One point, or the two ends of a width. */
  readonly points: readonly Point[];
  /** The width in question, in mm. */
  readonly width?: number;
}

export interface Issue {
  readonly code: IssueCode;
  readonly severity: Severity;
  /** One sentence in plain words, with the figures. */
  readonly message: string;
  /** The part of the spec that causes it. */
  readonly path: YamlPath;
  readonly range: TextRange;
  /** The piece it is seen on, if it is seen on one. */
  readonly piece?: string;
  /** Where it is seen: one point, or the two ends of a width. Finished geometry in mm, y up. Of several places, the worst. */
  readonly points?: readonly Point[];
  /** The width in question, in mm. Of several, the least. */
  readonly width?: number;
  /** The angle in question, in degrees, where the fault is one of direction. */
  readonly angle?: number;
  /** What the width should be at least, in mm, where the check goes by such a limit. */
  readonly minimum?: number;
  /** Every place where it is seen, the worst first, where there are several. */
  readonly places?: readonly FaultPlace[];
  /** Of a batch, the row that it was found in, where that is not the one drawn. */
  readonly row?: number;
  /** Replacement for the text of `range` that is certain to be valid, such as the nearest known key. */
  readonly suggestions?: readonly string[];
  /** Changes by which a slip of the text may be put right, the likeliest first; each is tried before it is offered. */
  readonly repairs?: readonly TextChange[];
}

/** The text after some edits that do not overlap. */
export function applied(text: string, edits: readonly TextEdit[]): string {
  const ordered = [...edits].sort((a, b) => b.range.start - a.range.start);
  return ordered.reduce(
    (result, { range, text: insert }) => result.slice(0, range.start) + insert + result.slice(range.end),
    text,
  );
}

/** In the order of the text. */
export function inOrder(issues: readonly Issue[]): Issue[] {
  return [...issues].sort((a, b) => a.range.start - b.range.start || a.range.end - b.range.end);
}

/** The same for issues of one kind, on one piece, from one place in the spec. */
export function causeOf({ code, piece, path }: Issue): string {
  return JSON.stringify([code, piece, path]);
}

/** An issue before it has been given its place in the text: what shapes and checks report. */
export type Finding = Omit<Issue, 'range'>;

/** “1 error, 2 warnings, 1 info”; empty where there is nothing. Whoever counts problems counts all of them, so that counts agree. */
export function tally(issues: readonly Pick<Issue, 'severity'>[]): string {
  return (['error', 'warning', 'info'] as const)
    .map((kind) => ({ kind, count: issues.filter(({ severity }) => severity === kind).length }))
    .flatMap(({ kind, count }) => (count > 0 ? [counted(count, kind)] : []))
    .join(', ');
}
