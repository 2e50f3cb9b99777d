/**
 * Search for a good starting layout. Places follow from the order of the parts and their allowed orientations, so the
 * order is all that is chosen: by size, in several ways. The result is the start of the separation (`separation/`), and
 * the layout that it must improve on.
 */

import type { BinSize } from './layout.ts';
import type { WorkBudget } from './work-budget.ts';
import { onShelves } from './shelves.ts';
import { PartialLayout } from './partial-layout.ts';
import type { PlacedPart, PlacingRule, PartToPlace, FixedParts } from './partial-layout.ts';
import type { NoFitPolygons } from './no-fit-polygons.ts';

/** An order in which to place parts, and the rule for their places. */
interface Plan {
  readonly candidates: readonly PartToPlace[];
  readonly rule: PlacingRule;
}

/** A sheet as it is filled, from the bottom: as it is, or turned by a quarter. */
export interface SearchRoom {
  readonly room: BinSize;
  /** Quarter turns of the sheet, counter-clockwise. */
  readonly quarters: 0 | 1;
  /** Parts with their orientations, each of which fits into the room. */
  readonly candidates: readonly PartToPlace[];
  /** Whether the used part may also be cut off along the other side of the sheet. */
  readonly either: boolean;
  readonly settled: FixedParts;
}

export interface SearchResult {
  readonly side: SearchRoom;
  readonly laid: readonly PlacedPart[];
  readonly score: number;
  /** Share of the last sheet that is used, from 0 to 1. */
  readonly share: number;
}

/** Sheets, and of the last one the share that is used; a little of how low parts lie tells which of two is on a good way. */
export function searchResult(side: SearchRoom, laid: readonly PlacedPart[]): SearchResult {
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

/** Sort keys of parts, largest first. */
const sizes: readonly ((candidates: PartToPlace) => number)[] = [
  ({ orientations }) => orientations[0]!.area,
  ({ orientations }) => Math.max(...orientations.map(({ height }) => height)),
  ({ orientations }) => orientations[0]!.width + orientations[0]!.height,
  ({ orientations }) => Math.max(...orientations.map(({ width }) => width)),
];

const judgements = ['top', 'middle', 'bottom'] as const;
const tilts = [0, 0.1];

/** Plans, the most promising first: by size, in columns, then the same in other ways. */
function initialPlans(side: SearchRoom): Plan[] {
  const sorted = sizes.map((size) => [...side.candidates].sort((a, b) => size(b) - size(a) || a.part - b.part));
  const columns = columnCounts(side);
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

/** Possible numbers of columns: none, and as many as fit side by side for each orientation. */
function columnCounts({ room, candidates }: SearchRoom): number[] {
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

/** Identifies equal plans, which are not worth repeating: the shapes in order, and the rule. */
function planKey({ candidates, rule: { by, tilt, columns } }: Plan): string {
  return `${by} ${tilt} ${columns} ${candidates.map(({ orientations }) => orientations.map(({ id }) => id).join('/')).join()}`;
}

/** The better of two, the first if they are equal. */
export const better = (one: SearchResult, other: SearchResult): SearchResult =>
  other.score < one.score - least ? other : one;

/** Rows of boxes, which take hardly any time. */
export const inRows = (sides: readonly SearchRoom[]): SearchResult =>
  sides.map((side) => onEmptySheets(side, onShelves(side.candidates, side.room))).reduce(better);

/** Layouts that know nothing of what is fixed begin behind it; later steps place parts around that. */
export function onEmptySheets(side: SearchRoom, laid: readonly PlacedPart[]): SearchResult {
  return searchResult(
    side,
    laid.map((each) => ({ ...each, sheet: each.sheet + side.settled.sheets })),
  );
}

/** Returns the best of all plans tried until the budget has spent `startShare`. At least one layout is finished. */
export async function search(
  sides: readonly SearchRoom[],
  noFits: NoFitPolygons,
  budget: WorkBudget,
): Promise<SearchResult> {
  let best = inRows(sides);
  let isFirst = true;
  const tried = new Set<string>();
  const plans = sides.map(initialPlans);
  for (let i = 0; plans.some((all) => i < all.length); i += 1) {
    for (const [s, side] of sides.entries()) {
      const plan = plans[s]![i];
      if (!plan || (!isFirst && budget.share > startShare)) continue;
      isFirst = false;
      const key = `${s} ${planKey(plan)}`;
      if (tried.has(key)) continue;
      tried.add(key);
      best = better(best, await carryOut(side, plan, new PartialLayout(side.room, noFits, budget, side.settled)));
    }
  }
  return best;
}

/** Share of the budget for this stage. */
const startShare = 0.2;
/** Scores that differ by less are equal. */
const least = 1e-9;

async function carryOut(side: SearchRoom, plan: Plan, partial: PartialLayout): Promise<SearchResult> {
  for (const candidates of plan.candidates.slice(partial.laid.length)) await partial.lay(candidates, plan.rule);
  return searchResult(side, partial.laid);
}
