/** What lies around a spec that its words may name. */

import { noUses } from '../spec/used-files.ts';
import type { Uses } from '../spec/used-files.ts';
import type { Grammar } from './grammar.ts';

export interface FontNote {
  readonly family: string;
  /** Such as “bundled, 600 and 800”. */
  readonly note?: string;
  /** The weights it has; absent where they are not known. */
  readonly weights?: readonly number[];
}

export interface SampleNote {
  readonly title: string;
  readonly purpose: string;
  readonly text: string;
}

export interface WorkspaceNames {
  /** Of the language of the file; that of specs unless said. */
  readonly grammar?: Grammar;
  readonly fonts: readonly FontNote[];
  /** The files that the spec uses. */
  readonly uses: Uses;
  /** Paths of fonts, drawings and other specs beside the spec, relative to it, with slashes. */
  readonly files: readonly string[];
  readonly samples: readonly SampleNote[];
}

export const nothingAround: WorkspaceNames = { fonts: [], uses: noUses, files: [], samples: [] };
