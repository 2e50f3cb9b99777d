/**
 * Looking for a good order. Where a part goes follows from the order and from what it may be turned to, so that is all there is
 * to choose: by size, in several ways. What is found is where the separation (`separation/`) begins, and what it must be better than.
 */

import type { BinSize } from './layout.ts';
import type { WorkBudget } from './work-budget.ts';
import { onShelves } from './shelves.ts';
import { PartialLayout } from './partial-layout.ts';
import type { PlacedPart, PlacingRule, PartToPlace, Settled } from './partial-layout.ts';
import type { NoFitPolygons } from './no-fit-polygons.ts';

/** An order to lay parts in. */
interface Plan {
  readonly candidates: readonly PartToPlace[];
  readonly rule: PlacingRule;
}

/** A sheet as it is to be filled, from the bottom: as it is, or turned by a quarter. */
export interface SearchRoom {
  readonly room: BinSize;
  /** By how many quarters the sheet is turned, counter-clockwise. */
  readonly quarters: 0 | 1;
  /** Parts with orientations, each of which fits into the room. */
  readonly candidates: readonly PartToPlace[];
  /** Whether what is used may also be cut off along the other side of the sheet. */
  readonly either: boolean;
  readonly settled: Settled;
}

export interface SearchResult {
  readonly side: SearchRoom;
  readonly laid: readonly PlacedPart[];
  readonly score: number;
  /** How much of the last sheet is used, of 1. */
  readonly share: number;
}

/** Sheets, and of the last one the share that is used; a little of how low parts lie tells which of two is on a good way. */
export function judged(side: SearchRoom, laid: readonly PlacedPart[]): SearchResult {
  const { room, either, settled } = side;
  const sheets = Math.max(settled.sheets, ...laid.map(({ sheet }) => sheet + 1));
  let [top, right, moment, area] = [0, 0, 0, 0];
  for (const { sheet, orientation, x, y } of laid) {
    if (sheet < sheets - 1) continue;
    top = Math.max(top, y + orientation.height);
    right = Math.max(right, x + orientation.width);
    moment += orientation.area * (y + orientation.middle);
    area += orientation.area;
  }
  const used = top / room.height;
  const share = either ? Math.min(used, right / room.width) : used;
  const low = area > 0 ? moment / (area * room.height) : 0;
  return { side, laid, share, score: sheets - 1 + share + lowWeight * low };
}

const lowWeight = 0.02;

/** By what parts are sorted, the largest first. */
const sizes: readonly ((candidates: PartToPlace) => number)[] = [
  ({ orientations }) => orientations[0]!.area,
  ({ orientations }) => Math.max(...orientations.map(({ height }) => height)),
  ({ orientations }) => orientations[0]!.width + orientations[0]!.height,
  ({ orientations }) => Math.max(...orientations.map(({ width }) => width)),
];

const judgements = ['top', 'middle', 'bottom'] as const;
const tilts = [0, 0.1];

/** Plans to begin with, the most promising first: by size, in columns, and then the same in other ways. */
function beginnings(side: SearchRoom): Plan[] {
  const sorted = sizes.map((size) => [...side.candidates].sort((a, b) => size(b) - size(a) || a.part - b.part));
  const columns = columnsOf(side);
  return [
    ...columns.map((count): Plan => ({ candidates: sorted[0]!, rule: { by: 'top', tilt: 0, columns: count } })),
    ...tilts.flatMap((tilt) =>
      judgements.flatMap((by) => sorted.map((candidates): Plan => ({ candidates, rule: { by, tilt, columns: 0 } }))),
    ),
    ...columns
      .slice(1)
      .flatMap((count) =>
        sorted.map((candidates): Plan => ({ candidates, rule: { by: 'bottom', tilt: 0, columns: count } })),
      ),
  ];
}

/** Into how many columns the sheet may well be divided: none, and as many as go beside each other of each orientation. */
function columnsOf({ room, candidates }: SearchRoom): number[] {
  const counts = new Set([0]);
  for (const { orientations } of candidates) {
    for (const { width } of orientations) {
      const count = Math.floor((room.width + room.gap) / (width + room.gap) + 1e-6);
      if (count > 1 && counts.size < maxColumns) counts.add(count);
    }
  }
  return [...counts];
}

const maxColumns = 5;

/** The same plan again is not worth trying: what shapes in which order, and how they are judged. */
function keyOf({ candidates, rule: { by, tilt, columns } }: Plan): string {
  return `${by} ${tilt} ${columns} ${candidates.map(({ orientations }) => orientations.map(({ id }) => id).join('/')).join()}`;
}

/** The best of all that is tried until the budget has spent this share. At least one layout is finished. */
export async function search(
  sides: readonly SearchRoom[],
  noFits: NoFitPolygons,
  budget: WorkBudget,
): Promise<SearchResult> {
  let best: SearchResult | undefined;
  for (const side of sides) {
    // Rows go on sheets where nothing lies yet; what lies there is gone round later.
    const rows = onShelves(side.candidates, side.room);
    const found = judged(
      side,
      rows.map((each) => ({ ...each, sheet: each.sheet + side.settled.sheets })),
    );
    if (!best || found.score < best.score - least) best = found;
  }
  // Where all are different, one layout by outlines takes longer than all that can be made of boxes.
  if (new Set(sides[0]!.candidates.map(({ orientations }) => orientations[0]!.id)).size > mostShapes) return best!;
  let isFirst = true;
  const tried = new Set<string>();
  const plans = sides.map(beginnings);
  for (let i = 0; plans.some((all) => i < all.length); i += 1) {
    for (const [s, side] of sides.entries()) {
      const plan = plans[s]![i];
      if (!plan || (!isFirst && budget.share > startShare)) continue;
      isFirst = false;
      const key = `${s} ${keyOf(plan)}`;
      if (tried.has(key)) continue;
      tried.add(key);
      const found = await follow(side, plan, new PartialLayout(side.room, noFits, budget, side.settled));
      if (found.score < best!.score - least) best = found;
    }
  }
  return best!;
}

/** So much of what may be spent goes into this. */
const startShare = 0.2;
/** With more shapes than this they are not laid by their outlines to begin with. */
const mostShapes = 60;
/** Scores that differ by less are equal. */
const least = 1e-9;

async function follow(side: SearchRoom, plan: Plan, partial: PartialLayout): Promise<SearchResult> {
  for (const candidates of plan.candidates.slice(partial.laid.length)) await partial.lay(candidates, plan.rule);
  return judged(side, partial.laid);
}
