/** What the list of samples and its page say to each other. */

export interface SampleCard {
  readonly fileName: string;
  readonly title: string;
  readonly purpose: string;
}

/** As in `language/picture.ts`. */
export interface SamplePicture {
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
