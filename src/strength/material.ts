/** Properties of a material, each figure with its source. What is not published is absent, never 0. */

export interface SourcedValue {
  readonly value: number;
  readonly source: string;
  /** `seen` means in a copy of the source, or of a work that quotes it. */
  readonly known: 'seen' | 'from memory' | 'our own judgement';
}

/** In MPa. */
export interface Strength extends SourcedValue {
  /** Share of it that 95 of 100 pieces reach: 1 for minima and for characteristic values. */
  readonly share: number;
}

/** Strengths in the plane of the sheet. `along` and `across` are the same object if there is no grain. */
export interface Strengths {
  readonly along?: Strength;
  readonly across?: Strength;
  readonly shear?: Strength;
}

/** Direction of the pull relative to the grain. */
export type Grain = 'along' | 'across';

export interface Material {
  readonly name: string;
  readonly kind: 'wood' | 'plywood' | 'fibreboard' | 'plastic' | 'leather' | 'other';
  /** kg/m³. */
  readonly density: SourcedValue;
  /** Strengths of a sheet of a given thickness; absent, or `undefined` for that thickness, if none is published. */
  readonly strengths?: (thicknessMm: number) => Strengths | undefined;
  /** Factor on the stress beside a hole over that in a sheet without grain, by direction of the grain. */
  readonly holeGrain?: Readonly<Record<Grain, SourcedValue>>;
  /** Remaining strength under a lasting load: a share of it, or a stress (MPa) that must not be exceeded. */
  readonly lasting?: SourcedValue & { readonly is: 'share' | 'limit' };
  /** An assumption made because the name does not say. */
  readonly assumed?: string;
}

/** The source of a figure, with how it is known: for the guide's page of sources. */
export function sourceOf({ source, known }: SourcedValue): string {
  return known === 'seen' ? source : `${source}, ${known}`;
}
