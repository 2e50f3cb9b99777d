/**
 * Nesting: lays cut pieces out on sheets by their true outlines. Each piece goes to its lowest place
 * (`partial-layout.ts`), found level by level from the positions at which it would overlap what is there
 * (`no-fit-polygon.ts`); the search chooses the order (`search.ts`), and separation improves the result
 * (`separation/`). No clock and no chance are involved: the same parts are always laid out in the same way.
 */

import { chain, translation } from '../geometry/affine.ts';
import type { Affine, Bounds, Region } from '../geometry/types.ts';
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
import { searchSkylines } from './envelopes/search-skylines.ts';
import { onShelves } from './shelves.ts';
import { compactLayout } from './compaction.ts';
import { drawnTogether } from './drawn-together.ts';
import { nestParts } from './shapes.ts';
import type { NestPart, NestShape } from './shapes.ts';
import { upright } from './upright.ts';

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
  const { fixed = [], ...how } = options;
  const own = await nestParts([...parts, ...fixed.flat().map(asPart)], room.gap, checkpoint);
  const lying = fixed.flatMap((regions, sheet) => regions.map(() => sheet));
  return await nestPrepared({ parts: own, fixed: lying, sheets: fixed.length }, room, checkpoint, { effort, ...how });
}

const asPart = (region: Region): PartToNest => ({ region, turns: 'none' });

interface Prepared {
  /** The fixed ones come last. */
  readonly parts: readonly NestPart[];
  /** The sheet of each fixed one. */
  readonly fixed: readonly number[];
  /** How many sheets exist whatever lies on them. */
  readonly sheets: number;
}

async function nestPrepared(
  { parts, fixed, sheets: fixedSheets }: Prepared,
  room: SheetRoom,
  checkpoint: () => Promise<void>,
  { effort, seed = 1, onBetter }: Omit<NestOptions, 'fixed'> & { readonly effort: number },
): Promise<Layout> {
  const count = parts.length - fixed.length;
  const orientations = new Map<number, Orientation>();
  const sides: SearchRoom[] = [];
  const goes = new Set<number>();
  for (const quarters of quartersOf(room)) {
    const inner = innerRoom(room, quarters);
    const candidates: PartToPlace[] = [];
    const lying = fixed.flatMap((sheet, index): PlacedPart[] => {
      const part = count + index;
      const { shape, bounds } = parts[part]!;
      const orientation = shape?.orientation(quarters);
      if (!orientation) return [];
      orientations.set(orientation.id, orientation);
      return [{ part, sheet, orientation, ...positionIn(room, bounds, quarters) }];
    });
    for (const [part, { shape }] of parts.slice(0, count).entries()) {
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
      settled: { parts: lying, sheets: fixedSheets },
    });
  }
  const unplaced = Array.from({ length: count }, (_, part) => part).filter((part) => !goes.has(part));
  if (goes.size === 0) return { placements: [], unplaced, sheets: fixedSheets, used: fixedSheets };
  const budget = new WorkBudget(effort, checkpoint);
  const layoutOf = (laid: readonly PlacedPart[], filled: SearchRoom): Layout => {
    const toSheet = backTo(room, filled.quarters);
    const placements = upright(laid, parts, filled.quarters).map(({ part, sheet, orientation, x, y }): Placement => {
      const { minX, minY } = parts[part]!.bounds;
      const steps = [translation(-minX, -minY), orientation.toOrigin, translation(x, y), toSheet];
      return { part, sheet, transform: tidy(steps.reduce(chain)) };
    });
    placements.sort((p, q) => p.part - q.part);
    const sheets = Math.max(fixedSheets, ...laid.map(({ sheet }) => sheet + 1));
    return { placements, unplaced, sheets, used: sheets - 1 + searchResult(filled, laid).share };
  };
  const different = new Set(sides[0]!.candidates.map(({ part }) => parts[part]!.shape)).size;
  const { laid, side, share } =
    different > mostShapes
      ? await searchSkylines(
          sides,
          (part, turn) => parts[part]!.shape!.envelope(turn),
          seededRandom(seed),
          budget,
          (found) => onBetter?.(layoutOf(found.laid, found.side)),
        )
      : await search(sides, new NoFitPolygons(orientations), budget);
  const { room: inner, candidates, settled: lying } = side;
  const reportBetter = (better: readonly PlacedPart[]): void => onBetter?.(layoutOf(better, side));
  reportBetter(laid);
  const shapes = parts.map(({ shape }) => shape);
  const start = { room: inner, shapes, candidates, laid, share, settled: lying };
  const better = await improveLayout(start, seededRandom(seed), budget, reportBetter);
  const found = layoutOf(await compactLayout(better, lying.parts, shapes, budget), side);
  if (fixedSheets > 0) return found;
  const inRows = sides.map((each) => {
    const rows = onShelves(each.candidates, each.room);
    return { side: each, rows, layout: layoutOf(rows, each) };
  });
  const neat = inRows.reduce((best, rows) => (rows.layout.used < best.layout.used ? rows : best));
  const last = found.used - (found.sheets - 1);
  const lost = neat.layout.used - found.used;
  if (lost > neatLoss.share * last || lost * Math.max(room.width, room.height) > neatLoss.mm) return found;
  return layoutOf(await drawnTogether(neat.rows, shapes, neat.side.room, budget), neat.side);
}

/** Of more different shapes, one layout by outlines takes longer than all layouts by boxes or envelopes. */
const mostShapes = 40;

/**
 * Rows of boxes are preferred if they take up no more of the last sheet than this beyond what else was found, as a share and in mm: a
 * strip that nobody would keep. In rows the parts lie in order, and are seen at a glance. Our own judgement.
 */
const neatLoss = { share: 0.08, mm: 20 } as const;

/** Lower left corner of what lies on the sheet, in the coordinates of the room being filled. */
function positionIn({ height, margin }: SheetRoom, { minX, minY, maxY }: Bounds, quarters: 0 | 1): Position {
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
