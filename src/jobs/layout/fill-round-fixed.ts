/**
 * Fixed pieces leave the others as they would lie without them: those that are in the way give way, onto sheets that are
 * cut anyway where there is room. Everything is laid out anew only where that takes more than without fixed pieces.
 */

import { transform } from '../../geometry/affine.ts';
import { fillAll } from './fill-all.ts';
import type { Filled, FilledSheets, FillOptions, LostByFixing, OnBetter } from './fill.ts';
import type { PieceToFill } from './piece-to-fill.ts';
import { areNear } from './fixed-in-room.ts';
import type { FixedInRoom } from './fixed-in-room.ts';
import { ontoUsed, together } from './onto-used.ts';
import type { Room } from './rooms.ts';
import { fillSparingly } from './spare-offcuts.ts';
import { asFixed, keyOf, partedOrders, rushSheets, takesMore } from './taken.ts';

/** `all`: fixed ones included, since where they would lie decides where the others do. */
export async function fillRoundFixed<P extends PieceToFill>(
  all: readonly P[],
  isFixed: (piece: P) => boolean,
  rooms: readonly Room[],
  options: FillOptions & { readonly fixed: readonly FixedInRoom[] },
  onBetter?: OnBetter<P>,
): Promise<FilledSheets<P>> {
  const { fixed, keepTogether } = options;
  const pieces = all.filter((piece) => !isFixed(piece));
  if (fixed.length === 0 || pieces.length === 0) return fillSparingly(pieces, rooms, options, onBetter);
  const without = await fillSparingly(all, rooms, { ...options, fixed: [] }, (better) => {
    const { lying, moved } = clearOf(better, isFixed, fixed);
    if (moved.length === 0) onBetter?.(renumbered(lying, fixed));
  });
  const { lying, moved } = clearOf(without.filled, isFixed, fixed);
  const given = await givenWay(lying, [...moved, ...without.left.filter((piece) => !isFixed(piece))], rooms, options);
  if (!takesMore({ ...given, fixed }, { ...without, fixed: [] }, keepTogether)) return given;
  const anew = await fillSparingly(pieces, rooms, options, onBetter);
  const found = takesMore({ ...given, fixed }, { ...anew, fixed }, keepTogether) ? anew : given;
  const lost = lostBetween(without.filled.flatMap(asFixed), [...found.filled.flatMap(asFixed), ...fixed], keepTogether);
  return { ...found, lost };
}

/** Of what was asked, what the one layout keeps and the other does not. */
function lostBetween(
  without: readonly FixedInRoom[],
  found: readonly FixedInRoom[],
  keepTogether: boolean,
): LostByFixing {
  const [before, now] = [rushSheets(without), rushSheets(found)];
  const wereParted = partedOrders(without);
  const parted = [...(keepTogether ? partedOrders(found) : [])].filter((order) => !wereParted.has(order));
  return { ...(now > before ? { rush: { sheets: now, without: before } } : {}), parted: new Set(parted) };
}

/** What may stay, and what is in the way of something fixed. */
function clearOf<P extends PieceToFill>(
  filled: readonly Filled<P>[],
  isFixed: (piece: P) => boolean,
  fixed: readonly FixedInRoom[],
): { readonly lying: Filled<P>[]; readonly moved: P[] } {
  const moved: P[] = [];
  const lying = filled.map((sheet): Filled<P> => {
    const there = fixed.filter((each) => keyOf(each) === keyOf(sheet));
    const laid = sheet.laid.filter(({ piece, transform: onto }) => {
      if (isFixed(piece)) return false;
      const region = transform(piece.region, onto);
      const isClear = !there.some((each) => areNear(region, each.region, sheet.room.room.gap));
      if (!isClear) moved.push(piece);
      return isClear;
    });
    return { ...sheet, laid };
  });
  return { lying: lying.filter(({ laid }) => laid.length > 0), moved };
}

async function givenWay<P extends PieceToFill>(
  lying: readonly Filled<P>[],
  moved: readonly P[],
  rooms: readonly Room[],
  options: FillOptions & { readonly fixed: readonly FixedInRoom[] },
): Promise<FilledSheets<P>> {
  const { filled, left } = await ontoUsed(moved, renumbered(lying, options.fixed), rooms, options);
  if (left.length === 0) return { filled, left };
  const more = await fillAll(left, rooms, { ...options, fixed: [...options.fixed, ...filled.flatMap(asFixed)] });
  return { filled: together([...filled, ...more.filled]), left: more.left };
}

/** Without gaps in the numbers; sheets with something fixed keep theirs. */
function renumbered<P>(filled: readonly Filled<P>[], fixed: readonly FixedInRoom[]): Filled<P>[] {
  const kept = new Set(fixed.filter(({ room }) => !room.offcut).map(({ number }) => number));
  const taken = new Set(kept);
  return filled.map((sheet) => {
    if (sheet.room.offcut || kept.has(sheet.number)) return sheet;
    let number = sheet.room.first;
    while (taken.has(number)) number += 1;
    taken.add(number);
    return { ...sheet, number };
  });
}
