/** One way in which a text may have gone wrong: the place, a message, and the change that repairs it. */

import type { TextEdit, TextRange } from '../../core/issue.ts';
import { clip } from '../../core/length.ts';

export interface Repair {
  /** Range of the slip itself, short. */
  readonly slip: TextRange;
  readonly message: string;
  readonly title: string;
  readonly edits: readonly TextEdit[];
  /** Rarity of the slip: of two repairs that work equally well, the one for the more common slip is taken. */
  readonly rarity: number;
  /** Whether the message helps even if the change reveals another problem; the change is then not offered. */
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

/** The text in the quotes that need the least escaping: single ones if it contains double ones or backslashes. */
export function inQuotes(text: string): string {
  return /["\\]/.test(text) && !text.includes("'") ? `'${text}'` : JSON.stringify(text);
}
