/**
 * Booleans and offsets. The only file that imports clipper-lib.
 *
 * Clipper works on integers; one unit here is 1/100,000 mm. Its fast path covers ±47,453,132 units, that is ±474 mm;
 * beyond, it stays exact (to ±45,000 km) but takes 1.5 to 5 times as long, so tags and all but the largest sheets are
 * on the fast path.
 */

import ClipperLib from 'clipper-lib';
import type { Path, Paths } from 'clipper-lib';
import { cleanPath } from './clean-path.ts';
import { boundsOf } from './measure.ts';
import { groupedByBox, nearGroups, nearRegions } from './near-groups.ts';
import { rawOffset } from './raw-offset.ts';
import type { Corners } from './raw-offset.ts';
import type { Region, Ring } from './types.ts';

export type { Corners };

const { Clipper, PolyType, ClipType, PolyFillType } = ClipperLib;

/** Clipper units per millimetre. */
export const unitsPerMm = 100_000;

/** Largest distance between a round corner made by an offset and the true arc, in mm. */
export const arcToleranceMm = 0.002;

/** The winding numbers that count as inside, as in SVG's `fill-rule`. */
export type FillRule = 'nonzero' | 'evenodd';

/**
 * Direction of Clipper's sweep. It sweeps along Y, and at every vertex examines all edges at that height. Turned a
 * quarter, a line of lettering has a few strokes at each height instead of those of all its letters, and takes a third
 * of the time.
 */
interface Sweep {
  readonly turned: boolean;
}

/**
 * The direction with fewer edges abreast on average: total length of the edges along it over the length of the sweep.
 */
function sweepOver(rings: readonly Ring[]): Sweep {
  const box = boundsOf(rings);
  if (!box) return { turned: false };
  let alongX = 0;
  let alongY = 0;
  for (const ring of rings) {
    let previous = ring[ring.length - 1]!;
    for (const point of ring) {
      alongX += Math.abs(point.x - previous.x);
      alongY += Math.abs(point.y - previous.y);
      previous = point;
    }
  }
  return { turned: alongX * (box.maxY - box.minY) < alongY * (box.maxX - box.minX) };
}

function refuseNonNumbers(rings: readonly Ring[]): void {
  for (const ring of rings) {
    for (const { x, y } of ring) {
      if (!Number.isFinite(x) || !Number.isFinite(y)) throw new RangeError('A coordinate is not a number.');
    }
  }
}

/** Paths of all rings with three points or more; others enclose no area and are dropped. */
function toPaths(rings: readonly Ring[], { turned }: Sweep): Paths {
  refuseNonNumbers(rings);
  const paths: Paths = [];
  for (const ring of rings) {
    const path: Path = [];
    for (const point of ring) {
      const X = Math.round(point.x * unitsPerMm);
      const Y = Math.round(point.y * unitsPerMm);
      path.push(turned ? { X: 0 - Y, Y: X } : { X, Y });
    }
    if (path.length > 2) paths.push(path);
  }
  return paths;
}

/**
 * Paths back in mm. Points nearer than a unit and a half to the line through their neighbours are dropped: integer
 * rounding leaves them at crossings, and they would look like necks a hundred-thousandth of a millimetre wide.
 */
function toRegion(paths: Paths, { turned }: Sweep): Region {
  return paths
    .map((path) => cleanPath(path))
    .filter((path) => path.length > 2)
    .map((path) =>
      path.map(({ X, Y }) =>
        turned ? { x: Y / unitsPerMm, y: (0 - X) / unitsPerMm } : { x: X / unitsPerMm, y: Y / unitsPerMm },
      ),
    );
}

/** Turns clipper-lib's failures, which it reports through the browser's `alert`, into ordinary exceptions. */
function guarded<T>(action: () => T): T {
  try {
    return action();
  } catch (error) {
    if (error instanceof RangeError) throw error;
    throw new RangeError('The outline could not be computed.', { cause: error });
  }
}

function clipRings(
  type: number,
  subject: readonly Ring[],
  clip: readonly Ring[],
  rule: number = PolyFillType.pftNonZero,
): Region {
  const sweep = sweepOver([...subject, ...clip]);
  const [subjects, clips] = [toPaths(subject, sweep), toPaths(clip, sweep)];
  return guarded(() => {
    const clipper = new Clipper();
    clipper.AddPaths(subjects, PolyType.ptSubject, true);
    if (clips.length > 0) clipper.AddPaths(clips, PolyType.ptClip, true);
    const solution: Paths = [];
    clipper.Execute(type, solution, rule, PolyFillType.pftNonZero);
    return toRegion(solution, sweep);
  });
}

/**
 * Does the work separately for each group of rings whose boxes come within `reachMm` of each other. Distant rings
 * cannot meet, and Clipper's time grows faster than the number of rings.
 */
function byNearGroup(rings: readonly Ring[], reachMm: number, work: (group: Ring[]) => Region): Region {
  const groups = nearGroups(rings, reachMm);
  return groups.length === 1 ? work(groups[0]!) : groups.flatMap((group) => [...work(group)]);
}

/**
 * Any closed polygons, which may cross themselves and each other, as one region.
 * @throws RangeError if a coordinate is not a finite number.
 */
export function normalise(rings: readonly Ring[], rule: FillRule = 'nonzero'): Region {
  const fill = rule === 'nonzero' ? PolyFillType.pftNonZero : PolyFillType.pftEvenOdd;
  return byNearGroup(rings, 0, (group) => clipRings(ClipType.ctUnion, group, [], fill));
}

export function union(regions: readonly Region[]): Region {
  return regions.length === 1 ? regions[0]! : normalise(regions.flat());
}

/**
 * The union of regions that do not cross themselves. A region with no other near it is returned unchanged, at no cost.
 */
export function unionOfWhole(regions: readonly Region[]): Region {
  if (regions.length === 1) return regions[0]!;
  refuseNonNumbers(regions.flat());
  return nearRegions(regions, 0).flatMap((group) => (group.length === 1 ? group[0]! : normalise(group.flat())));
}

/** The part of `rings`, united by the non-zero rule, that is in none of `others`. */
export function difference(rings: readonly Ring[], others: readonly Region[]): Region {
  const all = others.flat();
  refuseNonNumbers([...rings, ...all]);
  return whereTheyMeet(rings, ringsNear(all, rings), (subject, clip) =>
    subject.length === 0 ? [] : clipRings(ClipType.ctDifference, subject, clip),
  );
}

export function intersection(a: Region, b: Region): Region {
  refuseNonNumbers([...a, ...b]);
  const near = ringsNear(a, b);
  return whereTheyMeet(near, ringsNear(b, near), (subject, clip) =>
    subject.length === 0 || clip.length === 0 ? [] : clipRings(ClipType.ctIntersection, subject, clip),
  );
}

/** Like `byNearGroup`, for subject and clip rings. */
function whereTheyMeet(
  subject: readonly Ring[],
  clip: readonly Ring[],
  work: (subject: readonly Ring[], clip: readonly Ring[]) => Region,
): Region {
  // The same ring may be both subject and clip.
  const all = [subject, clip].flatMap((rings, kind) => rings.map((ring) => ({ ring, isClip: kind === 1 })));
  const groups = groupedByBox(all, ({ ring }) => [ring], 0);
  if (groups.length === 1) return work(subject, clip);
  const ofKind = (group: typeof all, wanted: boolean) =>
    group.flatMap(({ ring, isClip }) => (isClip === wanted ? [ring] : []));
  return groups.flatMap((group) => [...work(ofKind(group, false), ofKind(group, true))]);
}

/** The rings whose boxes meet the box of the others; no other ring affects what is inside that box. */
function ringsNear(rings: readonly Ring[], others: readonly Ring[]): readonly Ring[] {
  const box = boundsOf(others);
  if (!box) return [];
  return rings.filter((ring) => {
    const own = boundsOf([ring]);
    return own && own.minX <= box.maxX && own.maxX >= box.minX && own.minY <= box.maxY && own.maxY >= box.minY;
  });
}

/**
 * The region grown by `deltaMm` all round (holes shrink), or thinned if it is negative. An offset by a disc, so growing
 * a convex outline of area A and perimeter P gives A + P·r + π·r² (Steiner), less the tolerance `arcTolerance` (mm).
 */
export function offset(
  region: Region,
  deltaMm: number,
  corners: Corners = 'round',
  arcTolerance = arcToleranceMm,
): Region {
  if (!Number.isFinite(deltaMm)) throw new RangeError('An offset is not a number.');
  if (deltaMm === 0 || region.length === 0) return region;
  refuseNonNumbers(region);
  const how = { delta: deltaMm, corners, arcTolerance };
  return byNearGroup(rawOffset(region, how), 0, (group) =>
    clipRings(ClipType.ctUnion, group, [], PolyFillType.pftPositive),
  );
}
