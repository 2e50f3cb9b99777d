/** The perimeter of a union, in a tenth of the time that making the union takes. */

import { boundsOf, contains, distance, perimeter } from './measure.ts';
import type { Bounds, Point, Region } from './types.ts';

interface Boxed {
  readonly region: Region;
  readonly box: Bounds;
}

/** The perimeter of the union of the regions, in mm: all of their outlines except what lies inside another region. */
export function unionPerimeter(regions: readonly Region[]): number {
  const boxed = regions.flatMap((region): Boxed[] => {
    const box = boundsOf(region);
    return box ? [{ region, box }] : [];
  });
  // From left to right, so that regions beginning beyond the end of one cannot meet it.
  boxed.sort((a, b) => a.box.minX - b.box.minX);
  const near = boxed.map((): Boxed[] => []);
  boxed.forEach((a, index) => {
    for (let k = index + 1; k < boxed.length && boxed[k]!.box.minX <= a.box.maxX; k++) {
      const b = boxed[k]!;
      if (b.box.minY > a.box.maxY || b.box.maxY < a.box.minY) continue;
      near[index]!.push(b);
      near[k]!.push(a);
    }
  });
  return boxed.reduce((sum, { region, box }, index) => {
    const others = near[index]!.map((other) => new Cover(other, box));
    return sum + perimeter(region) - covered(region, others);
  }, 0);
}

/** Length of the part of a region's outline that is inside any of the others. */
function covered(region: Region, others: readonly Cover[]): number {
  if (others.length === 0) return 0;
  let length = 0;
  for (const ring of region) {
    for (const other of others) other.jump();
    let from = ring[ring.length - 1]!;
    for (const to of ring) {
      const stretches: (readonly [number, number])[] = [];
      for (const other of others) other.along(from, to, stretches);
      if (stretches.length > 0) length += distance(to, from) * coveredLength(stretches);
      from = to;
    }
  }
  return length;
}

/** Total length of stretches that may overlap. */
function coveredLength(stretches: (readonly [number, number])[]): number {
  if (stretches.length > 1) stretches.sort(([a], [b]) => a - b);
  let sum = 0;
  let end = 0;
  for (const [from, to] of stretches) {
    sum += Math.max(0, to - Math.max(from, end));
    end = Math.max(end, to);
  }
  return sum;
}

/** A region that may cover parts of an outline. */
class Cover {
  readonly #region: Region;
  readonly #box: Bounds;
  /** Start x, start y, end x and end y of each edge that reaches into the box of the outline. */
  readonly #edges: number[] = [];
  /** Whether the end of the last edge was inside, if known. */
  #isInside: boolean | undefined;

  constructor({ region, box }: Boxed, outline: Bounds) {
    this.#region = region;
    this.#box = box;
    for (const ring of region) {
      let from = ring[ring.length - 1]!;
      for (const to of ring) {
        if (areMet(from, to, outline)) this.#edges.push(from.x, from.y, to.x, to.y);
        from = to;
      }
    }
  }

  /** Call before an edge that does not begin where the last one ended. */
  jump(): void {
    this.#isInside = undefined;
  }

  /** Adds the stretches of an edge that are inside, as shares of its length. */
  along(from: Point, to: Point, stretches: (readonly [number, number])[]): void {
    if (!areMet(from, to, this.#box)) {
      this.#isInside = false;
      return;
    }
    const crossings = this.#crossings(from, to);
    if (crossings.length === 0) {
      this.#isInside ??= this.#holds(from, to, 0.5);
      if (this.#isInside) stretches.push([0, 1]);
      return;
    }
    crossings.sort((p, q) => p - q);
    crossings.push(1);
    let start = 0;
    for (const end of crossings) {
      this.#isInside = this.#holds(from, to, (start + end) / 2);
      if (this.#isInside) stretches.push([start, end]);
      start = end;
    }
  }

  #holds(from: Point, to: Point, share: number): boolean {
    return contains(this.#region, { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) });
  }

  #crossings(from: Point, to: Point): number[] {
    const [minX, maxX] = from.x < to.x ? [from.x, to.x] : [to.x, from.x];
    const [minY, maxY] = from.y < to.y ? [from.y, to.y] : [to.y, from.y];
    const [dx, dy] = [to.x - from.x, to.y - from.y];
    const edges = this.#edges;
    const found: number[] = [];
    for (let k = 0; k < edges.length; k += 4) {
      const ax = edges[k]!;
      const ay = edges[k + 1]!;
      const bx = edges[k + 2]!;
      const by = edges[k + 3]!;
      if (ax > maxX && bx > maxX) continue;
      if (ax < minX && bx < minX) continue;
      if (ay > maxY && by > maxY) continue;
      if (ay < minY && by < minY) continue;
      // An edge counts without its end, so that a crossing at a corner is found once.
      if (dx * (ay - from.y) > dy * (ax - from.x) === dx * (by - from.y) > dy * (bx - from.x)) continue;
      const sideFrom = (bx - ax) * (from.y - ay) - (by - ay) * (from.x - ax);
      const sideTo = (bx - ax) * (to.y - ay) - (by - ay) * (to.x - ax);
      if (sideFrom > 0 === sideTo > 0) continue;
      found.push(sideFrom / (sideFrom - sideTo));
    }
    return found;
  }
}

function areMet(a: Point, b: Point, { minX, minY, maxX, maxY }: Bounds): boolean {
  return (
    (a.x >= minX || b.x >= minX) &&
    (a.x <= maxX || b.x <= maxX) &&
    (a.y >= minY || b.y >= minY) &&
    (a.y <= maxY || b.y <= maxY)
  );
}
