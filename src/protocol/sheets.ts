/** What the page of sheets says to its host. */

export type FromSheetsPage =
  | { readonly type: 'export' }
  /** A problem: where in the text it is, and of which row of a batch. */
  | { readonly type: 'show'; readonly offset: number; readonly row: number }
  /** Sheets so large, in the units of the spec. */
  | { readonly type: 'size'; readonly width: number; readonly height: number };
