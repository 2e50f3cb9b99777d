/**
 * Nesting: lays cut pieces out on sheets by their true outlines. Each piece goes to its lowest place
 * (`partial-layout.ts`), found level by level from the positions at which it would overlap what is there
 * (`no-fit-polygon.ts`); the search chooses the order (`search.ts`), and separation improves the result
 * (`separation/`). No clock and no chance are involved: the same parts are always laid out in the same way.
 */

import { chain, translation } from '../geometry/affine.ts';
import { boundsOf } from '../geometry/measure.ts';
import type { Affine, Region } from '../geometry/types.ts';
import { fitsInto } from './bin.ts';
import type { BinSize, Position } from './layout.ts';
import type { PartToPlace, PlacedPart } from './partial-layout.ts';
import type { Layout, PartToNest, SheetRoom, Placement } from './layout.ts';
import { NoFitPolygons } from './no-fit-polygons.ts';
import { WorkBudget } from './work-budget.ts';
import type { Orientation, Turn } from './orientation.ts';
import { seededRandom } from './seeded-random.ts';
import { improveLayout } from './separation/improve.ts';
import type { SearchRoom } from './search.ts';
import { searchResult, search } from './search.ts';
import { compactLayout } from './compaction.ts';
import type { NestShape } from './shapes.ts';
import { nestShapes } from './shapes.ts';
import { uprighting } from './upright.ts';

export type { Layout, PartToNest, SheetRoom, Placement };

/**
 * Number of edges that the search may visit: about two seconds for forty different names (`test/bench/sheet.bench.ts`).
 */
export const usualEffort = 20_000_000;

export interface NestOptions {
  /** Another seed gives another layout, so that the better of several can be taken. 1 by default. */
  readonly seed?: number;
  /**
   * Fixed regions on the first sheets: parts keep the gap from them. Those sheets exist even if nothing else goes on
   * them. Fixed regions may be closer to one another and to the edges than parts may.
   */
  readonly fixed?: readonly (readonly Region[])[];
  /** Called with each layout on the way to the result, each better than the previous one. */
  readonly onBetter?: (layout: Layout) => void;
}

/**
 * Lays out the parts on as few sheets as it finds, with the used part of the last one pushed towards one side. Every
 * part is inside the sheet less its margin, and two on a sheet are the gap apart, to within two hundred-thousandths of
 * a mm.
 * @throws RangeError if a length is not a finite number, or the margin or the gap is negative; and whatever
 * `checkpoint` throws to stop it. `checkpoint` is called every few milliseconds. `effort` is the number of edges that
 * the search may visit, which determines both quality and time; at least one layout is always finished.
 */
export async function nest(
  parts: readonly PartToNest[],
  room: SheetRoom,
  checkpoint: () => Promise<void>,
  effort = usualEffort,
  options: NestOptions = {},
): Promise<Layout> {
  for (const length of [room.width, room.height, room.margin, room.gap]) {
    if (!(length >= 0 && length < Infinity)) throw new RangeError('A length of the sheet is not a number or negative.');
  }
  const { fixed = [], onBetter } = options;
  const settled = fixed.flatMap((regions, sheet) => regions.map((region) => ({ region, sheet })));
  const asParts = settled.map(({ region }): PartToNest => ({ region, turns: 'none' }));
  const shapes = await nestShapes([...parts, ...asParts], room.gap, checkpoint);
  const orientations = new Map<number, Orientation>();
  const sides: SearchRoom[] = [];
  const goes = new Set<number>();
  for (const quarters of quartersOf(room)) {
    const inner = innerRoom(room, quarters);
    const candidates: PartToPlace[] = [];
    const lying = settled.flatMap(({ region, sheet }, index): PlacedPart[] => {
      const part = parts.length + index;
      const orientation = shapes[part]?.orientation(quarters);
      if (!orientation) return [];
      orientations.set(orientation.id, orientation);
      return [{ part, sheet, orientation, ...positionIn(room, region, quarters) }];
    });
    for (const [part, shape] of shapes.slice(0, parts.length).entries()) {
      const fitting = shape
        ? orientationsOf(shape, quarters).filter((orientation) => fitsInto(inner, orientation))
        : [];
      await checkpoint();
      if (fitting.length === 0) continue;
      for (const orientation of fitting) orientations.set(orientation.id, orientation);
      candidates.push({ part, orientations: fitting });
      goes.add(part);
    }
    sides.push({
      room: inner,
      quarters,
      candidates,
      either: room.keep === undefined,
      settled: { parts: lying, sheets: fixed.length },
    });
  }
  const unplaced = [...parts.keys()].filter((part) => !goes.has(part));
  if (goes.size === 0) return { placements: [], unplaced, sheets: fixed.length, used: fixed.length };
  const budget = new WorkBudget(effort, checkpoint);
  const { laid: begun, side, share } = await search(sides, new NoFitPolygons(orientations), budget);
  const { room: inner, candidates, settled: lying } = side;
  const toSheet = backTo(room, side.quarters);
  const regions = [...parts, ...settled].map(({ region }) => region);
  const upright = uprighting(regions, shapes, side.quarters);
  const layoutOf = (laid: readonly PlacedPart[]): Layout => {
    const placements = upright(laid).map(({ part, sheet, orientation, x, y }): Placement => {
      const { minX, minY } = boundsOf(parts[part]!.region)!;
      const steps = [translation(-minX, -minY), orientation.toOrigin, translation(x, y), toSheet];
      return { part, sheet, transform: tidy(steps.reduce(chain)) };
    });
    placements.sort((p, q) => p.part - q.part);
    const sheets = Math.max(fixed.length, ...laid.map(({ sheet }) => sheet + 1));
    return { placements, unplaced, sheets, used: sheets - 1 + searchResult(side, laid).share };
  };
  const reportBetter = (laid: readonly PlacedPart[]): void => onBetter?.(layoutOf(laid));
  reportBetter(begun);
  const start = { room: inner, shapes, candidates, laid: begun, share, settled: lying };
  const better = await improveLayout(start, seededRandom(options.seed ?? 1), budget, reportBetter);
  return layoutOf(await compactLayout(better, lying.parts, shapes, budget));
}

/** Lower left corner of a region on the sheet, in the coordinates of the room being filled. */
function positionIn({ height, margin }: SheetRoom, region: Region, quarters: 0 | 1): Position {
  const { minX, minY, maxY } = boundsOf(region)!;
  return quarters === 0 ? { x: minX - margin, y: minY - margin } : { x: height - margin - maxY, y: minX - margin };
}

/** Sheets are filled from the bottom; to fill one from the left, it is turned by a quarter first. */
function quartersOf({ keep }: SheetRoom): (0 | 1)[] {
  return keep === 'width' ? [0] : keep === 'height' ? [1] : [0, 1];
}

function innerRoom({ width, height, margin, gap }: SheetRoom, quarters: 0 | 1): BinSize {
  const [across, up] = quarters === 0 ? [width, height] : [height, width];
  return { width: across - 2 * margin, height: up - 2 * margin, gap };
}

/** From the coordinates of the room being filled to those of the sheet. */
function backTo({ height, margin }: SheetRoom, quarters: 0 | 1): Affine {
  return quarters === 0 ? translation(margin, margin) : { a: 0, b: -1, c: 1, d: 0, e: margin, f: height - margin };
}

function orientationsOf(shape: NestShape, quarters: 0 | 1): Orientation[] {
  return shape.turns.map((turn) => shape.orientation(((turn + quarters) % 4) as Turn));
}

/** Removes negative zeros, which nobody wants to read in a file. */
function tidy({ a, b, c, d, e, f }: Affine): Affine {
  return { a: a + 0, b: b + 0, c: c + 0, d: d + 0, e: e + 0, f: f + 0 };
}
