/** Pieces that go on sheets, and what is asked of those that lie there. */

import { area } from '../../geometry/measure.ts';
import type { Region } from '../../geometry/types.ts';
import type { LaidPieces } from './nest-in-room.ts';

export interface PieceToFill {
  readonly region: Region;
  /** Pieces of one order may be kept together. */
  readonly order: string;
  readonly rush: boolean;
}

/** The longest leading run of pieces within this area; at least one. */
export function upTo<P extends PieceToFill>(pieces: readonly P[], most: number): P[] {
  let sum = 0;
  const end = pieces.findIndex(({ region }, index) => (sum += area(region)) > most && index > 0);
  return end < 0 ? [...pieces] : pieces.slice(0, end);
}

export function laidArea(laid: LaidPieces<PieceToFill>): number {
  return laid.reduce((sum, { piece }) => sum + area(piece.region), 0);
}

export function isRushed(laid: LaidPieces<PieceToFill>): boolean {
  return laid.some(({ piece }) => piece.rush);
}

/**
 * Sheets with the most rush pieces first. Among equals, fuller sheets come first if the number of sheets is limited;
 * otherwise they keep their order, so that the last sheet is the one that is not full.
 */
export function rushedFirst<P extends PieceToFill>(sheets: LaidPieces<P>[], most: number): LaidPieces<P>[] {
  const rushedCount = (laid: LaidPieces<P>) => laid.filter(({ piece }) => piece.rush).length;
  const fuller = (a: LaidPieces<P>, b: LaidPieces<P>) => (most === Infinity ? 0 : laidArea(b) - laidArea(a));
  return [...sheets].sort((a, b) => rushedCount(b) - rushedCount(a) || fuller(a, b));
}

export function ordersOf(pieces: readonly PieceToFill[]): string[] {
  return [...new Set(pieces.map(({ order }) => order))];
}

export function isWhole(order: string, laid: LaidPieces<PieceToFill>, pieces: readonly PieceToFill[]): boolean {
  const count = (all: readonly PieceToFill[]) => all.filter((piece) => piece.order === order).length;
  return count(laid.map(({ piece }) => piece)) === count(pieces);
}
