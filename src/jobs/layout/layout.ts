/** Layout of a job: the place and number of each piece on the sheets, and the pieces that fit on none. */

import { transform } from '../../geometry/affine.ts';
import { union } from '../../geometry/clipper.ts';
import { area, boundsOf } from '../../geometry/measure.ts';
import type { Affine, Bounds, Region } from '../../geometry/types.ts';
import type { CutFrom } from '../../spec/model/model.ts';
import type { Piece, Tag } from '../../tag/tag.ts';
import { usualEffort } from '../../nesting/nest.ts';
import { planLaid } from '../../toolpath/cut-plan.ts';
import type { CutPlan } from '../../toolpath/cut-plan.ts';
import { withPackedContours } from '../../toolpath/packed-plan.ts';
import { movePaths, piecePaths } from '../../toolpath/piece-paths.ts';
import { oncePer } from '../../core/once-per.ts';
import { fillRoundFixed } from './fill-round-fixed.ts';
import type { Filled, FilledSheets, FillOptions, LostByFixing } from './fill.ts';
import type { FixedInRoom } from './fixed-in-room.ts';
import type { FixedPiece } from './fixed.ts';
import type { Offcut } from '../read/offcuts.ts';
import type { JobPiece } from '../orders/job-piece.ts';
import type { JobPieces, StockWork } from './pieces.ts';
import type { FixedEntry } from '../read/read-fixed.ts';
import { roomOutline } from './rooms.ts';
import type { Room } from './rooms.ts';

export interface LaidJobPiece {
  /** Counted through the whole job, from 1. */
  readonly number: number;
  readonly of: JobPiece;
  /** From tag to sheet coordinates: y up, the lower left corner of the sheet's box at the origin. */
  readonly toSheet: Affine;
  /** Finished outline on the sheet, and the area enclosed by the beam; made whenever they are asked for. */
  readonly region: Region;
  readonly enclosed: Region;
  readonly fixed?: FixedEntry;
}

/** A sheet of a layout that may still improve, without a cut plan. */
export type DraftSheet = Omit<JobSheet, 'plan'>;

export interface JobSheet {
  readonly stock: string;
  /** Number among the sheets of its stock, from 1; for an offcut, the offcut's own. */
  readonly number: number;
  /** For example “ply3 sheet 2” or “ply3 offcut 14”. */
  readonly name: string;
  readonly width: number;
  readonly height: number;
  /** Width kept free along the edges, in mm. */
  readonly margin: number;
  /** Least distance between the enclosed areas of two pieces, in mm: the gap plus the beam's width. */
  readonly gap: number;
  /** Outline of the sheet; for an offcut, any shape. */
  readonly outline: Region;
  readonly offcut?: { readonly file: string; readonly offcut: Offcut };
  readonly pieces: readonly LaidJobPiece[];
  readonly plan: CutPlan;
  readonly from: CutFrom;
  readonly output: Tag['output'];
  /** Share of the sheet's area that is used, from 0 to 1. */
  readonly filled: number;
}

export interface JobLayout {
  readonly sheets: readonly JobSheet[];
  readonly left: readonly { readonly stock: string; readonly of: JobPiece }[];
  /** By stock: what is not kept of what was asked because of fixed pieces. */
  readonly lost: ReadonlyMap<string, LostByFixing>;
}

export interface LayoutProgress {
  readonly stock: string;
  /** Of the stock, from 1, and of how many. */
  readonly number: number;
  readonly of: number;
  /** Of the best layout of this stock so far, offcuts included; absent before there is one. */
  readonly sheets?: number;
}

export interface LayoutOptions extends Pick<FillOptions, 'checkpoint' | 'effort' | 'keepTogether' | 'nest'> {
  readonly progress?: (at: LayoutProgress) => void;
  /** Called with all sheets so far, at each improvement. */
  readonly onBetter?: (sheets: () => DraftSheet[]) => void;
}

/** Effort for a first result, before any search for a better one. */
const firstEffort = 0.02 * usualEffort;

export async function layOut({ stocks }: JobPieces, options: LayoutOptions): Promise<JobLayout> {
  const left: { stock: string; of: JobPiece }[] = [];
  const best = new Map<StockWork, readonly FilledSheet[]>();
  const reportDraft = (stock: StockWork, filled: readonly FilledSheet[]): void => {
    if (isWorse(filled, best.get(stock))) return;
    best.set(stock, filled);
    if (best.size === stocks.length) options.onBetter?.(() => draftsOf(best));
  };
  if (options.onBetter)
    for (const stock of stocks) reportDraft(stock, (await filledOf(stock, { ...options, effort: firstEffort })).filled);
  const laidOut = async (stock: StockWork, index: number) => {
    const at = { stock: stock.name, number: index + 1, of: stocks.length };
    options.progress?.(at);
    const found = await filledOf(stock, options, (better) => {
      options.progress?.({ ...at, sheets: bySheet(better, stock.fixed).length });
      reportDraft(stock, better);
    });
    reportDraft(stock, found.filled);
    return found;
  };
  const found: Awaited<ReturnType<typeof laidOut>>[] = [];
  // No thread waits for the slowest search of a stock.
  if (options.nest?.takesSeveral) found.push(...(await Promise.all(stocks.map(laidOut))));
  else for (const [index, stock] of stocks.entries()) found.push(await laidOut(stock, index));
  const last = new Map<StockWork, readonly FilledSheet[]>();
  const lostIn = new Map<string, LostByFixing>();
  for (const [index, { filled, left: rest, lost }] of found.entries()) {
    const stock = stocks[index]!;
    last.set(stock, filled);
    if (lost) lostIn.set(stock.name, lost);
    left.push(...rest.map(({ of }) => ({ stock: stock.name, of })));
  }
  return { sheets: await planned(draftsOf(last), options.checkpoint), left, lost: lostIn };
}

/** The layout that these sheets are, which a search may not have finished. */
export async function layoutOf(
  drafts: readonly DraftSheet[],
  { stocks }: JobPieces,
  checkpoint: () => Promise<void>,
): Promise<JobLayout> {
  const laid = new Set(drafts.flatMap(({ pieces }) => pieces.map(({ of }) => of)));
  const left = stocks.flatMap(({ name: stock, pieces }) =>
    pieces.filter((of) => !laid.has(of)).map((of) => ({ stock, of })),
  );
  return { sheets: await planned(drafts, checkpoint), left, lost: new Map() };
}

async function planned(drafts: readonly DraftSheet[], checkpoint: () => Promise<void>): Promise<JobSheet[]> {
  const sheets: JobSheet[] = [];
  for (const draft of drafts) {
    await checkpoint();
    sheets.push(plannedSheet(draft));
  }
  return sheets;
}

async function filledOf(
  { pieces: all, fixed: fixedPieces, rooms }: StockWork,
  options: LayoutOptions,
  onBetter?: (filled: readonly FilledSheet[]) => void,
): Promise<FilledSheets<FilledSheet['laid'][number]['piece']>> {
  const settled = new Set(fixedPieces.map(({ of }) => of));
  // Of hundreds of pieces, what they take up is made whenever it is asked for.
  const pieces = all.map((of) => ({
    of,
    get region() {
      return of.region;
    },
    order: of.of.order,
    rush: of.of.rush,
  }));
  const fixed = fixedPieces.map(({ of, entry, room, enclosed }): FixedInRoom => {
    return { room, number: entry.on.number, region: enclosed, order: of.of.order, rush: of.of.rush };
  });
  return fillRoundFixed(pieces, ({ of }) => settled.has(of), rooms, { ...options, fixed }, onBetter);
}

/** Fewer pieces, or as many on more sheets. */
function isWorse(filled: readonly FilledSheet[], before: readonly FilledSheet[] = []): boolean {
  const count = (sheets: readonly FilledSheet[]) => sheets.reduce((sum, { laid }) => sum + laid.length, 0);
  const more = count(filled) - count(before);
  return more < 0 || (more === 0 && before.length > 0 && filled.length > before.length);
}

/** Numbered through all stocks. */
function draftsOf(filled: ReadonlyMap<StockWork, readonly FilledSheet[]>): DraftSheet[] {
  let number = 0;
  return [...filled].flatMap(([stock, sheets]) =>
    rushedFirst(bySheet(sheets, stock.fixed)).map((group) => {
      const draft = draftOf(group, stock, number);
      number += draft.pieces.length;
      return draft;
    }),
  );
}

type FilledSheet = Filled<{ readonly of: JobPiece; readonly region: Region }>;

/** Everything on one sheet or offcut. */
interface SheetGroup {
  readonly room: Room;
  /** 0 for an offcut. */
  readonly number: number;
  readonly laid: readonly Pick<LaidJobPiece, 'of' | 'toSheet' | 'fixed'>[];
}

/** A fixed piece stays on its sheet even if nothing else is there. */
function bySheet(filled: readonly FilledSheet[], fixed: readonly FixedPiece[]): SheetGroup[] {
  const groups = new Map<Offcut | number, SheetGroup>();
  const add = (room: Room, number: number, laid: SheetGroup['laid']): void => {
    const key = room.offcut?.offcut ?? number;
    const before = groups.get(key);
    groups.set(key, {
      room: before?.room ?? room,
      number: room.offcut ? 0 : number,
      laid: [...(before?.laid ?? []), ...laid],
    });
  };
  for (const { room, number, laid } of filled) {
    add(
      room,
      number,
      laid.map(({ piece: { of }, transform: toSheet }) => ({ of, toSheet })),
    );
  }
  for (const { of, entry, room, toSheet } of fixed) add(room, entry.on.number, [{ of, toSheet, fixed: entry }]);
  const all = [...groups.values()];
  const offcuts = all.filter(({ room }) => room.offcut);
  const sheets = all.filter(({ room }) => !room.offcut).sort((a, b) => a.number - b.number);
  return [...offcuts, ...sheets];
}

/** Sheets with rush pieces are cut first, whatever their stock. */
function rushedFirst(groups: readonly SheetGroup[]): SheetGroup[] {
  const isRushed = ({ laid }: SheetGroup) => laid.some(({ of }) => of.of.rush);
  return [...groups.filter(isRushed), ...groups.filter((group) => !isRushed(group))];
}

function draftOf({ room, number: sheetNumber, laid: lying }: SheetGroup, stock: StockWork, before: number): DraftSheet {
  const { name: stockName, from, output } = stock;
  const name = room.offcut ? `${stockName} offcut ${room.offcut.offcut.id}` : `${stockName} sheet ${sheetNumber}`;
  const outline = roomOutline(room);
  const box = boundsOf(outline)!;
  const pieces = inReadingOrder(lying).map((each, index) => laidPiece(before + index + 1, each));
  return {
    stock: stockName,
    number: room.offcut?.offcut.id ?? sheetNumber,
    name,
    width: box.maxX,
    height: box.maxY,
    margin: room.room.margin,
    gap: room.room.gap,
    outline,
    ...(room.offcut ? { offcut: room.offcut } : {}),
    pieces,
    from,
    output,
    filled: enclosedArea({ pieces }) / area(outline),
  };
}

/** What the beam takes up, in mm². */
export function enclosedArea({ pieces }: Pick<DraftSheet, 'pieces'>): number {
  return pieces.reduce((sum, { enclosed }) => sum + area(enclosed), 0);
}

function laidPiece(number: number, { of, toSheet, fixed }: SheetGroup['laid'][number]): LaidJobPiece {
  return {
    number,
    of,
    toSheet,
    ...(fixed ? { fixed } : {}),
    get region() {
      return transform(of.piece.region, toSheet);
    },
    get enclosed() {
      return transform(of.region, toSheet);
    },
  };
}

function plannedSheet(sheet: DraftSheet): JobSheet {
  const { pieces, from, output, width, height } = sheet;
  const bounds: Bounds = { minX: 0, minY: 0, maxX: width, maxY: height };
  const pathsOf = oncePer((piece: Piece) => piecePaths(piece, pieces.find(({ of }) => of.piece === piece)!.of.of.tag));
  const lines = pieces.map(({ number, of, toSheet }) =>
    movePaths({ ...pathsOf(of.piece), piece: pathName(number, of) }, toSheet),
  );
  return { ...sheet, plan: withPackedContours(planLaid(lines, bounds, { stock: from.stock, output })) };
}

function pathName(number: number, { of: { order, label }, piece }: JobPiece): string {
  return [`${number}`, order, label, piece.id].filter((part) => part !== '').join(': ');
}

/** Pieces whose tops differ by no more than this, in mm, count as one line. */
const lineMm = 25;

/** From top to bottom, each line from left to right. */
function inReadingOrder(laid: SheetGroup['laid']): SheetGroup['laid'][number][] {
  const boxes = new Map(laid.map((each) => [each, boundsOf(transform(each.of.piece.region, each.toSheet))!]));
  const down = [...laid].sort((a, b) => boxes.get(b)!.maxY - boxes.get(a)!.maxY);
  const lines: SheetGroup['laid'][number][][] = [];
  for (const each of down) {
    const line = lines.at(-1);
    if (line && boxes.get(line[0]!)!.maxY - boxes.get(each)!.maxY < lineMm) line.push(each);
    else lines.push([each]);
  }
  return lines.flatMap((line) => line.sort((a, b) => boxes.get(a)!.minX - boxes.get(b)!.minX));
}

export function cutFromSheet({ pieces }: Pick<JobSheet, 'pieces'>): Region {
  return union(pieces.map(({ enclosed }) => enclosed));
}
