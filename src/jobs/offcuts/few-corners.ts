/**
 * An outline of few corners within another: what somebody draws on the wood with a ruler, and saws.
 *
 * Corner after corner is taken away, always where that loses the least, and each step cuts off one triangle or rectangle that lies wholly within,
 * so the outline stays within the one before. This is done twice: with edges of any direction, and with upright and level ones alone. Of all outlines on
 * the way the one is taken whose corners are worth it.
 */

import { difference } from '../../geometry/clipper.ts';
import { area, boundsOf, boxRing, distance, ringArea } from '../../geometry/measure.ts';
import { partsOf } from '../../geometry/parts.ts';
import type { Point, Region, Ring } from '../../geometry/types.ts';

/** What a corner more must keep: this share of the wood, or so many mm² of a large piece (our own judgement, as to what a cut with a saw is worth). */
const worth = { share: 0.03, mm2: 500 } as const;
/** An edge that is neither upright nor level, which no square helps to draw, must keep this share of what a corner must (our own judgement). */
const slantingShare = 0.25;

/** More than so many are never kept, and four for each hole, but where no fewer are found (our own judgement). */
const most = { outline: 8, hole: 4 } as const;

/** Material is to the left of every ring. */
export function withFewCorners(region: Region): Region {
  const whole = area(region);
  const corner = Math.min(worth.share * whole, worth.mm2);
  const costOf = (rings: Region) =>
    whole - area(rings) + (cornersOf(rings) + slantingShare * slantingIn(rings).length) * corner;
  const all = [...outlinesWithin(region, stepsAt), ...outlinesWithin(squared(region), squareStepsAt)];
  const few = all.filter((each) => cornersOf(each) <= most.outline + most.hole * (each.length - 1));
  const fewest = (): Region[] => [all.reduce((best, each) => (cornersOf(each) < cornersOf(best) ? each : best))];
  return (few.length > 0 ? few : fewest()).reduce((best, each) => (costOf(each) < costOf(best) ? each : best));
}

function cornersOf(region: Region): number {
  return region.reduce((sum, { length }) => sum + length, 0);
}

/** From the outline given to one from which no corner can be taken any more. */
function* outlinesWithin(region: Region, steps: (ring: Ring, at: number) => Step[]): Generator<Region> {
  let rings = region;
  for (;;) {
    if (rings.length > 0) yield rings;
    const possible = rings
      .filter(({ length }) => length > 3)
      .flatMap((ring) => ring.flatMap((_, at) => steps(ring, at)));
    possible.sort((one, other) => one.loss - other.loss);
    const step = possible.find(({ lost }) => isClear(lost, rings));
    if (!step) return;
    const { ring, from, count, put } = step;
    rings = rings.map((each) => (each === ring ? replaced(ring, from, count, put) : each));
  }
}

/** `count` corners of a ring, beginning at the one numbered `from`, give way to `put`. */
interface Step {
  readonly ring: Ring;
  readonly from: number;
  readonly count: number;
  readonly put: readonly Point[];
  readonly lost: Ring;
  /** In mm². */
  readonly loss: number;
}

/** Corners in turn, from the one numbered `at`. */
function cornersFrom(ring: Ring, at: number): Ring {
  return Array.from({ length: 5 }, (_, i) => ring[(at + i) % ring.length]!);
}

/**
 * Takes one corner away: one that juts out is cut off by its chord, and an edge goes where the edges beside it meet, or one of them and
 * the edge beyond, inside.
 */
function stepsAt(ring: Ring, at: number): Step[] {
  const [a, b, c, d] = cornersFrom(ring, at) as [Point, Point, Point, Point];
  const step = (count: number, put: readonly Point[], lost: Ring): Step => {
    return { ring, from: (at + 1) % ring.length, count, put, lost, loss: Math.abs(ringArea(lost)) };
  };
  const [atB, atC] = [ringArea([a, b, c]), ringArea([b, c, d])];
  if (atB >= 0) {
    const cut = step(1, [], [a, b, c]);
    const meet = atC < 0 ? meeting(d, c, a, b) : undefined;
    return meet && isBetween(meet, a, b) ? [cut, step(2, [meet], [meet, b, c])] : [cut];
  }
  const meet = meeting(a, b, d, c);
  if (!meet || shareOf(a, b, meet) <= 1) return [];
  const isInside = atC >= 0 ? isBetween(meet, c, d) : shareOf(d, c, meet) > 1;
  return isInside ? [step(2, [meet], [b, meet, c])] : [];
}

/** Takes two corners away, or four at once: what juts out beyond the next level is cut off along it. */
function squareStepsAt(ring: Ring, at: number): Step[] {
  const [z, a, b, c, d] = cornersFrom(ring, at) as [Point, Point, Point, Point, Point];
  const [atA, atB, atC] = [ringArea([z, a, b]), ringArea([a, b, c]), ringArea([b, c, d])];
  if (ring.length < 6 || atB <= 0 || (atA > 0 && atC > 0)) return [];
  const step = (from: number, count: number, put: readonly Point[], lost: Ring): Step => {
    return { ring, from: (at + from) % ring.length, count, put, lost, loss: Math.abs(ringArea(lost)) };
  };
  // By how much the edge before, or the one after, is longer than what is cut off along it.
  const [before, after] = [distance(z, a) - distance(b, c), distance(c, d) - distance(a, b)];
  if (atA > 0 && Math.abs(before) <= levelMm) return [step(0, 4, [], [z, a, b, c])];
  if (atC > 0 && Math.abs(after) <= levelMm) return [step(1, 4, [], [a, b, c, d])];
  if ((atA > 0 && before < 0) || (atC > 0 && after < 0)) return [];
  const put = { x: a.x + c.x - b.x, y: a.y + c.y - b.y };
  return [step(1, 3, [put], [a, b, c, put])];
}

/** Slanting edges are boxed in pieces of this length at least, in mm, and all of them in about so many: where they end, which is what matters, a box ends too. */
const slant = { leastMm: 2, pieces: 200 } as const;
/** Edges that are off the level by no more than this are level, in mm: by rounding to the grid of regions. */
const levelMm = 2e-5;

function slantingIn(region: Region): { readonly from: Point; readonly to: Point }[] {
  return region.flatMap((ring) =>
    ring.flatMap((from, i) => {
      const to = ring[(i + 1) % ring.length]!;
      return Math.min(Math.abs(to.x - from.x), Math.abs(to.y - from.y)) > levelMm ? [{ from, to }] : [];
    }),
  );
}

/** All of the largest part with upright and level edges alone. */
function squared(region: Region): Region {
  const slanting = slantingIn(region);
  const length = slanting.reduce((sum, { from, to }) => sum + distance(from, to), 0);
  const piece = Math.max(slant.leastMm, length / slant.pieces);
  const boxes = slanting.flatMap(({ from, to }) => {
    const count = Math.ceil(distance(from, to) / piece);
    const at = (share: number) => ({ x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) });
    return Array.from({ length: count }, (_, k) => boxRing(boundsOf([[at(k / count), at((k + 1) / count)]])!));
  });
  const [largest = []] = partsOf(
    difference(
      region,
      boxes.map((box) => [box]),
    ),
  ).sort((one, other) => area(other) - area(one));
  return largest;
}

function replaced(ring: Ring, from: number, count: number, put: readonly Point[]): Ring {
  const turned = [...ring.slice(from), ...ring.slice(0, from)];
  return [...put, ...turned.slice(count)];
}

/** Where two lines, through two points each, cross. */
function meeting(a: Point, b: Point, c: Point, d: Point): Point | undefined {
  const [ux, uy] = [b.x - a.x, b.y - a.y];
  const [vx, vy] = [d.x - c.x, d.y - c.y];
  const cross = ux * vy - uy * vx;
  if (Math.abs(cross) < 1e-9) return undefined;
  const along = ((c.x - a.x) * vy - (c.y - a.y) * vx) / cross;
  return { x: a.x + along * ux, y: a.y + along * uy };
}

/** How far along the way from one point to another a third lies, as a share. */
function shareOf(from: Point, to: Point, point: Point): number {
  const [ux, uy] = [to.x - from.x, to.y - from.y];
  return ((point.x - from.x) * ux + (point.y - from.y) * uy) / (ux * ux + uy * uy);
}

function isBetween(point: Point, from: Point, to: Point): boolean {
  const share = shareOf(from, to, point);
  return share > 0 && share < 1;
}

/** Whether no corner lies within what is lost or on its edge but at its corners, so that no edge passes through it either. `lost` is convex. */
function isClear(lost: Ring, region: Region): boolean {
  const isCorner = (point: Point) => lost.some(({ x, y }) => x === point.x && y === point.y);
  const way = Math.sign(ringArea(lost));
  const isWithin = (point: Point) =>
    lost.every((from, i) => way * ringArea([from, lost[(i + 1) % lost.length]!, point]) >= -1e-9);
  return region.every((ring) => ring.every((point) => isCorner(point) || !isWithin(point)));
}
