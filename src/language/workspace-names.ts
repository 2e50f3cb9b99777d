/** Things outside a spec that it can name. */

import { noUses } from '../spec/files/used-files.ts';
import type { Uses } from '../spec/files/used-files.ts';
import type { Grammar } from './grammar.ts';

export interface FontNote {
  readonly family: string;
  /** For example “bundled, 600 and 800”. */
  readonly note?: string;
  /** Its weights; absent if unknown. */
  readonly weights?: readonly number[];
}

export interface SampleNote {
  readonly title: string;
  readonly purpose: string;
  readonly text: string;
}

export interface WorkspaceNames {
  /** Language of the file; by default that of specs. */
  readonly grammar?: Grammar;
  readonly fonts: readonly FontNote[];
  /** Files that the spec uses. */
  readonly uses: Uses;
  /** Relative paths of the fonts, drawings and other specs beside the spec, with slashes. */
  readonly files: readonly string[];
  readonly samples: readonly SampleNote[];
  /** What the lines of each table of orders call the specs of a job. */
  readonly products?: ReadonlyMap<string, readonly string[]>;
}

export const noWorkspaceNames: WorkspaceNames = { fonts: [], uses: noUses, files: [], samples: [] };
