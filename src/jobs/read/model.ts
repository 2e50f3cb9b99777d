/** Model of a job: lengths in mm, all defaults filled in; and the issues found in other files. */

import type { Issue, YamlPath } from '../../core/issue.ts';
import type { Units } from '../../core/units.ts';
import type { Sheet } from '../../spec/model/workshop-model.ts';
import type { FixedEntry } from './read-fixed.ts';

/** A spec and the number of times it is made. */
export interface TagEntry {
  /** As written in the job. */
  readonly spec: string;
  readonly quantity: number;
  /** The table of orders, which contains its own quantities. */
  readonly orders?: string;
  /** What the table calls it; absent if it goes by the name of its file. */
  readonly products?: readonly string[];
  readonly path: YamlPath;
}

/** Placement of pieces on a sheet; lengths in mm. */
export type Laying = Pick<Sheet, 'margin' | 'gap' | 'turn'>;

export type SheetSource = Laying & { readonly path: YamlPath } & (
    | { readonly kind: 'sheets'; readonly width: number; readonly height: number; readonly count: number }
    | { readonly kind: 'offcuts'; readonly file: string }
  );

export interface JobModel {
  /** Absent if the job is titled by its file name. */
  readonly title?: string;
  readonly units: Units;
  readonly tags: readonly TagEntry[];
  /** Specs of entries that cannot be read, and why: what they ask for is not made. */
  readonly unread: readonly { readonly spec: string; readonly why: string }[];
  readonly keepTogether: boolean;
  /** As a multiple of the usual effort. */
  readonly effort: number;
  /** By stock name. */
  readonly sheets: ReadonlyMap<string, readonly SheetSource[]>;
  /** Stocks with an entry that cannot be read, and those that are meant by a name that no stock has: told already. */
  readonly sheetsUnread: ReadonlySet<string>;
  readonly stocksMeant: ReadonlySet<string>;
  readonly fixed: readonly FixedEntry[];
}

/** Issues in a file that a job reads, with places in that file's text. */
export interface FileIssues {
  /** Full path of the file. */
  readonly file: string;
  /** As written in the job. */
  readonly name: string;
  readonly position: (offset: number) => { readonly line: number; readonly column: number };
  readonly issues: readonly Issue[];
}
