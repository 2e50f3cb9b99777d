/**
 * What pull a piece bears at its hanger before it breaks: an estimate, with its caution, never a promise.
 *
 * Each section breaks at F = strength × thickness × its effective width (`sections.ts`); the weakest decides. Nobody states
 * which way the grain of a tag runs, and a tag's sections lie every way, so the weaker of along and across counts. Where one of
 * the two is not published, so is the estimate: across the grain wood bears about a twentieth of what it bears along it, so
 * a figure for along the grain alone would mislead.
 *
 * Forces in N, lengths in mm, strengths in MPa.
 */

import type { Stock } from '../spec/model.ts';
import type { Piece, PlacedHanger } from '../tag/tag.ts';
import { materialOf } from './materials.ts';
import type { Material } from './materials.ts';
import type { Section } from './section.ts';
import { sectionsOf } from './sections.ts';

/** With the grain along the pull, or across it. */
export type Grain = 'along' | 'across';

/** A section and what it bears. */
export interface LoadSection extends Section {
  /** At which it breaks by the published figures as they stand; absent where those are not published. */
  readonly newtons: Readonly<Partial<Record<Grain, number>>>;
  /** The weaker of the two after the knock-downs; absent where either is. */
  readonly bears?: number;
  /** Which of the two that is; absent where the material has no grain, or shear does not depend on it here. */
  readonly weaker?: Grain;
}

interface Judged {
  /** The weakest first. */
  readonly sections: readonly LoadSection[];
  readonly material?: Material;
  readonly thicknessMm?: number;
}

export type LoadEstimate =
  | (Judged & {
      readonly kind: 'bears';
      readonly material: Material;
      readonly thicknessMm: number;
      readonly weakest: LoadSection;
      /** A pull of seconds or minutes. */
      readonly shortPull: number;
      /** Left hanging for ten years; absent where no effect of time is published. */
      readonly hanging?: number;
    })
  /** `weakest` is the section that would break first if its material had one strength every way. */
  | (Judged & { readonly kind: 'unknown'; readonly reason: string; readonly weakest: LoadSection })
  /** `open`: the tie slips out. `loose`: the hanger is not joined to most of the piece. */
  | (Judged & { readonly kind: 'nothing'; readonly fault: 'open' | 'loose' });

/** Five pieces in a hundred are weaker than this many standard deviations below the mean (normal distribution). */
const fifthPercentile = 1.645;

/**
 * The share of the published mean that 95 of 100 pieces reach. Coefficients of variation of clear wood: bending 16 %, shear
 * 14 %, tension across the grain 25 % (Wood Handbook table 5-6, from memory). Acrylic is published as minima: none is taken off.
 */
export const woodScatter = {
  bending: 1 - fifthPercentile * 0.16,
  shear: 1 - fifthPercentile * 0.14,
  tensionAcross: 1 - fifthPercentile * 0.25,
} as const;

/** What char and small notches leave of wood at the edges of a cut, and heat and crazing of acrylic. Our judgement, no source. */
export const cutEdge = { wood: 0.8, plastic: 0.5 } as const;

/**
 * The share of its strength in a short test that wood bears for a time (s): 18.3 + 108.4·t^−0.0464 % (the "Madison curve", Wood
 * 1951, as given in Forests 12(9):1148, 2021). A short pull gets no bonus for being shorter than the test.
 */
export function loadDuration(seconds: number): number {
  return Math.min(1, (18.3 + 108.4 * seconds ** -0.0464) / 100);
}

export const tenYearsSeconds = 10 * 365.25 * 24 * 3600;

/** A strength as published, and the share of it to be relied on. */
interface Strength {
  readonly mean?: number | undefined;
  readonly share: number;
}

/**
 * `undefined` for a piece without a hanger. Of two hangers the weaker, as if it bore all: how the pull is shared hangs on how the
 * tag is tied. Dear only for a region not seen before.
 */
export function estimateLoad(piece: Piece, stock: Stock): LoadEstimate | undefined {
  const estimates = piece.hangers.map((hanger) => estimateFor(hanger, piece, stock));
  const bad = estimates.find(({ kind }) => kind !== 'bears');
  return (
    bad ??
    estimates.reduce<LoadEstimate | undefined>((least, each) => (bears(each) < bears(least) ? each : least), undefined)
  );
}

function bears(estimate: LoadEstimate | undefined): number {
  return estimate?.kind === 'bears' ? estimate.shortPull : Infinity;
}

function estimateFor(hanger: PlacedHanger, piece: Piece, stock: Stock): LoadEstimate {
  const { list, fault } = sectionsOf(piece, hanger);
  const material = stock.material === undefined ? undefined : materialOf(stock.material);
  const { thickness } = stock;
  const common = {
    ...(material ? { material } : {}),
    ...(thickness === undefined ? {} : { thicknessMm: thickness }),
  };
  if (fault) return { ...common, kind: 'nothing', fault, sections: [] };
  const sections = list.map((section) => judge(section, material, thickness)).sort(weakestFirst);
  const weakest = sections[0]!;
  const reason = whyUnknown(stock, material, sections);
  if (reason !== undefined || !material || thickness === undefined || weakest.bears === undefined)
    return { ...common, kind: 'unknown', reason: reason ?? 'the strength is not known', sections, weakest };
  const hanging = material.kind === 'wood' ? { hanging: weakest.bears * loadDuration(tenYearsSeconds) } : {};
  return {
    kind: 'bears',
    material,
    thicknessMm: thickness,
    sections,
    weakest,
    shortPull: weakest.bears,
    ...hanging,
  };
}

function judge(section: Section, material: Material | undefined, thickness: number | undefined): LoadSection {
  if (!material || thickness === undefined) return { ...section, newtons: {} };
  const { along, across } = strengthsOf(section, material);
  const pull = ({ mean }: Strength) => mean && mean * thickness * section.effectiveMm;
  const [a, b] = [pull(along), pull(across)];
  const newtons = { ...(a === undefined ? {} : { along: a }), ...(b === undefined ? {} : { across: b }) };
  if (a === undefined || b === undefined) return { ...section, newtons };
  const bears = Math.min(a * along.share, b * across.share);
  if (along === across) return { ...section, newtons, bears };
  return { ...section, newtons, bears, weaker: bears < a * along.share ? 'across' : 'along' };
}

/**
 * Wood in tension along the grain has few published figures; its strength in bending is a low estimate of it (Wood Handbook,
 * from memory). Wood is published in shear along the grain, where it is weaker than across, so that serves for both.
 */
function strengthsOf({ what }: Section, material: Material): Record<Grain, Strength> {
  const { kind, bending, tension, tensionAcross, shear } = material;
  if (kind === 'plywood') return { along: { share: 1 }, across: { share: 1 } };
  const edge = cutEdge[kind];
  if (what === 'tear-out') {
    const either = { mean: shear, share: edge * (kind === 'wood' ? woodScatter.shear : 1) };
    return { along: either, across: either };
  }
  if (kind === 'plastic') {
    const either = { mean: tension, share: edge };
    return { along: either, across: either };
  }
  return {
    along: { mean: bending, share: edge * woodScatter.bending },
    across: { mean: tensionAcross, share: edge * woodScatter.tensionAcross },
  };
}

/** By what they bear; without that, by width, tear-outs last: material is stronger in shear than across its grain. */
function weakestFirst(a: LoadSection, b: LoadSection): number {
  if (a.bears !== undefined && b.bears !== undefined) return a.bears - b.bears;
  return Number(a.what === 'tear-out') - Number(b.what === 'tear-out') || a.effectiveMm - b.effectiveMm;
}

function whyUnknown(
  { material: name, thickness }: Stock,
  material: Material | undefined,
  sections: readonly LoadSection[],
): string | undefined {
  if (name === undefined) return 'no material is given under stock';
  if (!material) return `no published strength is known for “${name}”`;
  if (material.bending === undefined) return `no strength of ${material.name} is published`;
  if (sections.some(({ what, bears }) => what !== 'tear-out' && bears === undefined) && thickness !== undefined)
    return `the strength of ${material.name} across its grain is not published`;
  return thickness === undefined ? 'no thickness is given under stock' : undefined;
}
