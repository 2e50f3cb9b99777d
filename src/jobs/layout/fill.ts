/**
 * Distributes the pieces of one stock over its sheets, in the order in which those are used: rush pieces first, orders
 * kept together if requested. Dense packing is the task of `nesting/nest.ts`, which way up pieces lie that of
 * `nesting/upright-first.ts`.
 */

import { transform } from '../../geometry/affine.ts';
import { area } from '../../geometry/measure.ts';
import { fixedIn, sheetNumbers } from './fixed-in-room.ts';
import type { FixedInRoom, FixedContents } from './fixed-in-room.ts';
import { nestIn, trialShare } from './nest-in-room.ts';
import type { LaidPieces, NestInRoomOptions } from './nest-in-room.ts';
import { isRushed, isWhole, laidArea, ordersOf, rushedFirst, upTo } from './piece-to-fill.ts';
import type { PieceToFill } from './piece-to-fill.ts';
import { fits } from './rooms.ts';
import type { Room } from './rooms.ts';
import { WholeOrders } from './whole-orders.ts';

export interface Filled<P> {
  readonly room: Room;
  /** Counted over all sheets of the stock; 0 for offcuts. */
  readonly number: number;
  readonly laid: LaidPieces<P>;
}

export interface FillOptions extends Omit<NestInRoomOptions, 'share'> {
  readonly keepTogether: boolean;
  readonly fixed?: readonly FixedInRoom[];
}

/** Called with each improvement of the result so far. */
export type OnBetter<P> = (filled: readonly Filled<P>[]) => void;

export interface FilledSheets<P> {
  readonly filled: readonly Filled<P>[];
  /** Pieces that fit on no sheet. */
  readonly left: readonly P[];
  readonly lost?: LostByFixing;
}

/** What would be kept of what was asked, if nothing were fixed. */
export interface LostByFixing {
  /** How many sheets have rush pieces, and how many would have. */
  readonly rush?: { readonly sheets: number; readonly without: number };
  /** Orders that would lie together. */
  readonly parted: ReadonlySet<string>;
}

export async function fill<P extends PieceToFill>(
  pieces: readonly P[],
  rooms: readonly Room[],
  options: FillOptions,
  onBetter?: OnBetter<P>,
): Promise<FilledSheets<P>> {
  // Rush pieces first.
  let waiting = [...pieces.filter(({ rush }) => rush), ...pieces.filter(({ rush }) => !rush)];
  const filled: Filled<P>[] = [];
  const whole = new WholeOrders(rooms, options);
  for (const room of rooms) {
    const fitting = waiting.filter(({ region }) => fits(region, room));
    if (fitting.length === 0) continue;
    const fixed = fixedIn(room, options.fixed ?? []);
    const asFilled = (sheets: readonly LaidPieces<P>[]): Filled<P>[] => {
      const numbers = sheetNumbers(room, [...fixed.keys()], sheets.length);
      const own = sheets.map((laid, index) => ({ room, number: numbers[index]!, laid }));
      return own.filter(({ laid }) => laid.length > 0).sort((a, b) => a.number - b.number);
    };
    const reportBetter = (sheets: readonly LaidPieces<P>[]) => onBetter?.([...filled, ...asFilled(sheets)]);
    const goHere = new Set(fitting);
    const elsewhere = new Set(waiting.filter((piece) => !goHere.has(piece)).map(({ order }) => order));
    const goesOnOne = (order: string) =>
      whole.goesOnOne(
        order,
        waiting.filter((piece) => piece.order === order),
      );
    const orders = { goesOnOne, elsewhere };
    const filler = new Filler<P>(room, [...fixed.values()], orders, options, reportBetter);
    const sheets = await filler.sheets(fitting);
    const done = new Set(sheets.flatMap((laid) => laid.map(({ piece }) => piece)));
    filled.push(...asFilled(sheets));
    onBetter?.(filled);
    waiting = waiting.filter((piece) => !done.has(piece));
  }
  return { filled, left: waiting };
}

/** Share of the sheet's area that is offered in pieces; more than they can ever fill. */
const hardlyFilled = 1.1;

/** Number of tries to fill up a sheet of rush pieces with fewer and fewer others. */
const mostTrials = 4;

interface Orders {
  /** Whether all that there still is of an order goes on one sheet or offcut, of any size. */
  readonly goesOnOne: (order: string) => Promise<boolean>;
  /** Those with pieces that this room is too small for. */
  readonly elsewhere: ReadonlySet<string>;
}

class Filler<P extends PieceToFill> {
  readonly #room: Room;
  readonly #fixed: readonly FixedContents[];
  readonly #orders: Orders;
  readonly #options: FillOptions;
  readonly #onBetter: (sheets: readonly LaidPieces<P>[]) => void;

  constructor(
    room: Room,
    fixed: readonly FixedContents[],
    orders: Orders,
    options: FillOptions,
    onBetter: (sheets: readonly LaidPieces<P>[]) => void,
  ) {
    this.#room = room;
    this.#fixed = fixed;
    this.#orders = orders;
    this.#options = options;
    this.#onBetter = onBetter;
  }

  /**
   * At most as many sheets as there are: first those with fixed pieces, possibly with nothing else, then those with
   * rush pieces.
   */
  async sheets(pieces: readonly P[]): Promise<LaidPieces<P>[]> {
    const { most } = this.#room;
    const { keepTogether } = this.#options;
    // No more pieces than can fit; the rest is for later sheets.
    const some = most === Infinity ? pieces : upTo(pieces, most * hardlyFilled * this.#area);
    const nested = await this.#nested(some, undefined, undefined, (sheets) => {
      if (sheets.length <= most) this.#onBetter(sheets);
    });
    const count = this.#fixed.length;
    const close = [...nested.slice(0, count), ...rushedFirst(nested.slice(count), most)];
    if (keepTogether) return (await this.#together(pieces, close)).slice(0, most);
    return (await this.#hastily(some, close)).slice(0, most);
  }

  get #area(): number {
    const { room, missing } = this.#room;
    const { width, height, margin } = room;
    return (width - 2 * margin) * (height - 2 * margin) - missing.reduce((sum, region) => sum + area(region), 0);
  }

  #nested(
    pieces: readonly P[],
    share?: number,
    settled: readonly FixedContents[] = this.#fixed,
    onBetter?: (sheets: readonly LaidPieces<P>[]) => void,
  ): Promise<LaidPieces<P>[]> {
    return nestIn(
      this.#room,
      pieces,
      settled,
      { ...this.#options, ...(share === undefined ? {} : { share }) },
      onBetter,
    );
  }

  /**
   * Rush pieces on sheets of their own, or with what is fixed, the last one filled up with others. If that takes more
   * sheets than laying out everything together, the latter is kept, with the sheets that have rush pieces first.
   */
  async #hastily(pieces: readonly P[], close: LaidPieces<P>[]): Promise<LaidPieces<P>[]> {
    const rushed = pieces.filter(({ rush }) => rush);
    const others = pieces.filter(({ rush }) => !rush);
    if (rushed.length === 0 || others.length === 0 || close.length < 2) return close;
    const first = await this.#nested(rushed);
    if (this.#rushSheets(first) >= this.#rushSheets(close)) return close;
    if (this.#fixed.length > 0) {
      const around = await this.#nested(others, undefined, this.#withLaid(first));
      const apart = around.map((laid, index) => [...(first[index] ?? []), ...laid]);
      return apart.length <= close.length ? apart : close;
    }
    const last = first.pop() ?? [];
    const shared = await this.#filledUp(
      last.map(({ piece }) => piece),
      others,
    );
    const done = new Set((shared ?? last).map(({ piece }) => piece));
    const rest = await this.#nested(others.filter((piece) => !done.has(piece)));
    const apart = [...first, shared ?? last, ...rest];
    return apart.length <= close.length ? apart : close;
  }

  /** Sheets with rush pieces, fixed ones included. */
  #rushSheets(sheets: readonly LaidPieces<P>[]): number {
    return sheets.filter((laid, index) => isRushed(laid) || this.#fixed[index]?.isRushed === true).length;
  }

  /** What lies on each sheet, as if all of it were fixed. */
  #withLaid(sheets: readonly LaidPieces<P>[]): FixedContents[] {
    return sheets.map((laid, index) => {
      const { regions = [], orders = [], isRushed: wasRushed = false } = this.#fixed[index] ?? {};
      return {
        regions: [...regions, ...laid.map(({ piece, transform: onto }) => transform(piece.region, onto))],
        orders: new Set([...orders, ...laid.map(({ piece }) => piece.order)]),
        isRushed: wasRushed || isRushed(laid),
      };
    });
  }

  /** A sheet with all of the first pieces and as many of the others as are found to fit with them. */
  async #filledUp(all: readonly P[], others: readonly P[]): Promise<LaidPieces<P> | undefined> {
    let free = this.#area - all.reduce((sum, { region }) => sum + area(region), 0);
    for (let trial = 0; trial < mostTrials; trial++, free *= 0.75) {
      const added = upTo(others, free);
      if (added.length === 0) return undefined;
      const sheets = await this.#nested([...all, ...added], trialShare);
      const whole = sheets.find((laid) => all.every((piece) => laid.some((each) => each.piece === piece)));
      if (whole) return whole;
    }
    return undefined;
  }

  /**
   * Keeps orders together: each on a single sheet if it fits on one; the next one shares the sheet if there is room.
   */
  async #together(pieces: readonly P[], close: LaidPieces<P>[]): Promise<LaidPieces<P>[]> {
    const isKept = (laid: LaidPieces<P>, index: number): boolean =>
      ordersOf(laid.map(({ piece }) => piece)).every(
        (order) =>
          this.#isWhole(order, laid, pieces) && !this.#fixed.some((each, on) => on !== index && each.orders.has(order)),
      );
    if (close.every(isKept)) return close;
    let waiting = pieces;
    const sheets: LaidPieces<P>[] = [];
    const take = (laid: LaidPieces<P>): void => {
      sheets.push(laid);
      const done = new Set(laid.map(({ piece }) => piece));
      waiting = waiting.filter((piece) => !done.has(piece));
    };
    for (const settled of this.#fixed) {
      const own = waiting.filter(({ order }) => settled.orders.has(order));
      const others = waiting.filter(({ order }) => !this.#fixed.some(({ orders }) => orders.has(order)));
      take(await this.#wholeOrders([...own, ...others], settled));
    }
    while (waiting.length > 0 && sheets.length < this.#room.most) {
      const laid = await this.#wholeOrders(waiting);
      if (laid.length === 0) break;
      take(laid);
    }
    return sheets;
  }

  /**
   * One sheet: starts with the orders likely to fit, removes those that are not complete on it, then tries others one
   * by one.
   */
  async #wholeOrders(waiting: readonly P[], settled?: FixedContents): Promise<LaidPieces<P>> {
    if (waiting.length === 0) return [];
    const round = settled ? [settled] : [];
    const free = this.#area - (settled?.regions ?? []).reduce((sum, region) => sum + area(region), 0);
    const likely = upTo(waiting, 0.9 * free);
    const nested = await this.#nested(likely, trialShare, round);
    // The fixed pieces are on the first sheet.
    const sheets = settled ? nested.slice(0, 1) : nested;
    const wholly = sheets.map((laid) => laid.filter(({ piece }) => this.#isWhole(piece.order, laid, waiting)));
    let kept = wholly.reduce<LaidPieces<P>>((best, laid) => (laidArea(laid) > laidArea(best) ? laid : best), []);
    const others = ordersOf(waiting).filter(
      (order) => !this.#orders.elsewhere.has(order) && !kept.some(({ piece }) => piece.order === order),
    );
    for (let failed = 0; failed < mostTrials && others.length > 0;) {
      const order = others.shift();
      const tried = [...kept.map(({ piece }) => piece), ...waiting.filter((piece) => piece.order === order)];
      const fitting = tried.reduce((sum, { region }) => sum + area(region), 0) <= free;
      const [first, ...more] = fitting ? await this.#nested(tried, trialShare, round) : [];
      if (first && more.length === 0 && first.length === tried.length) kept = first;
      else failed += 1;
    }
    if (kept.length > 0 || settled) return kept;
    // No order fits here by itself, so the first is split that fits nowhere else either.
    for (const order of ordersOf(waiting).slice(0, mostTrials)) {
      const own = waiting.filter((piece) => piece.order === order);
      const split = await this.#nested(own, undefined, []);
      const isKept = split.length === 1 && !this.#orders.elsewhere.has(order);
      if (isKept || !(await this.#orders.goesOnOne(order))) return split[0] ?? [];
    }
    return [];
  }

  #isWhole(order: string, laid: LaidPieces<PieceToFill>, pieces: readonly PieceToFill[]): boolean {
    return !this.#orders.elsewhere.has(order) && isWhole(order, laid, pieces);
  }
}
