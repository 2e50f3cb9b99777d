/** Pieces onto sheets that are cut anyway, round what lies there. */

import type { Filled, FilledSheets, FillOptions } from './fill.ts';
import type { PieceToFill } from './piece-to-fill.ts';
import { fixedIn } from './fixed-in-room.ts';
import { nestIn, trialShare } from './nest-in-room.ts';
import { fits } from './rooms.ts';
import type { Room } from './rooms.ts';
import { asFixed, keyOf } from './taken.ts';

/** Lays pieces on sheets that are used already, where they have room; what is there stays. */
export async function ontoUsed<P extends PieceToFill>(
  pieces: readonly P[],
  used: readonly Filled<P>[],
  rooms: readonly Room[],
  options: FillOptions,
): Promise<FilledSheets<P>> {
  const settled = [...(options.fixed ?? []), ...used.flatMap(asFixed)];
  const added: Filled<P>[] = [];
  let left = [...pieces];
  for (const room of rooms) {
    const isUsed = settled.some(
      (each) => each.room.first === room.first && each.room.offcut?.offcut === room.offcut?.offcut,
    );
    const fitting = left.filter(({ region }) => fits(region, room));
    if (!isUsed || fitting.length === 0) continue;
    const contents = [...fixedIn(room, settled)];
    const sheets = await nestIn(
      room,
      fitting,
      contents.map(([, each]) => each),
      { ...options, share: trialShare },
    );
    for (const [index, [number]] of contents.entries())
      added.push({ room, number: room.offcut ? 0 : number, laid: sheets[index] ?? [] });
    const done = new Set(added.flatMap(({ laid }) => laid.map(({ piece }) => piece)));
    left = left.filter((piece) => !done.has(piece));
  }
  return { filled: together([...used, ...added]), left };
}

/** One entry for each sheet. */
export function together<P>(filled: readonly Filled<P>[]): Filled<P>[] {
  const sheets = new Map<string, Filled<P>>();
  for (const sheet of filled) {
    const key = keyOf(sheet);
    sheets.set(key, { ...sheet, laid: [...(sheets.get(key)?.laid ?? []), ...sheet.laid] });
  }
  return [...sheets.values()].filter(({ laid }) => laid.length > 0);
}
