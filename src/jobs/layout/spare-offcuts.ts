/** An offcut is not opened for a piece or two that sheets which are cut anyway have room for. */

import { area } from '../../geometry/measure.ts';
import { fillAll } from './fill-all.ts';
import type { Filled, FilledSheets, FillOptions, OnBetter } from './fill.ts';
import type { PieceToFill } from './piece-to-fill.ts';
import { roomOutline } from './rooms.ts';
import type { Room } from './rooms.ts';
import { takesMore } from './taken.ts';

/** Share of an offcut that pieces must cover for it to be worth opening in any case (our own judgement). */
const worthOpening = 0.25;

/**
 * As `fillAll`, with fewer offcuts where that takes no more sheets. All is laid out anew without them, so that it does not
 * matter afterwards whether they are still there.
 */
export async function fillSparingly<P extends PieceToFill>(
  pieces: readonly P[],
  rooms: readonly Room[],
  options: FillOptions,
  onBetter?: OnBetter<P>,
): Promise<FilledSheets<P>> {
  const { fixed = [], keepTogether } = options;
  const found = await fillAll(pieces, rooms, options, onBetter);
  const sparse = found.filled
    .filter(({ room: { offcut } }) => offcut && !fixed.some(({ room }) => room.offcut?.offcut === offcut.offcut))
    .filter((sheet) => coverOf(sheet) < worthOpening)
    .sort((a, b) => coverOf(a) - coverOf(b));
  const [least] = sparse;
  if (!least || found.filled.length === 1) return found;
  const fewer = rooms.filter(({ offcut }) => offcut?.offcut !== least.room.offcut!.offcut);
  const spared = await fillSparingly(pieces, fewer, options, onBetter);
  return takesMore({ ...spared, fixed }, { ...found, fixed }, keepTogether) ? found : spared;
}

function coverOf<P extends PieceToFill>({ room, laid }: Filled<P>): number {
  return laid.reduce((sum, { piece }) => sum + area(piece.region), 0) / area(roomOutline(room));
}
