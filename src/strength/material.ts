/** What is known of a material, each figure with where it is from. What is not published is absent, never 0. */

export interface SourcedValue {
  readonly value: number;
  readonly source: string;
  /** `seen`: in a copy of the source, or in one of what quotes it. */
  readonly known: 'seen' | 'from memory' | 'our own judgement';
}

/** In MPa. */
export interface Strength extends SourcedValue {
  /** How much of it 95 of 100 pieces reach: 1 for minima and for characteristic values. */
  readonly share: number;
}

/** In the plane of the sheet. `along` and `across` the grain are one and the same where there is none. */
export interface Strengths {
  readonly along?: Strength;
  readonly across?: Strength;
  readonly shear?: Strength;
}

/** With the grain along the pull, or across it. */
export type Grain = 'along' | 'across';

export interface Material {
  readonly name: string;
  readonly kind: 'wood' | 'plywood' | 'fibreboard' | 'plastic' | 'leather' | 'other';
  /** kg/m³. */
  readonly density: SourcedValue;
  /** Of a sheet so many mm thick; absent, or `undefined` for that thickness, where no strength is published. */
  readonly strengths?: (thicknessMm: number) => Strengths | undefined;
  /** How many times the stress beside a hole is that of a sheet without grain, by the way the grain runs. */
  readonly holeGrain?: Readonly<Record<Grain, SourcedValue>>;
  /** What is left of a strength when the pull lasts: a share of it, or a stress (MPa) that must not be exceeded. */
  readonly lasting?: SourcedValue & { readonly is: 'share' | 'limit' };
  /** What has been assumed of it because its name does not say. */
  readonly assumed?: string;
}

/** Where a figure is from, for people. */
export function sourceOf({ source, known }: SourcedValue): string {
  return known === 'seen' ? source : `${source}, ${known}`;
}
