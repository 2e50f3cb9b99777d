/**
 * Improves a layout by separation: fills sheets with parts from later ones, and reduces the used part of the last one.
 */

import type { BinSize } from '../layout.ts';
import type { Turn } from '../orientation.ts';
import type { PartToPlace, PlacedPart, FixedParts } from '../partial-layout.ts';
import { envelopeArea } from '../envelopes/envelope.ts';
import { exactOrientations } from '../shapes.ts';
import type { NestShape } from '../shapes.ts';
import type { WorkBudget } from '../work-budget.ts';
import { boxBound } from './box-bound.ts';
import { last } from './penetration-field.ts';
import { PenetrationFields } from './penetration-fields.ts';
import type { Mover } from './penetration-fields.ts';
import { areApart } from './proven.ts';
import { fillSheet } from './sheet-filling.ts';
import type { PartPose } from './sheet-filling.ts';
import { StripSearch } from './strip-search.ts';
import type { StripArrangement } from './strip-search.ts';

export interface LayoutToImprove {
  readonly room: BinSize;
  readonly shapes: readonly (NestShape | undefined)[];
  readonly candidates: readonly PartToPlace[];
  readonly laid: readonly PlacedPart[];
  /** Used share of the last sheet; only a smaller one is an improvement. */
  readonly share: number;
  readonly settled: FixedParts;
}

/**
 * Computing the fields of two shapes takes time proportional to the product of their corners, for each turn. If the sum
 * exceeds this, outlines with fewer corners are used.
 */
const mostWork = 400_000;

/** Effort that the fields of two shapes take, by product of their corners (measured with names on backings). */
const effortOfCorners = 4;
/** The same of two envelopes, by product of their knots. */
const effortOfKnots = 0.11;
/**
 * Share of the effort left from which the search stays near the layout that there is: by outlines because the fields of all pairs would be too dear; by
 * envelopes because that layout is a good one, which parts thrown anew reach only late.
 */
const fieldsShare = { outlines: 0.25, envelopes: 0.06 };

/** Share of the budget at which the filling of all sheets but the last has ended. */
const fillingShare = 0.8;

/** Returns no more sheets, and no more used of the last one. `onBetter` is called with each layout on the way. */
export async function improveLayout(
  { room, shapes, candidates, laid, share, settled }: LayoutToImprove,
  random: () => number,
  budget: WorkBudget,
  onBetter: (laid: readonly PlacedPart[]) => void,
): Promise<readonly PlacedPart[]> {
  // Work left over from an earlier layout must not count, so that the same parts give the same layout.
  last.work = 0;
  const { movers, moverOf, byEnvelopes, effortOfAll } = moversOf(candidates, shapes);
  let sheets = bySheet(laid, settled.sheets, ({ part }) => movers.get(part)!);
  const fixed = bySheet(settled.parts, settled.sheets, ({ part, orientation: { turn } }): Mover => {
    const shape = shapes[part]!;
    return moverOf(shape, [turn]);
  });
  let leastUsed = share * room.height;
  const bound = boxBound(candidates, shapes, room);
  for (let at = 0; at < sheets.length - 1; at += 1) {
    if (bound && sheets[at]!.length >= bound.most) continue;
    const until = budget.share + (fillingShare - budget.share) / (sheets.length - 1 - at);
    const others = sheets.slice(at + 1).flat();
    others.sort((a, b) => b.mover.outline(0).area - a.mover.outline(0).area);
    const { sheet, taken } = await fillSheet(sheets[at]!, fixed[at] ?? [], others, room, random, budget, until);
    if (taken.size === 0 || !(await areApart(sheet, fixed[at] ?? [], budget))) continue;
    const before = sheets.length;
    sheets[at] = sheet;
    sheets = sheets.map((each, i) => (i > at ? each.filter(({ part }) => !taken.has(part)) : each));
    sheets = sheets.filter((each, i) => each.length > 0 || i < settled.sheets);
    leastUsed = sheets.length < before ? room.height : Math.min(leastUsed, topOfSheet(sheets.at(-1)!));
    onBetter(placedParts(sheets));
  }
  const lastSheet = sheets.at(-1)!;
  if (lastSheet.length === 0) return placedParts(sheets);
  const others = sheets.slice(0, -1);
  const lying = fixed[others.length] ?? [];
  const strip = { sheet: lastSheet, fixed: lying, height: Math.min(leastUsed, room.height) };
  if (bound && strip.height <= bound.lowEnough(lastSheet.length)) return placedParts(sheets);
  const isLocal = effortOfAll > fieldsShare[byEnvelopes ? 'envelopes' : 'outlines'] * budget.left;
  const shorter = await shortened({ ...strip, isLocal }, room, random, budget, (better) => {
    onBetter(placedParts([...others, better]));
  });
  if (shorter && (await areApart(shorter, lying, budget))) sheets[others.length] = shorter;
  return placedParts(sheets);
}

/** At least this many sheets, even if nothing lies on them. */
function bySheet(
  laid: readonly PlacedPart[],
  least: number,
  moverOf: (placed: PlacedPart) => Mover,
): (readonly PartPose[])[] {
  const sheets: PartPose[][] = Array.from({ length: least }, () => []);
  for (const placed of laid) {
    const { part, sheet, orientation, x, y } = placed;
    const { turn, width, height } = orientation;
    (sheets[sheet] ??= []).push({ part, mover: moverOf(placed), turn, x: x + width / 2, y: y + height / 2 });
  }
  return sheets;
}

/** Most that envelopes may take up beyond the outlines, as a share: bays and holes that nothing can go into. */
const envelopeLoss = 0.08;

function takeLittleMore(shapes: readonly NestShape[]): boolean {
  let [own, taken] = [0, 0];
  for (const shape of shapes) {
    own += shape.orientation(0).area;
    taken += envelopeArea(shape.envelope(0));
  }
  return taken <= (1 + envelopeLoss) * own;
}

interface Movers {
  readonly movers: ReadonlyMap<number, Mover>;
  readonly moverOf: (shape: NestShape, turns: readonly Turn[]) => Mover;
  /** Whether parts are compared by their envelopes. */
  readonly byEnvelopes: boolean;
  /** That the fields of all pairs of shapes would take. */
  readonly effortOfAll: number;
}

function moversOf(candidates: readonly PartToPlace[], shapes: readonly (NestShape | undefined)[]): Movers {
  const turnsOf = new Map(
    candidates.map(({ part, orientations }) => [shapes[part]!, orientations.map(({ turn }) => turn)]),
  );
  let [corners, ways] = [0, 0];
  for (const [shape, turns] of turnsOf) {
    corners += shape.orientation(turns[0]!).count;
    ways = Math.max(ways, turns.length);
  }
  const isMuch = corners ** 2 * ways > mostWork;
  const byEnvelopes = isMuch && takeLittleMore([...turnsOf.keys()]);
  const outlineOf = (shape: NestShape) => (turn: Turn) =>
    isMuch && !byEnvelopes ? shape.rough(turn) : shape.orientation(turn);
  const moverOf = (shape: NestShape, turns: readonly Turn[]): Mover => {
    return {
      shape,
      turns,
      outline: outlineOf(shape),
      ...(byEnvelopes ? { envelope: (turn: Turn) => shape.envelope(turn) } : {}),
    };
  };
  const ofShapes = new Map([...turnsOf].map(([shape, turns]): [NestShape, Mover] => [shape, moverOf(shape, turns)]));
  const cornersSeen = [...ofShapes.values()].reduce((sum, { turns, outline }) => sum + outline(turns[0]!).count, 0);
  const knots = [...ofShapes.values()].reduce((sum, { envelope }) => sum + (envelope?.(0).upper.length ?? 0), 0);
  const effortOfAll = (byEnvelopes ? effortOfKnots * knots ** 2 * ways : effortOfCorners * cornersSeen ** 2 * ways) / 2;
  return {
    movers: new Map(candidates.map(({ part }) => [part, ofShapes.get(shapes[part]!)!])),
    moverOf,
    byEnvelopes,
    effortOfAll,
  };
}

const topOfSheet = (sheet: readonly PartPose[]): number =>
  Math.max(...sheet.map(({ mover, turn, y }) => y + mover.outline(turn).height / 2));

interface Strip {
  readonly sheet: readonly PartPose[];
  readonly fixed: readonly PartPose[];
  readonly height: number;
  readonly isLocal: boolean;
}

/** Tries to fit the parts of a sheet below `height`; `undefined` if that fails. */
async function shortened(
  { sheet, fixed, height, isLocal }: Strip,
  room: BinSize,
  random: () => number,
  budget: WorkBudget,
  onBetter: (sheet: readonly PartPose[]) => void,
): Promise<readonly PartPose[] | undefined> {
  const fields = new PenetrationFields();
  const all = [...sheet, ...fixed];
  const known = {
    height,
    turns: Uint8Array.from(all, ({ turn }) => turn),
    xs: Float64Array.from(all, ({ x }) => x),
    ys: Float64Array.from(all, ({ y }) => y),
  };
  const kinds = all.map(({ mover }) => fields.add(mover));
  // Outlines extend half a gap beyond the parts, and so beyond the used part.
  const exact = exactOrientations();
  const area = sheet.reduce((sum, { mover, turn }) => sum + exact(mover.shape, turn).area, 0);
  const tallest = sheet.map(({ mover: { turns, outline } }) => Math.min(...turns.map((turn) => outline(turn).height)));
  const leastHeight = Math.max(area / (room.width + room.gap) - room.gap, ...tallest);
  const lyingAs = ({ turns, xs, ys }: StripArrangement): PartPose[] =>
    sheet.map(({ part, mover }, i) => ({ part, mover, turn: turns[i]! as Turn, x: xs[i]!, y: ys[i]! }));
  const task = { fields, kinds, movable: sheet.length, width: room.width, leastHeight, known, random, isLocal };
  const search = new StripSearch(task, budget, (better) => {
    onBetter(lyingAs(better));
  });
  const best = await search.run(1);
  return best === known ? undefined : lyingAs(best);
}

function placedParts(sheets: readonly (readonly PartPose[])[]): PlacedPart[] {
  return sheets.flatMap((sheet, index) =>
    sheet.map(({ part, mover, turn, x, y }): PlacedPart => {
      const orientation = mover.shape.orientation(turn);
      return { part, sheet: index, orientation, x: x - orientation.width / 2, y: y - orientation.height / 2 };
    }),
  );
}
