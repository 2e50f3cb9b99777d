/** An ellipse by the way along it. */

import type { Point } from '../geometry/types.ts';

/** Steps of a half turn between which the way along is interpolated. */
const steps = 64;

/**
 * Its middle is on the origin; the way along begins at its top and runs clockwise, or at its bottom and runs counter-clockwise:
 * to the right either way.
 */
export class Ellipse {
  readonly #a: number;
  readonly #b: number;
  /** The way along at each step of the half to the right, from the top. */
  readonly #ways: readonly number[];

  /** @param a Half its width. @param b Half its height; both > 0. */
  constructor(a: number, b: number) {
    this.#a = a;
    this.#b = b;
    const ways = [0];
    for (let step = 1; step <= steps; step++) {
      const [from, to] = [step - 1, step].map((each) => this.#at((each * Math.PI) / steps));
      ways.push(ways.at(-1)! + Math.hypot(to!.x - from!.x, to!.y - from!.y));
    }
    this.#ways = ways;
  }

  /** Of all of it. */
  get perimeter(): number {
    return 2 * this.#ways.at(-1)!;
  }

  /** How far round it is, in radians of the angle that runs evenly where it is a circle; the way may be negative. */
  angleAt(way: number): number {
    const far = Math.min(Math.abs(way), this.#ways.at(-1)!);
    let [low, high] = [0, steps];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (this.#ways[middle]! <= far) low = middle;
      else high = middle;
    }
    const from = this.#ways[low]!;
    const share = (far - from) / (this.#ways[high]! - from || 1);
    return (Math.sign(way) * (low + share) * Math.PI) / steps;
  }

  /** The radius of the smallest circle that turns as it does anywhere from its middle to there. */
  leastRadius(way: number): number {
    // It turns most at the ends of its longer axis.
    const at = this.#a > this.#b ? Math.min(Math.abs(this.angleAt(way)), Math.PI / 2) : 0;
    return Math.hypot(this.#a * Math.cos(at), this.#b * Math.sin(at)) ** 3 / (this.#a * this.#b);
  }

  /** The point there, and the unit vector that points outwards. */
  placeAt(way: number, from: 'top' | 'bottom'): { readonly point: Point; readonly outwards: Point } {
    const angle = this.angleAt(way);
    const { x, y } = this.#at(angle);
    const [nx, ny] = [x / this.#a ** 2, y / this.#b ** 2];
    const length = Math.hypot(nx, ny);
    const turn = from === 'top' ? 1 : -1;
    return { point: { x, y: turn * y }, outwards: { x: nx / length, y: (turn * ny) / length } };
  }

  #at(angle: number): Point {
    return { x: this.#a * Math.sin(angle), y: this.#b * Math.cos(angle) };
  }
}
