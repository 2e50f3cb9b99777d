/** A point in the material well to one side of a neck. */

import type { Cut } from './cuts.ts';
import { vectorLength } from './lengths.ts';
import type { Mesh } from './mesh.ts';
import { triangleOf } from './mesh.ts';

/** Reach of the search beyond the first thick place, in widths asked for … */
const lookAround = 3;
/** … and its reach in search of a thick place. */
const lookFar = 10;

/**
 * The centre (units) of the largest inscribed disc near a cut, on the side of the given triangle: near, so that it
 * shows which of many parts the neck belongs to, and past any thin run, so that it is in the part itself.
 */
export function sampleBeyond(
  mesh: Mesh,
  radius: Float64Array,
  { chord }: Cut,
  side: number,
  width: number,
): readonly [number, number] {
  const blocked = chord === undefined ? -1 : mesh.twins[chord]!;
  const seen = new Set([side]);
  const queue = [side];
  let best = side;
  let firstThick: number | undefined;
  for (let i = 0; i < queue.length; i += 1) {
    const t = queue[i]!;
    if (centroidDistance(mesh, firstThick ?? side, t) > (firstThick === undefined ? lookFar : lookAround) * width)
      continue;
    if (radius[t]! > radius[best]!) best = t;
    if (2 * radius[t]! >= width) firstThick ??= t;
    for (let e = 3 * t; e < 3 * t + 3; e += 1) {
      if (!mesh.isChord[e] || e === chord || e === blocked) continue;
      const neighbour = triangleOf(mesh.twins[e]!);
      if (seen.has(neighbour)) continue;
      seen.add(neighbour);
      queue.push(neighbour);
    }
  }
  return radius[best]! > 0 ? circumcentre(mesh, best) : centroid(mesh, best);
}

function centroidDistance(mesh: Mesh, s: number, t: number): number {
  const [ax, ay] = centroid(mesh, s);
  const [bx, by] = centroid(mesh, t);
  return vectorLength(ax - bx, ay - by);
}

function centroid({ xs, ys, starts }: Mesh, t: number): readonly [number, number] {
  const [a, b, c] = [starts[3 * t]!, starts[3 * t + 1]!, starts[3 * t + 2]!];
  return [(xs[a]! + xs[b]! + xs[c]!) / 3, (ys[a]! + ys[b]! + ys[c]!) / 3];
}

function circumcentre({ xs, ys, starts }: Mesh, t: number): readonly [number, number] {
  const [a, b, c] = [starts[3 * t]!, starts[3 * t + 1]!, starts[3 * t + 2]!];
  const bx = xs[b]! - xs[a]!;
  const by = ys[b]! - ys[a]!;
  const cx = xs[c]! - xs[a]!;
  const cy = ys[c]! - ys[a]!;
  const twice = 2 * (bx * cy - by * cx);
  const b2 = bx * bx + by * by;
  const c2 = cx * cx + cy * cy;
  return [xs[a]! + (cy * b2 - by * c2) / twice, ys[a]! + (bx * c2 - cx * b2) / twice];
}
