/** Nests pieces in one room, round what is fixed there. */

import type { Affine, Region } from '../../geometry/types.ts';
import { nestHere } from '../../nesting/best-of.ts';
import type { Nester } from '../../nesting/best-of.ts';
import { usualEffort } from '../../nesting/nest.ts';
import type { Layout, PartToNest } from '../../nesting/nest.ts';
import { uprightFirst } from '../../nesting/upright-first.ts';
import type { FixedContents } from './fixed-in-room.ts';
import { turnsOf } from './rooms.ts';
import type { Room } from './rooms.ts';

/** What lies on one sheet, by hand or not. */
export type LaidPieces<P> = readonly { readonly piece: P; readonly transform: Affine }[];

export interface NestInRoomOptions {
  readonly checkpoint: () => Promise<void>;
  /** As for `nest`. */
  readonly effort?: number;
  /** Share of the effort; a few sheets or an offcut get less than an unlimited number of sheets. */
  readonly share?: number;
  /** Here, unless said otherwise. */
  readonly nest?: Nester;
}

/** Share of the effort for a layout that is one of several tries. */
export const trialShare = 0.25;

/** By sheet, those with fixed contents first. */
export async function nestIn<P extends { readonly region: Region }>(
  { room, turn, most }: Room,
  pieces: readonly P[],
  settled: readonly FixedContents[],
  { checkpoint, effort = usualEffort, share = most === Infinity ? 1 : trialShare, nest = nestHere }: NestInRoomOptions,
  onBetter?: (sheets: readonly LaidPieces<P>[]) => void,
): Promise<LaidPieces<P>[]> {
  const fixed = settled.map(({ regions }) => regions);
  if (pieces.length === 0) return fixed.map(() => []);
  const turns = turnsOf[turn];
  const parts = pieces.map((piece): PartToNest => ({
    get region() {
      return piece.region;
    },
    turns,
  }));
  const bySheet = ({ placements, sheets }: Layout): LaidPieces<P>[] =>
    Array.from({ length: sheets }, (_, sheet) =>
      placements
        .filter((placement) => placement.sheet === sheet)
        .map(({ part, transform: onto }) => ({ piece: pieces[part]!, transform: onto })),
    );
  const reporting = onBetter && {
    onBetter: (layout: Layout) => {
      onBetter(bySheet(layout));
    },
  };
  return bySheet(await uprightFirst(nest)(parts, room, checkpoint, effort * share, { fixed, ...reporting }));
}
