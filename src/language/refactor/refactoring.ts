import type { TextEdit } from '../../core/issue.ts';

export interface Refactoring {
  readonly kind: 'extract' | 'inline' | 'rewrite';
  readonly title: string;
  readonly edits: readonly TextEdit[];
  /** A generated name that the writer may want to change. */
  readonly name?: string;
}
