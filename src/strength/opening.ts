/** Where the material round an opening would break. */

import type { Point, Region } from '../geometry/types.ts';
import { crossings, pointAt } from './lines.ts';
import type { Stretch } from './lines.ts';
import type { Chord } from './parting.ts';
import type { Pull, Section } from './section.ts';

/** Lines beside each other across the opening, as shares of half its width; the outermost barely meet it. */
const shares = [-0.9, -0.75, -0.6, -0.45, -0.3, -0.15, 0, 0.15, 0.3, 0.45, 0.6, 0.75, 0.9];
/** Clipping rounds, so that the opening and the hole it leaves may differ by a little. */
const roundingMm = 0.001;

interface Wall {
  readonly widthMm: number;
  readonly ends: Chord;
}

/** The least material beyond the opening on one side, along lines in that direction. */
function wall({ island, hanger: { opening }, centre }: Pull, direction: Point): Wall {
  const side = { x: direction.y, y: -direction.x };
  const [from, to] = extent(opening, centre, side);
  let least: Wall = { widthMm: Infinity, ends: [centre, centre] };
  for (const share of shares) {
    const origin = pointAt(centre, side, (from + to) / 2 + (share * (to - from)) / 2);
    const rim = crossings(opening, origin, direction).at(-1) ?? 0;
    const [start = rim, end = rim] = crossings(island, origin, direction).filter((at) => at > rim - roundingMm);
    if (end - start >= least.widthMm) continue;
    least = { widthMm: end - start, ends: [pointAt(origin, direction, start), pointAt(origin, direction, end)] };
  }
  return least;
}

export function extent(region: Region, centre: Point, direction: Point): Stretch {
  const along = region.flat().map(({ x, y }) => (x - centre.x) * direction.x + (y - centre.y) * direction.y);
  return [Math.min(...along), Math.max(...along)];
}

/** The pull is shared by two walls; the thinner one counts twice, for it would go first. */
export function walls(pull: Pull): Section {
  const sides = [wall(pull, pull.right), wall(pull, { x: -pull.right.x, y: -pull.right.y })] as const;
  const thinner = sides[0].widthMm <= sides[1].widthMm ? sides[0] : sides[1];
  const [from, to] = extent(pull.hanger.opening, pull.centre, pull.right);
  const totalMm = 2 * thinner.widthMm;
  const concentration = holeFactor(to - from, totalMm, pull.hanger.openingSize);
  const effectiveMm = totalMm / concentration;
  return { what: 'wall', ...thinner, totalMm, count: 2, offLineMm: 0, effectiveMm };
}

/**
 * How much the stress at the rim of a hole of diameter d exceeds the mean stress beside it, in a strip as wide as the hole and
 * both walls: 3 − 3.13·x + 3.66·x² − 1.53·x³ with x = d/D (Roark's Formulas for Stress and Strain, table 17.1: round central
 * hole, strip in tension). A slot with ends of radius ρ and half-length a across the pull raises it as an ellipse of that
 * radius does, by (1 + 2·√(a/ρ))/3 (Inglis 1913; that it may be multiplied with the former is our judgement).
 */
export function holeFactor(acrossMm: number, wallsMm: number, endsMm: number): number {
  const x = acrossMm / (acrossMm + wallsMm);
  const round = 3 - 3.13 * x + 3.66 * x ** 2 - 1.53 * x ** 3;
  return (round * (1 + 2 * Math.sqrt(Math.max(1, acrossMm / endsMm)))) / 3;
}

/**
 * Two planes of shear, each as long as the least material ahead of the opening: 2·(e − d/2)·t·τ with e from the centre of
 * the hole to the edge. Conservative: the planes really start further back.
 */
export function tearOut(pull: Pull): Section {
  const ahead = wall(pull, pull.up);
  const totalMm = 2 * ahead.widthMm;
  return { what: 'tear-out', ...ahead, totalMm, count: 2, offLineMm: 0, effectiveMm: totalMm };
}

/**
 * The strip ahead of a slot as a beam clamped at both ends, the pull spread along it: M = F·L/12 at the ends, so the stress
 * 6·M/(t·h²) is F·L/(2·t·h²) (textbook, from memory). None for round openings, where the strip is too short to bend.
 */
export function straps(pull: Pull): Section[] {
  if (pull.hanger.kind !== 'slot') return [];
  const ahead = wall(pull, pull.up);
  const [from, to] = extent(pull.hanger.opening, pull.centre, pull.right);
  const effectiveMm = (2 * ahead.widthMm ** 2) / (to - from);
  return [{ what: 'strap', ...ahead, totalMm: ahead.widthMm, count: 1, offLineMm: 0, effectiveMm }];
}
