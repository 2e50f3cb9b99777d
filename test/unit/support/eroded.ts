/** A piece as a disc sees it: where its centre can be while all of it stays in material, by Clipper2. */

import { contains, ringArea } from '../../../src/geometry/measure.ts';
import { partsOf } from '../../../src/geometry/parts.ts';
import type { Point, Region, Ring } from '../../../src/geometry/types.ts';
import { erode } from './shapes.ts';

export class Eroded {
  readonly parts: readonly Region[];

  constructor(
    region: Region,
    /** The disc's diameter, mm. */
    readonly width: number,
  ) {
    this.parts = partsOf(width > 0 ? erode(region, width / 2) : region);
  }

  partAt(point: Point): Region | undefined {
    return this.parts.find((part) => contains(part, point));
  }

  /** Whether the disc can pass from one point to the other. */
  together(a: Point, b: Point): boolean {
    const part = this.partAt(a);
    return part !== undefined && contains(part, b);
  }

  /** Which hole a point that the disc cannot reach is in, the innermost; `undefined` outside of everything. */
  holeAt(point: Point): Ring | undefined {
    const [innermost] = this.parts
      .flatMap(([, ...holes]) => holes)
      .filter((hole) => contains([hole], point))
      .sort((a, b) => Math.abs(ringArea(a)) - Math.abs(ringArea(b)));
    return innermost;
  }
}
