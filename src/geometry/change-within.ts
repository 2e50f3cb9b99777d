/** Booleans with something small, worked out where it is: the rest of a large outline stays as it was. */

import { clippedToBox } from './clip-to-box.ts';
import { boundsOf, widened } from './measure.ts';
import { union, unitsPerMm } from './clipper.ts';
import type { Bounds, Point, Region, Ring } from './types.ts';

/** Widths of the margin round a box, in mm, tried in turn until no point of the outline lies on the sides. */
const marginsMm = [0.02, 0.0271, 0.0363];

/** If more than this share of the points lies in the box, working out the whole is as quick. */
const localShare = 0.6;

/** The union of a region and small parts. */
export function unionNear(whole: Region, parts: readonly Region[]): Region {
  let made = whole;
  for (const part of parts) {
    const box = boundsOf(part);
    if (box) made = changedWithin(made, box, (near) => union([near, part]));
  }
  return made;
}

/**
 * The region after a change that has an effect inside `box` only. `change` gets what lies in and close round the box,
 * perhaps with edges that run back along themselves, and returns it changed, as a region; or gets the whole, if that is
 * as quick or the pieces do not fit together.
 */
export function changedWithin(region: Region, box: Bounds, change: (near: readonly Ring[]) => Region): Region {
  for (const margin of marginsMm) {
    const around = snapped(widened(box, margin));
    const outside = outsideOf(region, around);
    if (!outside) continue;
    const isLocal = outside.inner <= localShare * (outside.inner + outside.outer);
    return (isLocal && joined(outside, change(clippedToBox(region, around)), around)) || change(region);
  }
  return change(region);
}

/** What of a region lies outside a box. */
interface Outside {
  readonly rings: readonly Ring[];
  /** Pieces of rings from the point where they leave the box to the point where they come back. */
  readonly chains: readonly Ring[];
  /** Number of points inside, and outside. */
  readonly inner: number;
  readonly outer: number;
}

/** `undefined` if a point lies on a side of the box. */
function outsideOf(region: Region, box: Bounds): Outside | undefined {
  const rings: Ring[] = [];
  const chains: Ring[] = [];
  let [inner, outer] = [0, 0];
  for (const ring of region) {
    const bounds = boundsOf([ring]);
    if (!bounds) continue;
    if (bounds.maxX < box.minX || bounds.minX > box.maxX || bounds.maxY < box.minY || bounds.minY > box.maxY) {
      rings.push(ring);
      outer += ring.length;
      continue;
    }
    if (ring.some((point) => isOnSide(point, box))) return undefined;
    const own = chainsOutside(ring, box);
    if (own.length > 0) {
      chains.push(...own);
      for (const chain of own) outer += chain.length - 2;
      for (const point of ring) if (isInside(point, box)) inner += 1;
    } else if (isInside(ring[0]!, box)) inner += ring.length;
    else {
      rings.push(ring);
      outer += ring.length;
    }
  }
  return { rings, chains, inner, outer };
}

function chainsOutside(ring: Ring, box: Bounds): Ring[] {
  const spans = ring.map((from, i) => spanInside(from, ring[(i + 1) % ring.length]!, box));
  const first = spans.findIndex((span) => span && span.until < 1);
  if (first < 0) return [];
  const chains: Ring[] = [];
  let chain: Point[] = [];
  for (let step = 0; step <= ring.length; step += 1) {
    const i = (first + step) % ring.length;
    const [from, to, span] = [ring[i]!, ring[(i + 1) % ring.length]!, spans[i]];
    if (span && span.since > 0 && step > 0) {
      chain.push(between(from, to, span.since));
      chains.push(chain);
    }
    if (step === ring.length) break;
    if (span && span.until < 1) chain = [between(from, to, span.until)];
    if (!span || span.until < 1) chain.push(to);
  }
  return chains;
}

/** The part of a segment inside a box, as shares of its length (Liang and Barsky 1984). */
function spanInside(
  from: Point,
  to: Point,
  box: Bounds,
): { readonly since: number; readonly until: number } | undefined {
  // Most are far away.
  if (Math.max(from.x, to.x) < box.minX || Math.min(from.x, to.x) > box.maxX) return undefined;
  if (Math.max(from.y, to.y) < box.minY || Math.min(from.y, to.y) > box.maxY) return undefined;
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  let [since, until] = [0, 1];
  const limits = [
    [-dx, from.x - box.minX],
    [dx, box.maxX - from.x],
    [-dy, from.y - box.minY],
    [dy, box.maxY - from.y],
  ] as const;
  for (const [step, room] of limits) {
    if (step === 0) {
      if (room < 0) return undefined;
    } else if (step < 0) since = Math.max(since, room / step);
    else until = Math.min(until, room / step);
    if (since >= until) return undefined;
  }
  return { since, until };
}

/** Joins what was changed inside the box to what is outside; `undefined` if the ends do not meet. */
function joined({ rings, chains }: Outside, changed: Region, box: Bounds): Region | undefined {
  const made: Ring[] = [...rings];
  const inside = new Map<string, Ring>();
  for (const ring of changed) {
    const own = chainsOffSides(ring, box);
    if (!own) made.push(ring);
    else for (const chain of own) inside.set(keyOf(chain[0]!), chain);
  }
  if (inside.size !== chains.length) return undefined;
  const outside = new Map(chains.map((chain) => [keyOf(chain[0]!), chain]));
  if (outside.size !== chains.length) return undefined;
  while (outside.size > 0) {
    const [start] = outside.keys();
    const ring: Point[] = [];
    let leaves = start!;
    do {
      const out = outside.get(leaves);
      const back = out && inside.get(keyOf(out.at(-1)!));
      if (!back) return undefined;
      outside.delete(leaves);
      // The points on the side of the box lie on edges of the outline.
      ring.push(...out.slice(1, -1), ...back.slice(1, -1));
      leaves = keyOf(back.at(-1)!);
    } while (leaves !== start);
    if (ring.length > 2) made.push(ring);
  }
  return made;
}

/** The pieces of a ring between its edges along the sides of the box, both ends included; `undefined` if it has no such edges. */
function chainsOffSides(ring: Ring, box: Bounds): Ring[] | undefined {
  const isSide = ring.map((from, i) => runsAlongSide(from, ring[(i + 1) % ring.length]!, box));
  const first = isSide.indexOf(true);
  if (first < 0) return undefined;
  const chains: Ring[] = [];
  let chain: Point[] = [];
  for (let step = 0; step <= ring.length; step += 1) {
    const i = (first + step) % ring.length;
    chain.push(ring[i]!);
    if (!isSide[i]) continue;
    if (chain.length > 1) chains.push(chain);
    chain = [];
  }
  return chains;
}

const runsAlongSide = (a: Point, b: Point, { minX, minY, maxX, maxY }: Bounds): boolean =>
  (a.x === b.x && (a.x === minX || a.x === maxX)) || (a.y === b.y && (a.y === minY || a.y === maxY));

const isInside = ({ x, y }: Point, { minX, minY, maxX, maxY }: Bounds): boolean =>
  x > minX && x < maxX && y > minY && y < maxY;

const isOnSide = ({ x, y }: Point, { minX, minY, maxX, maxY }: Bounds): boolean =>
  x === minX || x === maxX || y === minY || y === maxY;

const between = (from: Point, to: Point, share: number): Point => ({
  x: from.x + share * (to.x - from.x),
  y: from.y + share * (to.y - from.y),
});

/** Sides on the grid of the booleans, which then return them as they are. */
function snapped({ minX, minY, maxX, maxY }: Bounds): Bounds {
  return {
    minX: Math.floor(minX * unitsPerMm) / unitsPerMm,
    minY: Math.floor(minY * unitsPerMm) / unitsPerMm,
    maxX: Math.ceil(maxX * unitsPerMm) / unitsPerMm,
    maxY: Math.ceil(maxY * unitsPerMm) / unitsPerMm,
  };
}

const keyOf = ({ x, y }: Point): string => `${Math.round(x * unitsPerMm)} ${Math.round(y * unitsPerMm)}`;
