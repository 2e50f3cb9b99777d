/** The silhouette of a shape, for fitting it beside other things. */

import { transform, translation } from '../../geometry/affine.ts';
import { boundsOf, ringArea } from '../../geometry/measure.ts';
import { profilesOf } from '../../geometry/profiles.ts';
import { simplified } from '../../geometry/simplify.ts';
import type { Point, Region, Ring } from '../../geometry/types.ts';
import type { LetterBand, MadeShape } from '../made-shape.ts';

/** Columns that a line of lettering is divided into. */
const columns = 64;

/** A shape as seen from outside; its origin is the point that it is scaled about. */
export interface Silhouette {
  /** The solids it consists of, which may overlap. */
  readonly solids: readonly Region[];
  /** Points of its outline, without those hidden by other parts of it. */
  readonly points: readonly Point[];
  /** Whether it is lettering, whose edges are short. */
  readonly isLettering: boolean;
}

/**
 * The outline unchanged, but for lettering its letters without counters and with the gaps between them filled: nothing
 * else goes in there, even if there were room.
 */
export function silhouetteOf({ region, band, lettering }: MadeShape, about: Point): Silhouette {
  const moved = translation(-about.x, -about.y);
  const isLettering = lettering !== undefined && lettering.length > 0;
  const seen = isLettering ? region.filter((ring) => ringArea(ring) > 0) : region;
  const outline = transform(seen, moved);
  if (!isLettering) return { solids: [outline], points: pointsAlong(outline), isLettering };
  const letters = outline.map((ring) => [ring]);
  const filling = band && fillingOf(outline, { baseline: band.baseline - about.y, top: band.top - about.y });
  if (!filling) return { solids: letters, points: outline.flat(), isLettering };
  const points = outline.flat().filter((point) => !filling.hides(point));
  return { solids: [...letters, ...filling.rings.map((ring) => [ring])], points, isLettering };
}

/** The same with fewer points, none of which is further than `tolerance` mm from where it was. */
export function roughened({ solids, points, isLettering }: Silhouette, tolerance: number): Silhouette {
  const rough = solids.map((solid) => simplified(solid, tolerance)).filter((solid) => solid.length > 0);
  if (!isLettering) return { solids: rough, points: pointsAlong(rough.flat()), isLettering };
  const kept = new Set(points);
  return { solids: rough, points: rough.flat(2).filter((point) => kept.has(point)), isLettering };
}

/** Of the longer side of a shape, the longest stretch of an edge between two points that are looked at. */
const stretchShare = 1 / 24;

/** Corners, and points along long edges: a narrow thing may cross a shape between its corners. */
function pointsAlong(outline: Region): Point[] {
  const box = boundsOf(outline);
  if (!box) return [];
  const most = stretchShare * Math.max(box.maxX - box.minX, box.maxY - box.minY);
  return outline.flatMap((ring) =>
    ring.flatMap((from, index) => {
      const to = ring[(index + 1) % ring.length]!;
      const [dx, dy] = [to.x - from.x, to.y - from.y];
      const count = Math.max(1, Math.ceil(Math.hypot(dx, dy) / most));
      return Array.from({ length: count }, (_, i) => ({ x: from.x + (i / count) * dx, y: from.y + (i / count) * dy }));
    }),
  );
}

interface LineFilling {
  readonly rings: readonly Ring[];
  hides(point: Point): boolean;
}

/** Each column from the lowest ink to the highest, and the whole line up to the x-height. */
type LineBand = Pick<LetterBand, 'baseline' | 'top'>;

function fillingOf(letters: Region, band: LineBand): LineFilling | undefined {
  const box = boundsOf(letters);
  if (!box) return undefined;
  const { low, high } = profilesOf(letters, box.minX, box.maxX, columns);
  const width = (box.maxX - box.minX) / columns;
  // A column is only filled as far as both of its neighbours are, so that the ink alone determines the outline.
  const inner = (values: Float64Array, pick: (...heights: number[]) => number) =>
    values.map((value, i) => pick(value, values[Math.max(0, i - 1)]!, values[Math.min(columns - 1, i + 1)]!));
  const lows = inner(low, Math.max);
  const highs = inner(high, Math.min);
  const inked = Array.from(lows.keys()).filter((i) => lows[i]! < highs[i]!);
  if (inked.length < 2) return undefined;
  const x = (i: number) => box.minX + (i + 0.5) * width;
  const ring = [
    ...inked.map((i) => ({ x: x(i), y: lows[i]! })),
    ...inked.toReversed().map((i) => ({ x: x(i), y: highs[i]! })),
  ];
  return {
    rings: [simplified([ring], width / 4)[0] ?? ring, ...lineOf(letters, band)],
    hides: (point) => {
      const i = Math.floor((point.x - box.minX) / width);
      return i > 0 && i < columns - 1 && point.y > lows[i]! && point.y < highs[i]!;
    },
  };
}

/** Distance inside the band at which its ends are sought, as a share of its height. */
const withinBand = 0.04;

/** The area from the first ink of the line to the last, at its foot and at its x-height. */
function lineOf(letters: Region, { baseline, top }: LineBand): Ring[] {
  const within = withinBand * (top - baseline);
  const ends = [baseline + within, top - within].map((y) => endsAt(letters, y));
  const [foot, head] = ends;
  return foot && head ? [[foot[0], foot[1], head[1], head[0]]] : [];
}

/** The first and last point of ink at a height. */
function endsAt(letters: Region, y: number): readonly [Point, Point] | undefined {
  let [low, high] = [Infinity, -Infinity];
  for (const ring of letters) {
    let from = ring[ring.length - 1]!;
    for (const to of ring) {
      if (from.y > y !== to.y > y) {
        const x = from.x + ((y - from.y) / (to.y - from.y)) * (to.x - from.x);
        low = Math.min(low, x);
        high = Math.max(high, x);
      }
      from = to;
    }
  }
  return low < high
    ? [
        { x: low, y },
        { x: high, y },
      ]
    : undefined;
}
