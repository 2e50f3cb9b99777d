/** What a layout takes of sheets and offcuts, and which of two takes more. */

import { transform } from '../../geometry/affine.ts';
import { area } from '../../geometry/measure.ts';
import type { Filled, FilledSheets } from './fill.ts';
import type { PieceToFill } from './piece-to-fill.ts';
import type { FixedInRoom } from './fixed-in-room.ts';
import { roomOutline } from './rooms.ts';
import type { Room } from './rooms.ts';

/** A sheet's number, or its offcut: what tells sheets of a stock apart. */
export function keyOf({ room, number }: Pick<FixedInRoom, 'room' | 'number'>): string {
  return room.offcut ? `${room.offcut.file} ${room.offcut.offcut.id}` : `${number}`;
}

export function asFixed<P extends PieceToFill>({ room, number, laid }: Filled<P>): FixedInRoom[] {
  return laid.map(({ piece, transform: onto }) => ({
    room,
    number: room.offcut?.offcut.id ?? number,
    region: transform(piece.region, onto),
    order: piece.order,
    rush: piece.rush,
  }));
}

export interface Taken<P> extends FilledSheets<P> {
  readonly fixed: readonly FixedInRoom[];
}

/**
 * Whether one leaves more out, parts more orders if they are to be kept together, takes more whole sheets, has rush
 * pieces on more of them, or takes more offcuts.
 */
export function takesMore<P extends PieceToFill>(one: Taken<P>, other: Taken<P>, keepTogether: boolean): boolean {
  const [a, b] = [takenBy(one, keepTogether), takenBy(other, keepTogether)];
  const at = a.findIndex((each, index) => Math.abs(each - b[index]!) > 1e-6);
  return at >= 0 && a[at]! > b[at]!;
}

function takenBy<P extends PieceToFill>({ filled, left, fixed }: Taken<P>, keepTogether: boolean): number[] {
  const all = [...filled.flatMap(asFixed), ...fixed];
  const sheets = [...new Map(all.map((each) => [keyOf(each), each.room])).values()];
  const areaOf = (some: readonly Room[]) => some.reduce((sum, room) => sum + area(roomOutline(room)), 0);
  return [
    left.length,
    keepTogether ? partsOf(all) : 0,
    areaOf(sheets.filter(({ offcut }) => !offcut)),
    rushSheets(all),
    areaOf(sheets.filter(({ offcut }) => offcut)),
  ];
}

/** In how many places the orders lie in all. */
function partsOf(all: readonly FixedInRoom[]): number {
  const ordered = all.filter(({ order }) => order !== '');
  return new Set(ordered.map((each) => `${keyOf(each)} ${each.order}`)).size;
}

/** How many sheets and offcuts have rush pieces. */
export function rushSheets(all: readonly FixedInRoom[]): number {
  return new Set(all.filter(({ rush }) => rush).map(keyOf)).size;
}

/** Orders on several sheets or offcuts. */
export function partedOrders(all: readonly FixedInRoom[]): Set<string> {
  const places = new Map<string, string>();
  const parted = new Set<string>();
  for (const each of all.filter(({ order }) => order !== '')) {
    const key = keyOf(each);
    if ((places.get(each.order) ?? key) !== key) parted.add(each.order);
    places.set(each.order, key);
  }
  return parted;
}
