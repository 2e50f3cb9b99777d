/** One way in which a text may have gone wrong: where, in words, and the change that puts it right. */

import type { TextEdit, TextRange } from '../../core/issue.ts';
import { clip } from '../../core/length.ts';

export interface Repair {
  /** The slip itself, short. */
  readonly slip: TextRange;
  readonly message: string;
  readonly title: string;
  readonly edits: readonly TextEdit[];
  /** How seldom people slip so: of two repairs that work equally well the lower one is believed. */
  readonly rarity: number;
  /** Whether its words help also where the change brings a problem of its own into view, which is then not offered. */
  readonly explains?: true;
}

export function insertion(at: number, text: string): TextEdit {
  return { range: { start: at, end: at }, text };
}

export function replacement(start: number, end: number, text: string): TextEdit {
  return { range: { start, end }, text };
}

export function sign(at: number): TextRange {
  return { start: at, end: at + 1 };
}

export function quoted(text: string): string {
  return `“${clip(text)}”`;
}

/** In the quotes that need the least inside: single ones where the text has double ones or backslashes. */
export function inQuotes(text: string): string {
  return /["\\]/.test(text) && !text.includes("'") ? `'${text}'` : JSON.stringify(text);
}
