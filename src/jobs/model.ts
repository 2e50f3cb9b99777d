/** A job that has been understood: lengths in mm, nothing missing; and what is said of files beside it. */

import type { Issue, YamlPath } from '../core/issue.ts';
import type { Units } from '../core/units.ts';
import type { Sheet } from '../spec/model.ts';
import type { FixedEntry } from './read-fixed.ts';

/** A spec with how often it is made. */
export interface TagEntry {
  /** As the job names it. */
  readonly spec: string;
  readonly quantity: number;
  /** The table of orders, which has quantities of its own. */
  readonly orders?: string;
  readonly path: YamlPath;
}

/** How pieces lie on a sheet, in mm. */
export type Laying = Pick<Sheet, 'margin' | 'gap' | 'turn'>;

export type SheetSource = Laying & { readonly path: YamlPath } & (
    | { readonly kind: 'sheets'; readonly width: number; readonly height: number; readonly count: number }
    | { readonly kind: 'offcuts'; readonly file: string }
  );

export interface JobModel {
  /** Absent where the job goes by its file. */
  readonly title?: string;
  readonly units: Units;
  readonly tags: readonly TagEntry[];
  readonly keepTogether: boolean;
  /** Times the usual. */
  readonly effort: number;
  /** By the name of a stock. */
  readonly sheets: ReadonlyMap<string, readonly SheetSource[]>;
  readonly fixed: readonly FixedEntry[];
}

/** What is wrong in a file that a job reads, with places in its own text. */
export interface FileIssues {
  /** Full path. */
  readonly file: string;
  /** As the job names it. */
  readonly name: string;
  readonly position: (offset: number) => { readonly line: number; readonly column: number };
  readonly issues: readonly Issue[];
}
