/** Members of a stack whose ends are points or shafts: there is no corner to hide, and they are joined as wide as they come. */

import { intersection, union } from '../../geometry/clipper.ts';
import { area, boundsOf, boxRing } from '../../geometry/measure.ts';
import type { Region } from '../../geometry/types.ts';
import { abuttedRegion, depthOf, endOf, isVertical, sharpEndMm } from './stack-ends.ts';
import type { StackDirection } from './stack-ends.ts';

/** The end of a member beyond where it is as wide as the whole: widths and depth in mm. */
export interface End {
  readonly depth: number;
  /** Of the member, of where its end begins, and of where it ends. */
  readonly whole: number;
  readonly base: number;
  readonly tip: number;
}

/** An end that begins narrower than this is a shaft or a barb, not a round corner; so is one as deep and as straight as these (our own judgement). */
const steppedShare = 0.7;
const straightShare = 0.9;
const deepShare = 0.1;

/** A tip that is no wider, in mm and as a share of its base, is a point. */
const pointMm = 0.25;
const pointShare = 0.1;

/** Of the widest joint, what is wide enough. */
const wideEnough = 0.99;

/** Laps that are tried, and halvings between two of them. */
const tried = 48;
const halvings = 14;

/** Lines across the joint at which its width is taken. */
const linesAcross = 10;

/** Thickness of a line, and how far beside a step it lies, in mm. */
const lineMm = 0.004;
const besideMm = 0.01;

export function endSeen(member: Region, side: StackDirection): End {
  const box = boundsOf(member)!;
  const end = endOf(member, side);
  const { minX, maxX, minY, maxY } = boundsOf(end)!;
  const [first, last] = { down: [maxY, minY], up: [minY, maxY], left: [maxX, minX], right: [minX, maxX] }[side] as [
    number,
    number,
  ];
  const inwards = Math.sign(last - first) * besideMm;
  return {
    depth: Math.abs(last - first),
    whole: isVertical(side) ? box.maxX - box.minX : box.maxY - box.minY,
    base: widthAt(end, side, first + inwards),
    tip: widthAt(end, side, last - inwards),
  };
}

/** Whether an end steps in from the width of its member, such as the shaft of an arrow behind its head, or a barb beside its shaft. */
export function isStepped({ depth, whole, base, tip }: End): boolean {
  if (depth < 2 * sharpEndMm) return false;
  return (
    base < steppedShare * whole ||
    (tip > straightShare * base && depth > deepShare * whole && base < straightShare * whole)
  );
}

export function isPointed({ base, tip }: End): boolean {
  return tip < Math.min(pointMm, pointShare * base);
}

/** The least lap at which two members are joined as wide as at any, at most half of either, and a hair more. */
export function jointLap(previous: Region, next: Region, towards: StackDirection): number {
  const before = boundsOf(previous)!;
  const most = Math.min(depthOf(before, towards), depthOf(boundsOf(next)!, towards)) / 2;
  const widthBy = (lap: number): number => jointWidth(previous, abuttedRegion(next, before, towards, lap), towards);
  const laps = Array.from({ length: tried + 1 }, (_, index) => (index / tried) * most);
  const widths = laps.map(widthBy);
  const least = wideEnough * Math.max(...widths);
  const found = widths.findIndex((width) => width >= least);
  let [low, high] = [laps[Math.max(0, found - 1)]!, laps[found]!];
  for (let i = 0; i < halvings && low < high; i++) {
    const middle = (low + high) / 2;
    if (widthBy(middle) >= least) high = middle;
    else low = middle;
  }
  return high + sharpEndMm;
}

/** The least width of both together from just before the second to just beyond the first. */
function jointWidth(previous: Region, next: Region, towards: StackDirection): number {
  const [a, b] = [boundsOf(previous)!, boundsOf(next)!];
  const [from, to] = { down: [a.minY, b.maxY], up: [b.minY, a.maxY], left: [a.minX, b.maxX], right: [b.minX, a.maxX] }[
    towards
  ] as [number, number];
  const [low, high] = [from - besideMm, to + besideMm];
  const both = union([previous, next]);
  return Math.min(
    ...Array.from({ length: linesAcross }, (_, index) =>
      widthAt(both, towards, low + (index / (linesAcross - 1)) * (high - low)),
    ),
  );
}

/** How wide a region is along a line across the axis. */
function widthAt(region: Region, towards: StackDirection, at: number): number {
  const box = boundsOf(region);
  if (!box) return 0;
  const line = isVertical(towards) ? { ...box, minY: at, maxY: at + lineMm } : { ...box, minX: at, maxX: at + lineMm };
  return area(intersection(region, [boxRing(line)])) / lineMm;
}
