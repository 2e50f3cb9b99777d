/** Rooms for the pieces of a stock: whole sheets, and offcuts by their outlines, in order of use. */

import { difference, offset } from '../../geometry/clipper.ts';
import { area, boundsOf, boxRing } from '../../geometry/measure.ts';
import { partsOf } from '../../geometry/parts.ts';
import type { Region, Ring } from '../../geometry/types.ts';
import { leastOffcutMm } from '../../nesting/leftover.ts';
import type { PartToNest, SheetRoom } from '../../nesting/nest.ts';
import type { Laying, SheetSource } from '../read/model.ts';
import { freeOffcuts } from '../read/offcuts.ts';
import type { Offcut, OffcutFile } from '../read/offcuts.ts';

export interface Room {
  readonly room: SheetRoom;
  readonly turn: Laying['turn'];
  /** Number of such sheets, and the number of the first, counted over all sheets of the stock; 0 for offcuts. */
  readonly most: number;
  readonly first: number;
  /** What is missing of the rectangle where an offcut is none: pieces keep the gap from it, which is the margin then. */
  readonly missing: readonly Region[];
  readonly offcut?: { readonly file: string; readonly offcut: Offcut };
}

export const turnsOf = { never: 'none', half: 'half', quarter: 'quarter' } as const satisfies Record<
  Laying['turn'],
  PartToNest['turns']
>;

/** Smaller ones are rounding along the edges. */
const leastMissingMm2 = 1e-3;

/** `kerf`: width that the beam takes between two pieces, in mm. */
export function roomsOf(
  sources: readonly SheetSource[],
  offcuts: ReadonlyMap<string, OffcutFile>,
  { job, kerf }: { readonly job: string; readonly kerf: number },
): Room[] {
  let next = 1;
  return sources.flatMap((source): Room[] => {
    const { margin, turn } = source;
    const gap = source.gap + kerf;
    if (source.kind === 'sheets') {
      const { width, height, count } = source;
      const first = next;
      next += count;
      return [{ room: { width, height, margin, gap }, turn, most: count, first, missing: [] }];
    }
    const file = offcuts.get(source.file);
    return (file ? freeOffcuts(file, job) : []).flatMap((offcut): Room[] => {
      const { maxX: width, maxY: height } = boundsOf(offcut.region) ?? { maxX: 0, maxY: 0 };
      const missing = missingOf(offcut.region, width, height, margin - gap);
      const free = width * height - missing.reduce((sum, region) => sum + area(region), 0);
      if (Math.min(width, height) - 2 * margin < leastOffcutMm || free < leastOffcutMm ** 2) return [];
      const room = { width, height, margin, gap };
      return [{ room, turn, most: 1, first: 0, missing, offcut: { file: source.file, offcut } }];
    });
  });
}

export function roomOutline({ room: { width, height }, offcut }: Room): Region {
  return offcut?.offcut.region ?? [sheetRing(width, height)];
}

/** `inset`: how far inside the outline pieces that keep the gap from what is missing would still be too near, in mm. */
function missingOf(region: Region, width: number, height: number, inset: number): Region[] {
  const isRectangle = area(region) > width * height * (1 - 1e-6);
  if (isRectangle) return [];
  const usable = inset > 0 ? offset(region, -inset) : region;
  const all = difference([sheetRing(width, height)], [usable]);
  return partsOf(all).filter((part) => area(part) > leastMissingMm2);
}

function sheetRing(width: number, height: number): Ring {
  return boxRing({ minX: 0, minY: 0, maxX: width, maxY: height });
}

/** Tolerance in mm for a piece that just fits, whose sheet may lose this much by rounding. */
const slackMm = 1e-5;

/** Whether a piece alone fits into a room, in one of its allowed orientations. */
export function fits(region: Region, { room, turn }: Room): boolean {
  const box = boundsOf(region);
  if (!box) return false;
  const [across, up] = [box.maxX - box.minX, box.maxY - box.minY];
  const free = { width: room.width - 2 * room.margin + slackMm, height: room.height - 2 * room.margin + slackMm };
  const upright = across <= free.width && up <= free.height;
  return upright || (turn === 'quarter' && up <= free.width && across <= free.height);
}
