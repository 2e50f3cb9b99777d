/** The edges of a region in a spatial index, for many queries about what lies near a point. */

import Flatbush from 'flatbush';
import type { Point, Region } from './types.ts';

/** Length of a ray, in mm; longer than any tag. */
const rayMm = 10_000;

export class EdgeIndex {
  readonly #from: Point[] = [];
  readonly #to: Point[] = [];
  readonly #index: Flatbush | undefined;

  constructor(region: Region) {
    for (const ring of region) {
      let previous = ring[ring.length - 1]!;
      for (const point of ring) {
        this.#from.push(previous);
        this.#to.push(point);
        previous = point;
      }
    }
    if (this.#from.length === 0) return;
    this.#index = new Flatbush(this.#from.length);
    this.#from.forEach((from, edge) => {
      const to = this.#to[edge]!;
      this.#index!.add(Math.min(from.x, to.x), Math.min(from.y, to.y), Math.max(from.x, to.x), Math.max(from.y, to.y));
    });
    this.#index.finish();
  }

  /** Whether the ray from a point in a unit direction crosses any edge. */
  crossedBy(from: Point, direction: Point): boolean {
    const far = { x: from.x + direction.x * rayMm, y: from.y + direction.y * rayMm };
    const boxes = this.#index?.search(
      Math.min(from.x, far.x),
      Math.min(from.y, far.y),
      Math.max(from.x, far.x),
      Math.max(from.y, far.y),
    );
    const along = ({ x, y }: Point): number => (x - from.x) * direction.x + (y - from.y) * direction.y;
    const across = ({ x, y }: Point): number => (x - from.x) * direction.y - (y - from.y) * direction.x;
    return (boxes ?? []).some((edge) => {
      const [a, b] = [this.#from[edge]!, this.#to[edge]!];
      const [left, right] = [across(a), across(b)];
      if (left > 0 === right > 0) return false;
      return along(a) + (left / (left - right)) * (along(b) - along(a)) > 0;
    });
  }

  /** The same as `contains` in `measure.ts`, by the same arithmetic, but looks only at edges level with the point. */
  contains({ x, y }: Point): boolean {
    let isInside = false;
    for (const edge of this.#index?.search(x, y, this.#index.maxX, y) ?? []) {
      const from = this.#from[edge]!;
      const to = this.#to[edge]!;
      if (to.y > y === from.y > y) continue;
      if (x < to.x + ((y - to.y) * (from.x - to.x)) / (from.y - to.y)) isInside = !isInside;
    }
    return isInside;
  }

  /** Visits the edges whose boxes touch the square of half-width `reach` round a point. */
  eachNear(point: Point, reach: number, visit: (from: Point, to: Point) => void): void {
    for (const edge of this.#edgesNear(point, reach)) visit(this.#from[edge]!, this.#to[edge]!);
  }

  /** The same edges as [from, to] pairs. */
  near(point: Point, reach: number): [Point, Point][] {
    return this.#edgesNear(point, reach).map((edge) => [this.#from[edge]!, this.#to[edge]!]);
  }

  #edgesNear({ x, y }: Point, reach: number): number[] {
    return this.#index?.search(x - reach, y - reach, x + reach, y + reach) ?? [];
  }

  /**
   * Angles (radians, −π to π, ascending) at which a circle crosses the edges. Each edge counts as half-open, so that a
   * crossing at a shared corner is found once.
   */
  circleCrossings(centre: Point, radius: number): number[] {
    const angles: number[] = [];
    this.#eachCircleCrossing(centre, radius, (x, y) => angles.push(Math.atan2(y, x)));
    return angles.sort((p, q) => p - q);
  }

  /** The number of them. */
  countCircleCrossings(centre: Point, radius: number): number {
    let count = 0;
    this.#eachCircleCrossing(centre, radius, () => count++);
    return count;
  }

  /** Visits the crossings, as seen from the centre. */
  #eachCircleCrossing(centre: Point, radius: number, visit: (x: number, y: number) => void): void {
    for (const edge of this.#edgesNear(centre, radius)) {
      const from = this.#from[edge]!;
      const to = this.#to[edge]!;
      const dx = to.x - from.x;
      const dy = to.y - from.y;
      const fx = from.x - centre.x;
      const fy = from.y - centre.y;
      const a = dx * dx + dy * dy;
      const b = fx * dx + fy * dy;
      const c = fx * fx + fy * fy - radius * radius;
      const discriminant = b * b - a * c;
      if (a === 0 || discriminant <= 0) continue;
      const root = Math.sqrt(discriminant);
      const first = (-b - root) / a;
      const second = (-b + root) / a;
      if (first >= 0 && first < 1) visit(fx + first * dx, fy + first * dy);
      if (second >= 0 && second < 1) visit(fx + second * dx, fy + second * dy);
    }
  }
}
