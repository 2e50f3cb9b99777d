/** Fills sheets with parts in a given order: each goes to its lowest place, on the first sheet with room for it. */

import { Bin, fitsInto } from './bin.ts';
import type { Preference } from './bin.ts';
import type { Position, BinSize } from './layout.ts';
import type { NoFitPolygons } from './no-fit-polygons.ts';
import type { WorkBudget } from './work-budget.ts';
import type { Orientation } from './orientation.ts';

/** A part to be placed, with its allowed orientations. */
export interface PartToPlace {
  readonly part: number;
  readonly orientations: readonly Orientation[];
}

export interface PlacedPart extends Position {
  readonly part: number;
  readonly orientation: Orientation;
  readonly sheet: number;
}

/** Fixed parts, on the first `sheets` sheets. */
export interface FixedParts {
  readonly parts: readonly PlacedPart[];
  readonly sheets: number;
}

export interface PlacingRule extends Preference {
  /** The height by which orientations of a part are compared. */
  readonly by: 'top' | 'middle' | 'bottom';
}

/** More than the number of orientations. */
const keysPerSheet = 2 ** 20;

interface Step extends PlacedPart {
  /** What has been learnt on the way: heights below which an orientation finds no room on a sheet. */
  readonly learnt: readonly (readonly [key: number, height: number])[];
}

export class PartialLayout {
  readonly #room: BinSize;
  readonly #noFits: NoFitPolygons;
  readonly #budget: WorkBudget;
  readonly bins: Bin[] = [];
  readonly laid: Step[] = [];
  readonly #known = new Map<number, number>();

  constructor(room: BinSize, noFits: NoFitPolygons, budget: WorkBudget, { parts, sheets }: FixedParts) {
    this.#room = room;
    this.#noFits = noFits;
    this.#budget = budget;
    for (let sheet = 0; sheet < sheets; sheet += 1) this.#bin(sheet);
    for (const each of parts) this.#bin(each.sheet).lay(each.orientation, each);
  }

  /** Places one part. At least one of its orientations must fit into the room. */
  async lay({ part, orientations }: PartToPlace, rule: PlacingRule): Promise<void> {
    const learnt: [number, number][] = [];
    for (let sheet = 0; ; sheet += 1) {
      const bin = this.#bin(sheet);
      let best: (Position & { readonly orientation: Orientation; readonly cost: number }) | undefined;
      for (const orientation of orientations) {
        if (!fitsInto(this.#room, orientation)) continue;
        const key = sheet * keysPerSheet + orientation.id;
        const above = this.#known.get(key) ?? 0;
        if (above === Infinity) continue;
        const place = await bin.lowest(orientation, above, rule);
        learnt.push([key, place?.floor ?? Infinity]);
        this.#known.set(key, place?.floor ?? Infinity);
        if (!place) continue;
        const lift = rule.by === 'top' ? orientation.height : rule.by === 'middle' ? orientation.middle : 0;
        const cost = place.y + lift + rule.tilt * place.x;
        if (!best || cost < best.cost - 1e-6 || (cost < best.cost + 1e-6 && place.x < best.x)) {
          best = { ...place, orientation, cost };
        }
      }
      if (!best) continue;
      this.#take({ part, orientation: best.orientation, sheet, x: best.x, y: best.y, learnt });
      return;
    }
  }

  #bin(sheet: number): Bin {
    return (this.bins[sheet] ??= new Bin(this.#room, this.#noFits, this.#budget));
  }

  #take(step: Step): void {
    const bin = this.#bin(step.sheet);
    bin.lay(step.orientation, step);
    for (const [key, height] of step.learnt) this.#known.set(key, height);
    this.laid.push(step);
  }
}
