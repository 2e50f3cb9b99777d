/** Messages between the list of samples and its page. */

export interface SampleCard {
  readonly fileName: string;
  readonly title: string;
  readonly purpose: string;
  /** True for a job, which consists of several files and cannot be inserted into a spec. */
  readonly isJob?: boolean;
}

/** As in `language/hover/picture.ts`, with the colours of the stock. */
export interface SamplePicture {
  readonly look: { readonly face: string; readonly edge: string; readonly engraved: string };
  readonly size: { readonly width: number; readonly height: number };
  readonly paths: readonly { readonly use: 'material' | 'engrave' | 'score'; readonly data: string }[];
}

export type ToSamplesPage =
  | { readonly type: 'samples'; readonly samples: readonly SampleCard[] }
  | { readonly type: 'picture'; readonly fileName: string; readonly picture: SamplePicture };

export type FromSamplesPage =
  | { readonly type: 'ready' }
  | { readonly type: 'open'; readonly fileName: string }
  | { readonly type: 'insert'; readonly fileName: string };
