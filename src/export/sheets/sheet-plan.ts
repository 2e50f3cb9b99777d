/** Sheet plan: the place of each piece on the sheets that tags are cut from, and the cut plan of each sheet. */

import { transform } from '../../geometry/affine.ts';
import { keptPacked } from '../../geometry/packed-regions.ts';
import type { Affine, Region } from '../../geometry/types.ts';
import { nestHere } from '../../nesting/best-of.ts';
import type { Nester } from '../../nesting/best-of.ts';
import type { PartToNest } from '../../nesting/nest.ts';
import { uprightFirst } from '../../nesting/upright-first.ts';
import { sheetUses } from '../../nesting/leftover.ts';
import type { SheetUse } from '../../nesting/leftover.ts';
import type { CutFrom } from '../../spec/model/model.ts';
import type { Sheet } from '../../spec/model/workshop-model.ts';
import { byStock } from '../../tag/by-stock.ts';
import { kerfOf } from '../../tag/uncompensated.ts';
import type { Piece, Tag } from '../../tag/tag.ts';
import { planLaid } from '../../toolpath/cut-plan.ts';
import type { CutPlan } from '../../toolpath/cut-plan.ts';
import { withPackedContours } from '../../toolpath/packed-plan.ts';
import { movePaths, piecePaths, takenUp } from '../../toolpath/piece-paths.ts';

/** A tag with its name among the others. */
export interface NamedTag {
  readonly name: string;
  /** Row of the batch, from 0. */
  readonly row: number;
  readonly tag: Tag;
}

export interface LaidPiece {
  readonly name: string;
  /** Row of the batch, from 0, and number of the tag's copy, from 1. */
  readonly row: number;
  readonly copy: number;
  readonly piece: Piece;
  /** From tag to sheet coordinates: y up, the sheet's lower left corner at the origin. */
  readonly toSheet: Affine;
  /** Finished outline on the sheet, made whenever it is asked for: those of hundreds of pieces would fill the memory. */
  readonly region: Region;
}

export interface PlannedSheet {
  readonly pieces: readonly LaidPiece[];
  /** Its bounds are the whole sheet. */
  readonly plan: CutPlan;
  readonly use: SheetUse;
  /** Stock of the sheet, and how the machine works it. */
  readonly from: CutFrom;
}

export interface SheetPlan {
  readonly sheet: Sheet;
  readonly sheets: readonly PlannedSheet[];
  /** Pieces that fit on no sheet, each listed once. */
  readonly left: readonly { readonly name: string; readonly piece: Piece }[];
}

/**
 * Places all pieces of all tags, in the number of copies that the sheet asks for, on as few sheets of each stock as the
 * layout finds. The tags, at least one, belong to one spec.
 * @param checkpoint Awaited every few milliseconds; may throw to stop.
 */
export async function planSheets(
  tags: readonly NamedTag[],
  sheet: Sheet,
  checkpoint: () => Promise<void>,
  nest = nestHere,
): Promise<SheetPlan> {
  // Each row of a batch has its own stock object, so stocks are matched by name.
  const stocks = new Map<string, NamedTag[]>();
  for (const { name, row, tag } of tags) {
    for (const part of byStock(tag)) {
      const key = part.stock.name ?? '';
      stocks.set(key, [...(stocks.get(key) ?? []), { name, row, tag: part }]);
    }
  }
  const plans: SheetPlan[] = [];
  for (const group of stocks.values()) plans.push(await planOfStock(group, sheet, checkpoint, nest));
  return { sheet, sheets: plans.flatMap(({ sheets }) => sheets), left: plans.flatMap(({ left }) => left) };
}

async function planOfStock(
  tags: readonly NamedTag[],
  sheet: Sheet,
  checkpoint: () => Promise<void>,
  nest: Nester,
): Promise<SheetPlan> {
  const { stock, machine, output } = tags[0]!.tag;
  const { sheets, left } = await laidOut(tags, sheet, checkpoint, nest);
  const bounds = { minX: 0, minY: 0, maxX: sheet.width, maxY: sheet.height };
  const planned: PlannedSheet[] = [];
  for (const { use, on } of sheets) {
    await checkpoint();
    const lines = on.map((each) =>
      movePaths({ ...piecePaths(each.piece, each.tag), piece: pathName(each) }, each.toSheet),
    );
    planned.push({
      pieces: on.map(({ name, row, copy, piece, toSheet }) => ({
        name,
        row,
        copy,
        piece,
        toSheet,
        get region() {
          return transform(piece.region, toSheet);
        },
      })),
      plan: withPackedContours(planLaid(lines, bounds, { stock, output })),
      use,
      from: { stock, ...(machine ? { machine } : {}) },
    });
  }
  return { sheet, sheets: planned, left: left.map(({ name, piece }) => ({ name, piece })) };
}

interface PlacedPiece extends NamedTag, Pick<LaidPiece, 'copy' | 'piece' | 'toSheet'> {}

interface LaidOut {
  readonly sheets: readonly { readonly use: SheetUse; readonly on: readonly PlacedPiece[] }[];
  /** Pieces that fit on no sheet, each once. */
  readonly left: readonly Pick<PlacedPiece, 'name' | 'piece'>[];
}

/** What each piece takes up on a sheet is not needed afterwards; their paths are made again then. */
async function laidOut(
  tags: readonly NamedTag[],
  sheet: Sheet,
  checkpoint: () => Promise<void>,
  nest: Nester,
): Promise<LaidOut> {
  const single: Omit<WaitingPiece, 'copy'>[] = [];
  for (const named of tags) {
    await checkpoint();
    for (const piece of named.tag.pieces) {
      const region = takenUp(piece, piecePaths(piece, named.tag));
      if (region.length > 0) single.push({ ...named, piece, outline: keptPacked(region) });
    }
  }
  const waiting = Array.from({ length: sheet.copies }, (_, index): WaitingPiece[] =>
    single.map((each) => ({ ...each, copy: index + 1 })),
  ).flat();
  const turns = ({ never: 'none', half: 'half', quarter: 'quarter' } as const)[sheet.turn];
  const parts = waiting.map(({ outline }): PartToNest => ({
    get region() {
      return outline.region;
    },
    turns,
  }));
  // The beam takes half a kerf on either side of what it encloses; the gap is the material that remains.
  const room = { ...sheet, gap: sheet.gap + kerfOf(tags[0]!.tag.stock).outer };
  const layout = await uprightFirst(nest)(parts, room, checkpoint);
  const { placements, unplaced } = layout;
  const sheets = sheetUses(parts, room, layout).map((use, index) => {
    const here = placements.filter((placement) => placement.sheet === index);
    const on = here.map(({ part, transform: toSheet }): PlacedPiece => {
      const { name, row, tag, copy, piece } = waiting[part]!;
      return { name, row, tag, copy, piece, toSheet };
    });
    return { use, on };
  });
  return { sheets, left: unplaced.map((part) => waiting[part]!).filter(({ copy }) => copy === 1) };
}

interface WaitingPiece extends NamedTag, Pick<LaidPiece, 'copy' | 'piece'> {
  /** What the beam takes up. */
  readonly outline: { readonly region: Region };
}

function pathName({ name, piece }: { readonly name: string; readonly piece: Piece }): string {
  return name === '' ? piece.id : `${name}: ${piece.id}`;
}
