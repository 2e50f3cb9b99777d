/**
 * Booleans and offsets by Clipper2 (its C++, compiled to WebAssembly), which is no part of the engine. Lengths are mm; what
 * is filled follows the non-zero rule. It is several times as fast as translations of it into JavaScript.
 */

import loadClipper2 from 'clipper2-wasm';
import type { Paths64 } from 'clipper2-wasm';
import type { Region, Ring } from '../../../src/geometry/types.ts';

const clipper2 = await loadClipper2();
const { NonZero } = clipper2.FillRule;
const unitsPerMm = 100_000;

export const united = (rings: readonly Ring[]): Region => solved([rings], (all) => clipper2.UnionSelf64(all, NonZero));

export const difference = (region: Region, others: readonly Ring[]): Region =>
  solved([region, others], (from, what) => clipper2.Difference64(from, what, NonZero));

export const intersection = (one: Region, other: Region): Region =>
  solved([one, other], (a, b) => clipper2.Intersect64(a, b, NonZero));

/** Grown by `delta` all round, or thinned where it is negative, with round corners true to `arcTolerance`. */
export function offset(region: Region, delta: number, arcTolerance: number): Region {
  const { JoinType, EndType } = clipper2;
  return solved([region], (paths) =>
    clipper2.InflatePaths64(paths, delta * unitsPerMm, JoinType.Round, EndType.Polygon, 2, arcTolerance * unitsPerMm),
  );
}

export const withFewerPoints = (region: Region, tolerance: number): Region =>
  solved([region], (paths) => clipper2.SimplifyPaths64(paths, tolerance * unitsPerMm, true));

/** mm²; holes, which run clockwise, count as less than nothing. */
export function area(rings: readonly Ring[]): number {
  const paths = toPaths(rings);
  const units = clipper2.AreaPaths64(paths);
  paths.delete();
  return units / unitsPerMm ** 2;
}

/** Nothing in WebAssembly is collected by itself. */
function solved(operands: readonly (readonly Ring[])[], solve: (...paths: Paths64[]) => Paths64): Region {
  const paths = operands.map(toPaths);
  const solution = solve(...paths);
  const region = toRegion(solution);
  for (const each of [...paths, solution]) each.delete();
  return region;
}

/** Corners are x, y and a z that nobody needs. */
function toPaths(rings: readonly Ring[]): Paths64 {
  const paths = new clipper2.Paths64();
  for (const ring of rings) {
    const numbers = new BigInt64Array(3 * ring.length);
    for (const [i, { x, y }] of ring.entries()) {
      numbers[3 * i] = BigInt(Math.round(x * unitsPerMm));
      numbers[3 * i + 1] = BigInt(Math.round(y * unitsPerMm));
    }
    const path = new clipper2.Path64();
    path.assign(numbers);
    paths.push_back(path);
    path.delete();
  }
  return paths;
}

function toRegion(paths: Paths64): Region {
  return Array.from({ length: paths.size() }, (_, i) => {
    const path = paths.get(i);
    const numbers = path.view();
    const ring = Array.from({ length: numbers.length / 3 }, (_corner, corner) => ({
      x: Number(numbers[3 * corner]) / unitsPerMm,
      y: Number(numbers[3 * corner + 1]) / unitsPerMm,
    }));
    path.delete();
    return ring;
  });
}
