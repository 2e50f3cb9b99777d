/** The load per mm of effective width that a stock bears, as measured or published. In N/mm. */

import { isSolidWood } from '../spec/model/min-web-defaults.ts';
import type { Measured, Stock } from '../spec/model/workshop-model.ts';
import { sourceOf } from './material.ts';
import type { Grain, Material, Strength } from './material.ts';
import { materialOf } from './materials.ts';

export interface Resistance {
  /** As published or measured. */
  readonly newtonsPerMm: number;
  /** The share of it that is relied on, after scatter and cut edges. */
  readonly share: number;
  readonly basis: Basis;
}

/** `measured`: a neck of this very stock was broken, which takes precedence over any handbook. */
export type Basis = { readonly source: string } | 'measured';

/** `along` and `across` are the same object if no grain is known. Absent if a strength is not published. */
export interface Resistances extends Readonly<Partial<Record<Grain | 'shear', Resistance>>> {
  readonly material?: Material;
  /** A neck that was broken along the grain, and so says nothing about the weaker direction. */
  readonly brokenAlong?: Measured;
}

export type ResistanceResult = Resistances & { readonly unknown?: string };

/**
 * Share of the strength left at cut edges: char and small notches weaken wood, heat and crazing plastic, shrinking
 * leather. Our own judgement, no source.
 */
export const cutEdge: Readonly<Record<Material['kind'], number>> = {
  wood: 0.8,
  plywood: 0.8,
  fibreboard: 0.8,
  plastic: 0.5,
  leather: 0.5,
  other: 0.5,
};

/**
 * Share of the load one neck bore that 95 of 100 others bear: 1 − 1.645 times 28 % for wood, leather and unknown
 * materials, 15 % for what comes out of a press or a mould. Our own judgement. Its edges were cut, so nothing is
 * deducted for those.
 */
export const measuredShare = { grown: 1 - 1.645 * 0.28, made: 1 - 1.645 * 0.15 } as const;

/**
 * Wood that bears more than this many times its mean strength across the grain was not broken across it; if that is not
 * published, the 6.3 MPa of the strongest wood in the table is used. Our own judgement.
 */
const surelyAlong = 3;
const strongestAcross = 6.3;

/** The resistances of a stock; if the decisive one is not known, `unknown` says why. */
export function resistancesOf(stock: Stock): ResistanceResult {
  const material = stock.material === undefined ? undefined : materialOf(stock.material);
  const published = publishedOf(stock, material);
  const { measured } = stock;
  return {
    ...(material ? { material } : {}),
    ...(measured ? afterMeasuring(measured, stock, published, material) : published),
  };
}

function publishedOf(stock: Stock, material: Material | undefined): ResistanceResult {
  const { material: name, thickness } = stock;
  if (name === undefined) return { unknown: 'no material is given under stock' };
  if (!material) return { unknown: `no published strength is known for “${name}”` };
  if (!material.strengths) return { unknown: `no strength of ${material.name} is known here` };
  if (thickness === undefined) return { unknown: 'no thickness is given under stock' };
  const strengths = material.strengths(thickness);
  if (!strengths) return { unknown: `no strength of ${material.name} of this thickness is known here` };
  const edge = cutEdge[material.kind];
  const each = (strength: Strength): Resistance => ({
    newtonsPerMm: strength.value * thickness,
    share: strength.share * edge,
    basis: { source: strength.known === 'our own judgement' ? sourceOf(strength) : strength.source },
  });
  const { along, across, shear } = strengths;
  const tension = along && each(along);
  return {
    ...(tension ? { along: tension } : {}),
    ...(across ? { across: tension && across === along ? tension : each(across) } : {}),
    ...(shear ? { shear: each(shear) } : {}),
    ...(across ? {} : { unknown: `the strength of ${material.name} across its grain is not published` }),
  };
}

function afterMeasuring(
  measured: Measured,
  { material: name, thickness }: Stock,
  published: ResistanceResult,
  material: Material | undefined,
): ResistanceResult {
  const newtonsPerMm = measured.breaksAt / measured.neck;
  const isGrown = !material || material.kind === 'wood' || material.kind === 'leather';
  const own: Resistance = {
    newtonsPerMm,
    share: isGrown ? measuredShare.grown : measuredShare.made,
    basis: 'measured',
  };
  if (material?.kind === 'wood' || isSolidWood(name)) {
    if (thickness === undefined) return { unknown: 'no thickness is given under stock' };
    const { across } = published;
    if (newtonsPerMm > surelyAlong * (across?.newtonsPerMm ?? strongestAcross * thickness)) {
      const unknown = across ? {} : { unknown: 'the neck was broken along the grain, and the weaker way is not known' };
      return { ...published, ...unknown, along: own, brokenAlong: measured };
    }
  }
  // Any material shears at no less than half of its tension (Tresca's criterion).
  const shear = published.shear ?? { ...own, newtonsPerMm: newtonsPerMm / 2 };
  return { along: own, across: own, shear };
}
