/** The sections at which the material round an opening would break. */

import type { Point, Region } from '../geometry/types.ts';
import { crossings, pointAt } from './line-stretches.ts';
import type { Interval } from './line-stretches.ts';
import { closePinFactor, looseTie, nearEndFactor, slotEndFactor } from './loaded-hole.ts';
import type { Chord } from './parting.ts';
import type { Pull, Section } from './section.ts';

/** Parallel lines across the opening, as shares of half its width; the outermost only just meet it. */
const shares = [-0.9, -0.75, -0.6, -0.45, -0.3, -0.15, 0, 0.15, 0.3, 0.45, 0.6, 0.75, 0.9];
/** Clipping rounds, so the opening and the hole in the region may differ by this much. */
const roundingMm = 0.001;

interface OpeningWall {
  readonly widthMm: number;
  readonly ends: Chord;
}

/** The least material beyond the opening on one side, along lines in that direction. */
function wall({ island, hanger: { opening }, centre }: Pull, direction: Point): OpeningWall {
  const side = { x: direction.y, y: -direction.x };
  const [from, to] = extent(opening, centre, side);
  let least: OpeningWall = { widthMm: Infinity, ends: [centre, centre] };
  for (const share of shares) {
    const origin = pointAt(centre, side, (from + to) / 2 + (share * (to - from)) / 2);
    const rim = crossings(opening, origin, direction).at(-1) ?? 0;
    const [start = rim, end = rim] = crossings(island, origin, direction).filter((at) => at > rim - roundingMm);
    if (end - start >= least.widthMm) continue;
    least = { widthMm: end - start, ends: [pointAt(origin, direction, start), pointAt(origin, direction, end)] };
  }
  return least;
}

export function extent(region: Region, centre: Point, direction: Point): Interval {
  const along = region.flat().map(({ x, y }) => (x - centre.x) * direction.x + (y - centre.y) * direction.y);
  return [Math.min(...along), Math.max(...along)];
}

/**
 * Both walls beside the opening, torn by the stress at its rim. If the opening is off-centre the thinner wall counts
 * twice, as it would break first. The effective width is that of the opening over the factor on its bearing stress, so
 * it stays bounded however wide the sheet is.
 */
export function walls(pull: Pull): Section {
  const { hanger, centre, right, up } = pull;
  const sides = [wall(pull, right), wall(pull, { x: -right.x, y: -right.y })] as const;
  const thinner = sides[0].widthMm <= sides[1].widthMm ? sides[0] : sides[1];
  const totalMm = 2 * thinner.widthMm;
  const [from, to] = extent(hanger.opening, centre, right);
  const acrossMm = to - from;
  const ahead = wall(pull, up).widthMm;
  const factor =
    looseTie *
    closePinFactor(acrossMm / (acrossMm + totalMm)) *
    (hanger.kind === 'slot'
      ? slotEndFactor(acrossMm, hanger.openingSize)
      : nearEndFactor(ahead + acrossMm / 2, acrossMm));
  return { what: 'wall', ...thinner, totalMm, count: 2, offLineMm: 0, effectiveMm: acrossMm / factor };
}

/**
 * Two planes of shear, each as long as the least material ahead of the opening: 2·(e − d/2)·t·τ with e from the centre
 * of the hole to the edge. Conservative: the planes really start further back.
 */
export function tearOut(pull: Pull): Section {
  const ahead = wall(pull, pull.up);
  const totalMm = 2 * ahead.widthMm;
  return { what: 'tear-out', ...ahead, totalMm, count: 2, offLineMm: 0, effectiveMm: totalMm };
}

/**
 * The strip ahead of the opening as a beam clamped at both ends with a thin tie at its middle: M = F·L/8, so the stress
 * 6·M/(t·h²) is 3·F·L/(4·t·h²) (beam formulas, exact). Ahead of a round hole this stands for splitting at the end, the
 * fourth way in which handbooks let a lug fail. At the ends of a slot the stress of the walls is added, which is also
 * greatest there.
 */
export function strap(pull: Pull, beside: Section): Section {
  const ahead = wall(pull, pull.up);
  const [from, to] = extent(pull.hanger.opening, pull.centre, pull.right);
  const bentMm = (4 * ahead.widthMm ** 2) / (3 * (to - from));
  const effectiveMm = pull.hanger.kind === 'slot' ? 1 / (1 / bentMm + 1 / beside.effectiveMm) : bentMm;
  return { what: 'strap', ...ahead, totalMm: ahead.widthMm, count: 1, offLineMm: 0, effectiveMm };
}
