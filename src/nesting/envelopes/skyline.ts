/**
 * Skyline layout: parts lie in rows, each on whatever is below it, by their envelopes. Of all parts the one goes next that leaves
 * the least room unused below it for its size (best fit, as Burke, Kendall and Whitwell 2004 do with rectangles), so that among hundreds of
 * names each finds neighbours that it fits.
 */

import { fitMm } from '../bin.ts';
import type { BinSize, Position } from '../layout.ts';
import type { Orientation } from '../orientation.ts';
import type { PlacedPart } from '../partial-layout.ts';
import type { WorkBudget } from '../work-budget.ts';
import { envelopeStep } from './envelope.ts';
import type { Envelope } from './envelope.ts';

/** How the next part is chosen. */
export interface SkylineRule {
  /** How far a part may reach over the one before it, in columns. */
  readonly overlap: number;
  /** Weight of the room at the end of a row into which no part fits any more. */
  readonly rowEnd: number;
  /** What size is worth: unused room may be greater by this share of a part's area for each 1000 mm² of it. */
  readonly large: number;
  /** Random addition to each part's unused room at the most, as a share of its area: other layouts, about as good. */
  readonly noise: number;
}

/** A part in one orientation, in columns of the sheet as wide as the steps of its envelope. */
export interface SkylinePart {
  readonly part: number;
  readonly orientation: Orientation;
  readonly count: number;
  /** Least and greatest height in each column above the lower edge of the part, in mm. */
  readonly lows: Float64Array;
  readonly highs: Float64Array;
  readonly lowSum: number;
  /** Where the first column begins, in columns to the right of the part's left edge: mostly a little below 0. */
  readonly first: number;
  /** Of the envelope, in mm². */
  readonly area: number;
}

export function skylinePart(part: number, orientation: Orientation, { upper, lower }: Envelope): SkylinePart {
  const count = upper.length - 1;
  const middle = orientation.height / 2;
  const lows = new Float64Array(count);
  const highs = new Float64Array(count);
  let [area, lowSum] = [0, 0];
  for (let k = 0; k < count; k += 1) {
    lows[k] = Math.min(lower[k]!, lower[k + 1]!) + middle;
    highs[k] = Math.max(upper[k]!, upper[k + 1]!) + middle;
    lowSum += lows[k]!;
    area += envelopeStep * (highs[k]! - lows[k]!);
  }
  const first = orientation.width / 2 / envelopeStep - count / 2;
  return { part, orientation, count, lows, highs, lowSum, first, area };
}

/** Columns by which a part is moved at a time to reach over the one before it. */
const overlapStep = 2;
/** Columns by which a row goes on where nothing fits. */
const skip = 4;
/** Every so many columns are compared first: most parts are seen by these not to be the best. */
const stride = 8;
/** Columns that are compared in the time in which the search visits an edge (measured). */
const columnsPerEdge = 40;

/** `parts`: the ways in which each may lie, at least one of which must fit into the room. As many sheets as are needed. */
export async function skyline(
  parts: readonly (readonly SkylinePart[])[],
  room: BinSize,
  rule: SkylineRule,
  random: () => number,
  budget: WorkBudget,
): Promise<PlacedPart[]> {
  const left = new Set(parts);
  const laid: PlacedPart[] = [];
  for (let sheet = 0; left.size > 0; sheet += 1) {
    const narrowest = Math.min(...[...left].flat().map(({ orientation }) => orientation.width));
    const filling = new Skyline(room, rule, narrowest);
    for (let isRowEmpty = false; !isRowEmpty && left.size > 0;) {
      isRowEmpty = true;
      filling.beginRow();
      while (left.size > 0 && filling.hasRoom) {
        const best = filling.layBest(left, random);
        budget.spent += filling.takeWork();
        if (budget.isDue) await budget.pause();
        if (!best) continue;
        isRowEmpty = false;
        const { part, orientation } = best.found;
        laid.push({ part, orientation, sheet, x: best.x, y: best.y });
        left.delete(best.ways);
      }
    }
  }
  return laid;
}

interface Fit extends Position {
  readonly ways: readonly SkylinePart[];
  readonly found: SkylinePart;
  /** Column, from the left edge of the sheet, in which it begins. */
  readonly from: number;
}

class Skyline {
  readonly #room: BinSize;
  readonly #rule: SkylineRule;
  readonly #narrowest: number;
  /** Columns on either side of the sheet, beyond which no envelope reaches. */
  readonly #pad: number;
  /** Height up to which each column is filled; and the sums of all columns before each. */
  readonly #heights: Float64Array;
  readonly #sums: Float64Array;
  /** Column from which the row is free. */
  #front = 0;
  #columns = 0;

  constructor(room: BinSize, rule: SkylineRule, narrowest: number) {
    this.#room = room;
    this.#rule = rule;
    this.#narrowest = narrowest;
    this.#pad = Math.ceil(room.gap / envelopeStep) + 2;
    this.#heights = new Float64Array(Math.ceil(room.width / envelopeStep) + 2 * this.#pad).fill(-room.gap / 2);
    this.#sums = new Float64Array(this.#heights.length + 1);
  }

  beginRow(): void {
    this.#front = -this.#pad;
  }

  get hasRoom(): boolean {
    return this.#front * envelopeStep + this.#narrowest <= this.#room.width + fitMm;
  }

  /** Edges that the search might have visited in the time. */
  takeWork(): number {
    const work = this.#columns / columnsPerEdge;
    this.#columns = 0;
    return work;
  }

  /** Lays the best part; if none fits where the row has got to, the row goes on a little. */
  layBest(parts: Iterable<readonly SkylinePart[]>, random: () => number): Fit | undefined {
    const heights = this.#heights;
    const { width, height } = this.#room;
    const { overlap, rowEnd, large, noise } = this.#rule;
    for (let at = 0; at < heights.length; at += 1) this.#sums[at + 1] = this.#sums[at]! + heights[at]!;
    this.#columns += heights.length;
    let best: Fit | undefined;
    let least = Infinity;
    for (const ways of parts) {
      const shake = noise * random();
      for (const found of ways) {
        const { orientation, lows, count, area } = found;
        const worth = (large * area) / 1000 - shake;
        const leftmost = Math.ceil(found.first - fitMm);
        for (let over = 0; over <= overlap; over += overlapStep) {
          const from = Math.max(this.#front - over, leftmost);
          const x = (from - found.first) * envelopeStep;
          const rest = width - x - orientation.width;
          if (rest < -fitMm) continue;
          const column = from + this.#pad;
          const filled = this.#sums[column + count]! - this.#sums[column]!;
          const end = rest < this.#narrowest ? rowEnd * rest * orientation.height : 0;
          const atFloor = end + envelopeStep * (found.lowSum - filled) - worth * area;
          // As far as it may rise without being worse than the best.
          const most = Math.min(height + fitMm - orientation.height, (least * area - atFloor) / (envelopeStep * count));
          let y = 0;
          for (let start = 0; start < stride && y <= most; start += 1) {
            for (let k = start; k < count; k += stride) {
              const rise = heights[column + k]! - lows[k]!;
              if (rise > y) y = rise;
            }
            this.#columns += count / stride;
          }
          if (y > most) continue;
          const score = (atFloor + envelopeStep * count * y) / area;
          if (score >= least) continue;
          least = score;
          best = { ways, found, from, x: Math.max(0, x), y };
        }
      }
    }
    if (best) this.#lay(best);
    else this.#front += skip;
    return best;
  }

  #lay({ found: { count, highs }, from, y }: Fit): void {
    for (let k = 0; k < count; k += 1) {
      const at = from + this.#pad + k;
      this.#heights[at] = Math.max(this.#heights[at]!, y + highs[k]!);
    }
    this.#front = from + count;
  }
}
