/**
 * Shapes for tests, made without the engine's own geometry: outlines from their equations, booleans and offsets from
 * Clipper2, an independent library. Lengths are mm; all outlines run counter-clockwise.
 */

import { ringArea } from '../../../src/geometry/measure.ts';
import type { Point, Region, Ring } from '../../../src/geometry/types.ts';
import { difference, offset, united, withFewerPoints } from './clipper2.ts';

/** Numbers from 0 to 1, the same for the same seed. */
export { seededRandom } from '../../../src/nesting/seeded-random.ts';

/** A circle as a polygon with its corners on it, `tolerance` from it at most: ⌈π / acos(1 − ε/R)⌉ corners. */
export function disc(x: number, y: number, radius: number, tolerance = 0.002): Ring {
  return ellipse(x, y, radius, radius, tolerance);
}

export function ellipse(x: number, y: number, a: number, b: number, tolerance = 0.002): Ring {
  const count = Math.max(8, Math.ceil(Math.PI / Math.acos(1 - tolerance / Math.max(a, b))));
  return Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * i) / count;
    return { x: x + a * Math.cos(angle), y: y + b * Math.sin(angle) };
  });
}

export function box(minX: number, minY: number, maxX: number, maxY: number): Ring {
  return polygon([minX, minY], [maxX, minY], [maxX, maxY], [minX, maxY]);
}

export function polygon(...corners: readonly (readonly [number, number])[]): Ring {
  return corners.map(([x, y]) => ({ x, y }));
}

/** A box with round corners of radius r. */
export function roundedBox(
  minX: number,
  minY: number,
  maxX: number,
  maxY: number,
  r: number,
  tolerance = 0.002,
): Region {
  const corners = [minX + r, maxX - r].flatMap((x) => [minY + r, maxY - r].map((y) => disc(x, y, r, tolerance)));
  return unite(...corners, box(minX + r, minY, maxX - r, maxY), box(minX, minY + r, maxX, maxY - r));
}

/** A star of `points` tips; with radii not far apart, a gear of pointed teeth. */
export function star(points: number, inner: number, outer: number): Ring {
  return Array.from({ length: 2 * points }, (_, i) => {
    const radius = i % 2 === 0 ? outer : inner;
    return { x: radius * Math.cos((Math.PI * i) / points), y: radius * Math.sin((Math.PI * i) / points) };
  });
}

export function unite(...rings: readonly Ring[]): Region {
  return united(rings);
}

export function subtract(region: Region, ...others: readonly Region[]): Region {
  return difference(region, others.flat());
}

/** Thinned by `delta` all round: what a disc of that radius can reach with its centre while it stays inside. */
export function erode(region: Region, delta: number): Region {
  return offset(region, -delta, 0.002);
}

/** With fewer points: those within `tolerance` of the line between their neighbours are left out. */
export function simplified(region: Region, tolerance: number): Region {
  return withFewerPoints(region, tolerance);
}

/** Turned about the origin by `angle` (radians), enlarged, then moved. */
export function transformed(region: Region, angle: number, scale = 1, dx = 0, dy = 0): Region {
  const c = scale * Math.cos(angle);
  const s = scale * Math.sin(angle);
  return region.map((ring) => ring.map(({ x, y }): Point => ({ x: c * x - s * y + dx, y: s * x + c * y + dy })));
}

/** How many parts it has: rings that run counter-clockwise. */
export function outerCount(region: Region): number {
  return region.filter((ring) => ringArea(ring) > 0).length;
}

/** A random number in a range. */
export type Between = (low: number, high: number) => number;

/** Of every kind that a sheet is filled with: in several parts, hollow, with arms, bent, and plain. */
export const shapesOfEachKind: readonly ((between: Between) => Region)[] = [
  (between) => unite(Array.from({ length: 8 }, () => ({ x: between(-12, 12), y: between(-12, 12) }))),
  (between) => subtract([disc(0, 0, 14, 0.1)], [disc(1, 0, between(2, 12), 0.1)]),
  () => [star(5, 5, 14)],
  () => [polygon([0, 0], [20, 0], [20, 6], [6, 6], [6, 20], [0, 20])],
  () => subtract([box(0, 0, 30, 24)], [box(3, 3, 27, 21)]),
  () => [box(0, 0, 9, 5)],
  () => [box(0, 0, 6, 4), box(9, 1, 14, 12)],
];
