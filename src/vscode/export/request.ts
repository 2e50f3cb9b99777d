import type * as vscode from 'vscode';
import type { Format, SheetFormat } from '../../export/formats.ts';

export interface ExportRequest {
  readonly specs: readonly vscode.Uri[];
  /** Only this piece of the one spec. */
  readonly piece?: string;
  /** Only this row of its batch; every one unless said. */
  readonly row?: number;
  /** These formats; or packs, each in a folder of its own or all in one archive; or sheets with all tags of each spec. */
  readonly what:
    | { readonly formats: readonly Format[] }
    | { readonly packs: 'folders' | 'archive' }
    | { readonly sheets: readonly SheetFormat[] };
  /** Where files go; an archive's own place. */
  readonly to: vscode.Uri;
  /** What becomes of files that are there and hold something else. */
  readonly existing?: 'ask' | 'replace' | 'keep';
  /** What becomes of tags with errors. */
  readonly faulty?: 'ask' | 'include' | 'leave out';
}
