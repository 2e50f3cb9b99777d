import type { TextEdit } from '../../core/issue.ts';

export interface Refactoring {
  readonly kind: 'extract' | 'inline' | 'rewrite';
  readonly title: string;
  readonly edits: readonly TextEdit[];
  /** A new name, to be thought about. */
  readonly name?: string;
}
