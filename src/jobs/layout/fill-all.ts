/**
 * Fills sheets and offcuts. Orders that are kept together wait for a sheet that they go on as a whole; where there is none
 * left, they are cut all the same.
 */

import { fill } from './fill.ts';
import type { FilledSheets, FillOptions, OnBetter } from './fill.ts';
import type { PieceToFill } from './piece-to-fill.ts';
import { together } from './onto-used.ts';
import type { Room } from './rooms.ts';
import { asFixed } from './taken.ts';

export async function fillAll<P extends PieceToFill>(
  pieces: readonly P[],
  rooms: readonly Room[],
  options: FillOptions,
  onBetter?: OnBetter<P>,
): Promise<FilledSheets<P>> {
  const found = await fill(pieces, rooms, options, onBetter);
  if (!options.keepTogether || found.left.length === 0) return found;
  const fixed = [...(options.fixed ?? []), ...found.filled.flatMap(asFixed)];
  const more = await fill(found.left, rooms, { ...options, keepTogether: false, fixed });
  return { filled: together([...found.filled, ...more.filled]), left: more.left };
}
