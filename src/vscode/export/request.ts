import type * as vscode from 'vscode';
import type { Format, SheetFormat } from '../../export/formats.ts';

export interface ExportRequest {
  readonly specs: readonly vscode.Uri[];
  /** Only this piece of a single spec. */
  readonly piece?: string;
  /** Only this row of its batch; by default all of them. */
  readonly row?: number;
  /**
   * Files in these formats; or packs, each in a folder of its own or all in one archive; or sheets with all tags of
   * each spec.
   */
  readonly what:
    | { readonly formats: readonly Format[] }
    | { readonly packs: 'folders' | 'archive' }
    | { readonly sheets: readonly SheetFormat[] };
  /** Target folder, or file for an archive. */
  readonly to: vscode.Uri;
  /** Treatment of existing files with different content. */
  readonly existing?: 'ask' | 'replace' | 'keep';
  /** Treatment of tags with errors. */
  readonly faulty?: 'ask' | 'include' | 'leave out';
}
