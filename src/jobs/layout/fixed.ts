/**
 * Fixed pieces: resolves the entries of a job to pieces and checks that they can lie there. Those that cannot are
 * reported and laid out like any other piece.
 */

import { chain, identity, rotation, transform, translation } from '../../geometry/affine.ts';
import { difference, intersection, offset } from '../../geometry/clipper.ts';
import { area, boundsOf } from '../../geometry/measure.ts';
import type { Affine, Region } from '../../geometry/types.ts';
import { mm } from '../../core/figures.ts';
import type { IssueCode, Severity } from '../../core/issue-kinds.ts';
import type { YamlPath } from '../../core/issue.ts';
import { clip } from '../../core/length.ts';
import { counted } from '../../core/units.ts';
import { lookOfStock } from '../../look/stock-look.ts';
import { stockOf } from '../../tag/by-stock.ts';
import { didYouMean, nearestWords } from '../../spec/schema/suggest.ts';
import type { FixedEntry } from '../read/read-fixed.ts';
import type { JobPiece } from '../orders/job-piece.ts';
import { areNear, leastOverlap, nearMm } from './fixed-in-room.ts';
import { roomOutline } from './rooms.ts';
import type { Room } from './rooms.ts';

export interface FixedPiece {
  readonly of: JobPiece;
  readonly entry: FixedEntry;
  /** Room of the sheet, or the first room of the offcut. */
  readonly room: Room;
  /** From tag to sheet coordinates. */
  readonly toSheet: Affine;
  /** Area enclosed by the beam, in sheet coordinates. */
  readonly enclosed: Region;
}

export interface StockToFix {
  readonly name: string;
  readonly pieces: readonly JobPiece[];
  readonly rooms: readonly Room[];
}

export type ReportFixed = (code: IssueCode, path: YamlPath, message: string, severity?: Severity) => void;

/** Keyed by stock name. `leftOut`: specs with tags whose problems are reported elsewhere. */
export function fixedPieces(
  entries: readonly FixedEntry[],
  stocks: readonly StockToFix[],
  leftOut: ReadonlySet<string>,
  report: ReportFixed,
): Map<string, FixedPiece[]> {
  const found = new Map<string, FixedPiece[]>();
  const all = stocks.flatMap((stock) => stock.pieces.map((of) => ({ of, stock })));
  const taken = new Map<JobPiece, FixedEntry>();
  for (const entry of entries) {
    const match = matchOf(entry, all, leftOut, report);
    if (!match) continue;
    const { of, stock } = match;
    if (taken.has(of)) {
      report('bad-value', entry.path, `${pieceLabel(of)} is fixed already; it lies in one place only.`);
      continue;
    }
    const room = roomOf(entry, stock, report);
    if (!room) continue;
    const placed = { of, entry, room, ...placedAt(of, entry) };
    const others = (found.get(stock.name) ?? []).filter((other) => isSameSheet(other.entry, entry));
    if (!liesOnSheet(placed, report) || !liesApart(placed, others, report)) continue;
    tellAcross(placed, stock.name, report);
    taken.set(of, entry);
    found.set(stock.name, [...(found.get(stock.name) ?? []), placed]);
  }
  return found;
}

interface Match {
  readonly of: JobPiece;
  readonly stock: StockToFix;
}

/** Narrows the pieces down key by key; the first key that matches nothing is the problem. */
function matchOf(
  { spec, order, tag, piece, copy, path }: FixedEntry,
  all: readonly Match[],
  leftOut: ReadonlySet<string>,
  report: ReportFixed,
): Match | undefined {
  const ofSpec = all.filter(({ of }) => of.of.spec === spec);
  if (ofSpec.length === 0) {
    // The reason why it has no pieces has already been reported.
    if (!leftOut.has(spec)) {
      const near = didYouMean(nearestWords(spec, [...new Set(all.map(({ of }) => of.of.spec))]));
      report('unknown-piece', [...path, 'spec'], `Nothing in this job is made from “${clip(spec)}”.${near}`);
    }
    return undefined;
  }
  const steps = [
    { key: 'order', what: 'order', wanted: order, of: ({ of }: Match) => of.of.order },
    { key: 'tag', what: 'tag', wanted: tag, of: ({ of }: Match) => of.of.label },
    { key: 'piece', what: 'piece', wanted: piece, of: ({ of }: Match) => of.piece.id },
  ];
  let left = ofSpec;
  for (const { key, what, wanted, of } of steps) {
    const names = [...new Set(left.map(of))];
    const named = names.filter((name) => name !== '');
    if (wanted === undefined) {
      if (names.length > 1) {
        report('missing-key', path, `Say which ${what} of ${spec}: ${quotedList(named)}.`);
        return undefined;
      }
      continue;
    }
    const own = left.filter((match) => of(match) === wanted);
    if (own.length === 0) {
      const message =
        named.length > 0
          ? `There is no ${what} “${clip(wanted)}” among these: ${quotedList(named)}.`
          : `Nothing made from ${spec} has ${what === 'order' ? 'an order' : `a ${what}`} in this job.`;
      if (!leftOut.has(spec)) report('unknown-piece', [...path, key], message);
      return undefined;
    }
    left = own;
  }
  const match = left.find(({ of }) => of.copy === copy);
  if (!match) {
    const message = `There ${left.length === 1 ? 'is' : 'are'} only ${counted(left.length, 'copy', 'copies')} of ${pieceLabel(left[0]!.of)}.`;
    report('unknown-piece', [...path, 'copy'], message);
  }
  return match;
}

const mostNames = 6;

function quotedList(names: readonly string[]): string {
  const quotedNames = names.slice(0, mostNames).map((name) => `“${clip(name)}”`);
  const more = names.length - quotedNames.length;
  return more > 0 ? `${quotedNames.join(', ')} and ${more} more` : quotedNames.join(', ');
}

function pieceLabel({ of: { label, order, spec }, piece, copy }: JobPiece): string {
  const name = label === '' ? piece.title : label;
  const ofOrder = order === '' ? '' : ` of order ${clip(order)}`;
  return `“${clip(name === '' ? spec : name)}”${ofOrder}${copy > 1 ? ` (copy ${copy})` : ''}`;
}

function roomOf(
  { on: { kind, number }, path }: FixedEntry,
  { name, rooms }: StockToFix,
  report: ReportFixed,
): Room | undefined {
  if (kind === 'offcut') {
    const room = rooms.find(({ offcut }) => offcut?.offcut.id === number);
    if (!room) report('bad-value', [...path, 'offcut'], `“${clip(name)}” has no free offcut ${number}.`);
    return room;
  }
  const sheets = rooms.filter(({ offcut }) => !offcut);
  const room = sheets.find(({ first, most }) => number >= first && number < first + most);
  const count = sheets.reduce((sum, { most }) => sum + most, 0);
  if (!room) {
    const there = count === 0 ? 'only offcuts' : `only ${counted(count, 'sheet')}`;
    report('bad-value', [...path, 'sheet'], `There is no sheet ${number}: “${clip(name)}” has ${there}.`);
  }
  return room;
}

function placedAt({ piece, region }: JobPiece, { at, turned }: FixedEntry): Pick<FixedPiece, 'toSheet' | 'enclosed'> {
  const turn = turnBy(turned);
  const { minX, minY } = boundsOf(transform(piece.region, turn))!;
  const toSheet = chain(turn, translation(at.x - minX, at.y - minY));
  return { toSheet, enclosed: transform(region, toSheet) };
}

const quarterTurns: readonly Affine[] = [
  identity,
  { a: 0, b: 1, c: -1, d: 0, e: 0, f: 0 },
  { a: -1, b: 0, c: 0, d: -1, e: 0, f: 0 },
  { a: 0, b: -1, c: 1, d: 0, e: 0, f: 0 },
];

/** Counter-clockwise; exact for quarter turns. */
function turnBy(degrees: number): Affine {
  const quarters = degrees / 90;
  if (Number.isInteger(quarters)) return quarterTurns[((quarters % 4) + 4) % 4]!;
  return rotation(-degrees, { x: 0, y: 0 });
}

function isSameSheet({ on: a }: FixedEntry, { on: b }: FixedEntry): boolean {
  return a.kind === b.kind && a.number === b.number;
}

function liesOnSheet({ of, entry, room, enclosed }: FixedPiece, report: ReportFixed): boolean {
  const sheet = roomOutline(room);
  const where = entry.on.kind === 'offcut' ? 'offcut' : 'sheet';
  if (area(difference(enclosed, [sheet])) > leastOverlap) {
    const [box, edge] = [boundsOf(enclosed)!, boundsOf(sheet)!];
    const beyond = Math.max(edge.minX - box.minX, edge.minY - box.minY, box.maxX - edge.maxX, box.maxY - edge.maxY);
    const far = beyond > 0 ? `${mm(beyond)} beyond` : 'beyond';
    const message = `${pieceLabel(of)} reaches ${far} the edge of the ${where} with its cut; it is laid out like any other.`;
    report('exceeds-sheet', [...entry.path, 'at'], message);
    return false;
  }
  const { margin } = room.room;
  if (margin > 0 && area(difference(enclosed, [offset(sheet, nearMm - margin)])) > leastOverlap)
    report('bad-value', [...entry.path, 'at'], `${pieceLabel(of)} lies in the margin of ${mm(margin, 1)}.`, 'warning');
  return true;
}

/** How far a piece may be turned from its grain, in degrees, before anyone sees it: our own judgement. */
const seenDegrees = 5;

/** A piece that the hand has turned across the grain, on sheets whose pieces keep its direction. */
function tellAcross({ of, entry, room }: FixedPiece, stock: string, report: ReportFixed): void {
  if (room.turn === 'quarter' || lookOfStock(stockOf(of.piece, of.of.tag)).grain === undefined) return;
  const turned = ((entry.turned % 180) + 180) % 180;
  if (Math.min(turned, 180 - turned) <= seenDegrees) return;
  const across = Math.abs(turned - 90) < seenDegrees ? 'lies across the grain' : 'lies askew to the grain';
  const message = `${pieceLabel(of)} ${across}, unlike the others of “${clip(stock)}”. Where that is no matter, give its sheets “turn: quarter”.`;
  report('bad-value', [...entry.path, 'turned'], message, 'warning');
}

function liesApart(
  { of, entry, room, enclosed }: FixedPiece,
  others: readonly FixedPiece[],
  report: ReportFixed,
): boolean {
  const over = others.find((other) => area(intersection(enclosed, other.enclosed)) > leastOverlap);
  if (over) {
    const message = `${pieceLabel(of)} overlaps ${pieceLabel(over.of)}, which is fixed above; it is laid out like any other.`;
    report('bad-value', [...entry.path, 'at'], message);
    return false;
  }
  const near = others.find((other) => areNear(enclosed, other.enclosed, room.room.gap));
  if (near)
    report(
      'bad-value',
      [...entry.path, 'at'],
      `${pieceLabel(of)} is nearer to ${pieceLabel(near.of)} than the gap of the sheet.`,
      'warning',
    );
  return true;
}
