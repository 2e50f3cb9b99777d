/**
 * Places for numbers and names on the picture of a sheet, where they hide nothing: on the piece itself beside what is
 * engraved, else in the free room next to it, with a leader.
 */

import type { Bounds, Point, Region } from '../../geometry/types.ts';
import { MapGrid } from './map-grid.ts';

/** What has a caption; on paper, in mm. */
export interface Captioned {
  readonly region: Region;
  /** What is engraved or scored on it, and may not be covered. */
  readonly marks: Region;
  /** Middle of the most room beside the marks. */
  readonly middle?: Point;
  /** Width of the caption at a size of 1 mm. */
  readonly wide: number;
}

export interface CaptionPlace {
  readonly box: Bounds;
  /** Of its font, in mm. */
  readonly size: number;
  /** From the caption to its piece; absent if it stands on it. */
  readonly leader?: readonly [Point, Point];
  /** Whether there is no room anywhere near, so that it covers some of the piece. */
  readonly covers?: true;
}

/** Heights in mm, the largest first. */
const sizes = [2.8, 2.4, 2, 1.7] as const;
/** Clear of lines all round, in mm. */
const padMm = 0.35;
/** Nobody looks for a caption farther away. */
const reachMm = 14;

/** In the order of the pieces. `area`: where captions may stand, around the sheet too. `taken`: other captions. */
export function captionPlaces(pieces: readonly Captioned[], area: Bounds, taken: readonly Bounds[]): CaptionPlace[] {
  const grid = new MapGrid(
    area,
    pieces.map(({ region }) => region),
  );
  for (const box of taken) grid.takeBox(box);
  return pieces.map((piece, index) => {
    const place = placeOf(piece, index, grid);
    grid.takeBox(place.box);
    return place;
  });
}

/** On the piece or beside it, as large as it goes; else with a leader over others, and at last on what it hides. */
function placeOf(piece: Captioned, index: number, grid: MapGrid): CaptionPlace {
  for (const size of sizes) {
    const place = placeOn(piece, index, grid, size) ?? placeBeside(piece, index, grid, { size, own: true });
    if (place) return place;
  }
  const size = sizes.at(-1)!;
  const across = placeBeside(piece, index, grid, { size, own: false });
  return across ?? { box: boxAt(piece.middle ?? piece.region[0]![0]!, size, piece), size, covers: true };
}

function boxAt({ x, y }: Point, size: number, { wide }: Captioned): Bounds {
  const [half, high] = [(wide * size) / 2 + padMm, (0.72 * size) / 2 + padMm];
  return { minX: x - half, minY: y - high, maxX: x + half, maxY: y + high };
}

function placeOn(piece: Captioned, index: number, grid: MapGrid, size: number): CaptionPlace | undefined {
  if (!piece.middle) return undefined;
  const box = boxAt(piece.middle, size, piece);
  return grid.isWithin(box, index, piece.marks) ? { box, size } : undefined;
}

/** `own`: where it is plain which piece it belongs to. */
function placeBeside(
  piece: Captioned,
  index: number,
  grid: MapGrid,
  { size, own }: { readonly size: number; readonly own: boolean },
): CaptionPlace | undefined {
  const { minX, minY, maxX, maxY } = boxAt({ x: 0, y: 0 }, size, piece);
  const found = grid.nearestFree(index, { width: maxX - minX, height: maxY - minY }, { reachMm, own });
  if (!found) return undefined;
  const box = boxAt(found.at, size, piece);
  const { x, y } = found.from;
  // From the nearest point of the box, so that the leader does not cross it.
  const start = { x: Math.min(Math.max(x, box.minX), box.maxX), y: Math.min(Math.max(y, box.minY), box.maxY) };
  return { box, size, leader: [start, found.from] };
}
