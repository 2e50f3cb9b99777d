/** What a layout takes of sheets and offcuts, and which of two takes more. */

import { transform } from '../../geometry/affine.ts';
import { area } from '../../geometry/measure.ts';
import type { Filled, FilledSheets, PieceToFill } from './fill.ts';
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
  }));
}

export interface Taken<P> extends FilledSheets<P> {
  readonly fixed: readonly FixedInRoom[];
}

/** Whether one leaves more out, takes more whole sheets, parts more orders, or takes more offcuts. */
export function takesMore<P extends PieceToFill>(one: Taken<P>, other: Taken<P>, keepTogether: boolean): boolean {
  const [a, b] = [takenBy(one, keepTogether), takenBy(other, keepTogether)];
  const at = a.findIndex((each, index) => Math.abs(each - b[index]!) > 1e-6);
  return at >= 0 && a[at]! > b[at]!;
}

function takenBy<P extends PieceToFill>({ filled, left, fixed }: Taken<P>, keepTogether: boolean): number[] {
  const all = [...filled.flatMap(asFixed), ...fixed];
  const sheets = [...new Map(all.map((each) => [keyOf(each), each.room])).values()];
  const areaOf = (some: readonly Room[]) => some.reduce((sum, room) => sum + area(roomOutline(room)), 0);
  const parts = new Set(all.map((each) => `${keyOf(each)} ${each.order}`)).size;
  return [
    left.length,
    areaOf(sheets.filter(({ offcut }) => !offcut)),
    keepTogether ? parts : 0,
    areaOf(sheets.filter(({ offcut }) => offcut)),
  ];
}
