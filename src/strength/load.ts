/**
 * The load that a piece bears at its hanger before it breaks: an estimate, with its caution, never a promise.
 *
 * Each section breaks at F = strength × thickness × its effective width (`sections.ts`); the weakest decides. The
 * direction of a tag's grain is not known, and its sections run in every direction, so the weaker of along and across
 * the grain counts. If one of the two is not published, there is no estimate: across the grain wood bears about a
 * twentieth of what it bears along it, so a figure for along the grain alone would mislead.
 *
 * Crushing under the tie, the remaining way in which handbooks let a lug fail, is not counted: the tie bites in and
 * lies the better for it, and wood crushes at no less than it tears across its grain (Wood Handbook, table 5-3a, from
 * memory).
 *
 * Forces in N, lengths in mm.
 */

import type { Measured, Stock } from '../spec/model/workshop-model.ts';
import type { Piece, PlacedHanger } from '../tag/tag.ts';
import type { Grain, Material } from './material.ts';
import { cutEdge, resistancesOf } from './resistance.ts';
import type { Basis, Resistance, ResistanceResult } from './resistance.ts';
import type { Section } from './section.ts';
import { sectionsOf } from './sections.ts';

/** A section and the load it bears. */
export interface LoadSection extends Section {
  /** Load at which it breaks by the figures alone, with the grain along or across the stress; absent if unpublished. */
  readonly newtons: Readonly<Partial<Record<Grain, number>>>;
  /** The weaker of the two after deductions; absent if either is. */
  readonly bears?: number;
  /**
   * Direction of the grain relative to the pull in the weaker case; absent if the material has no grain, or shear does
   * not depend on it here.
   */
  readonly weaker?: Grain;
  /** The basis of the weaker figure, and the share of it that is relied on. */
  readonly by?: { readonly basis: Basis; readonly share: number };
}

interface JudgedSections {
  /** How many hangers there are, each of which bears as much at least. */
  readonly hangers: number;
  /** Weakest first. */
  readonly sections: readonly LoadSection[];
  readonly material?: Material;
  readonly thicknessMm?: number;
  readonly measured?: Measured;
  readonly brokenAlong?: Measured;
}

export type LoadEstimate =
  | (JudgedSections & {
      readonly kind: 'bears';
      readonly weakest: LoadSection;
      /** Load for seconds or minutes. */
      readonly shortPull: number;
      /** Load for ten years; absent if no effect of time is published. */
      readonly hanging?: number;
    })
  /** `weakest` is the section that would break first if the material were equally strong in all directions. */
  | (JudgedSections & { readonly kind: 'unknown'; readonly reason: string; readonly weakest: LoadSection })
  /** `open`: the tie slips out. `loose`: the hanger is not joined to most of the piece. */
  | (JudgedSections & { readonly kind: 'nothing'; readonly fault: 'open' | 'loose' });

/**
 * The estimate; `undefined` for a piece without a hanger. With two hangers the weaker decides, as if it bore the whole
 * load: how the load is shared depends on how the tag is tied. Only expensive for a region not seen before.
 */
export function estimateLoad(piece: Piece, stock: Stock): LoadEstimate | undefined {
  const estimates = piece.hangers.map((hanger) => estimateFor(hanger, piece, stock));
  const bad = estimates.find(({ kind }) => kind !== 'bears');
  return (
    bad ??
    estimates.reduce<LoadEstimate | undefined>(
      (least, each) => (bearableNewtons(each) < bearableNewtons(least) ? each : least),
      undefined,
    )
  );
}

function bearableNewtons(estimate: LoadEstimate | undefined): number {
  return estimate?.kind === 'bears' ? estimate.shortPull : Infinity;
}

function estimateFor(hanger: PlacedHanger, piece: Piece, stock: Stock): LoadEstimate {
  const { list, fault } = sectionsOf(piece, hanger);
  const resistances = resistancesOf(stock);
  const { material, unknown, brokenAlong } = resistances;
  const { thickness, measured } = stock;
  const common = {
    hangers: piece.hangers.length,
    ...(material ? { material } : {}),
    ...(thickness === undefined ? {} : { thicknessMm: thickness }),
    ...(measured ? { measured } : {}),
    ...(brokenAlong ? { brokenAlong } : {}),
  };
  if (fault) return { ...common, kind: 'nothing', fault, sections: [] };
  const sections = list.map((section) => judgeSection(section, resistances)).sort(weakestFirst);
  const weakest = sections[0]!;
  if (unknown !== undefined || weakest.bears === undefined)
    return { ...common, kind: 'unknown', reason: unknown ?? 'the strength is not known', sections, weakest };
  const hanging = hangingLoad(sections, weakest.bears, material, thickness);
  return {
    ...common,
    kind: 'bears',
    sections,
    weakest,
    shortPull: weakest.bears,
    ...(hanging === undefined ? {} : { hanging }),
  };
}

function judgeSection(section: Section, resistances: ResistanceResult): LoadSection {
  const { what, effectiveMm } = section;
  const isTorn = what === 'tear-out';
  const [along, across] = isTorn ? [resistances.shear, resistances.shear] : [resistances.along, resistances.across];
  const isAtHole = what === 'wall' || what === 'strap';
  const crowding = (grain: Grain) => (isAtHole && resistances.material?.holeGrain?.[grain].value) || 1;
  const pull = (grain: Grain, resistance?: Resistance) =>
    resistance && (resistance.newtonsPerMm * effectiveMm) / crowding(grain);
  const [a, b] = [pull('along', along), pull('across', across)];
  const newtons = { ...(a === undefined ? {} : { along: a }), ...(b === undefined ? {} : { across: b }) };
  if (a === undefined || b === undefined || !along || !across) return { ...section, newtons };
  const isAcross = b * across.share < a * along.share;
  const { share, basis } = isAcross ? across : along;
  const judged = { ...section, newtons, bears: (isAcross ? b : a) * share, by: { share, basis } };
  if (along === across) return judged;
  // The strip ahead is bent, so its stress runs across the pull.
  return { ...judged, weaker: isAcross === (what !== 'strap') ? 'across' : 'along' };
}

/** The load for ten years. A limit applies to the stress of a lasting load, wherever the section is torn or bent. */
function hangingLoad(
  sections: readonly LoadSection[],
  shortPull: number,
  material: Material | undefined,
  thickness: number | undefined,
): number | undefined {
  const lasting = material?.lasting;
  if (!material || !lasting) return undefined;
  if (lasting.is === 'share') return shortPull * lasting.value;
  if (thickness === undefined) return undefined;
  const widths = sections.filter(({ what }) => what !== 'tear-out').map(({ effectiveMm }) => effectiveMm);
  return Math.min(shortPull, lasting.value * cutEdge[material.kind] * thickness * Math.min(...widths));
}

/** Order by load or, if unknown, by width with tear-outs last: material is stronger in shear than across its grain. */
function weakestFirst(a: LoadSection, b: LoadSection): number {
  if (a.bears !== undefined && b.bears !== undefined) return a.bears - b.bears;
  return Number(a.what === 'tear-out') - Number(b.what === 'tear-out') || a.effectiveMm - b.effectiveMm;
}
