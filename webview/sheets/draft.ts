/**
 * Draft of a piece's place during a change by hand: moved, turned, and kept on a sheet of its stock. Pure. Lengths in
 * mm, y down.
 */

import type { PieceOnSheet, PinnedPlace, SheetBox } from '../../src/protocol/sheets.ts';
import type { XY } from '../common/camera/viewport.ts';
import type { SheetPlace } from './arrange.ts';

export interface Draft {
  readonly piece: PieceOnSheet;
  readonly place: SheetPlace;
  /** Relative to that sheet. */
  readonly matrix: PieceOnSheet['matrix'];
  readonly box: SheetBox;
  readonly turned: number;
}

export function draftOf(piece: PieceOnSheet, place: SheetPlace): Draft {
  const { matrix, box, turned } = piece;
  return { piece, place, matrix, box, turned };
}

/**
 * Moves by a distance on the page, to the nearest sheet of the piece's stock and inside its margin. `roundMm`:
 * coordinates are multiples of this.
 */
export function movedDraft(draft: Draft, [dx, dy]: XY, places: readonly SheetPlace[], roundMm: number): Draft {
  const { place, box } = draft;
  const onPage = shifted(box, place.x + dx, place.y + dy);
  const own = places.filter(({ sheet }) => sheet.stock === place.sheet.stock);
  const nearest = own.reduce(
    (best, each) => (distanceTo(each, onPage) < distanceTo(best, onPage) ? each : best),
    place,
  );
  const wanted = shifted(onPage, -nearest.x, -nearest.y);
  return clampedDraft({ ...draft, place: nearest }, wanted, roundMm);
}

/** Rotates by a quarter turn about its centre, counter-clockwise, or clockwise for −1. */
export function turnedDraft(draft: Draft, quarters: 1 | -1, roundMm: number): Draft {
  const [minX, minY, maxX, maxY] = draft.box;
  const [x, y] = [(minX + maxX) / 2, (minY + maxY) / 2];
  const [a, b, c, d, e, f] = draft.matrix;
  const turn = (px: number, py: number): XY => [quarters * py, -quarters * px];
  const [ta, tb] = turn(a, b);
  const [tc, td] = turn(c, d);
  const [te, tf] = turn(e - x, f - y);
  const [halfWide, halfHigh] = [(maxY - minY) / 2, (maxX - minX) / 2];
  const box: SheetBox = [x - halfWide, y - halfHigh, x + halfWide, y + halfHigh];
  const turned = (draft.turned + 90 * quarters + 360) % 360;
  return clampedDraft({ ...draft, matrix: [ta, tb, tc, td, te + x, tf + y], box, turned }, box, roundMm);
}

export function pinnedPlace({ piece, place: { sheet }, box, turned }: Draft): PinnedPlace {
  const tidy = (mm: number) => Math.round(mm * 1e4) / 1e4;
  return { piece: piece.id, sheet: sheet.id, x: tidy(box[0]), y: tidy(sheet.height - box[3]), turned };
}

/** As near to the target as the sheet allows. */
function clampedDraft(draft: Draft, wanted: SheetBox, roundMm: number): Draft {
  const { piece, place, box, matrix } = draft;
  const { width, height, margin } = place.sheet;
  const free = margin + piece.beyond;
  const [wide, high] = [wanted[2] - wanted[0], wanted[3] - wanted[1]];
  const left = clamp(roundedTo(wanted[0], roundMm), free, width - free - wide);
  const bottom = clamp(roundedTo(height - wanted[3], roundMm), free, height - free - high);
  const [dx, dy] = [left - box[0], height - bottom - box[3]];
  const [a, b, c, d, e, f] = matrix;
  return { ...draft, box: shifted(box, dx, dy), matrix: [a, b, c, d, e + dx, f + dy] };
}

function clamp(value: number, least: number, most: number): number {
  return Math.max(least, Math.min(most, value));
}

function roundedTo(value: number, step: number): number {
  return Math.round(Math.round(value / step) * step * 1e4) / 1e4;
}

function shifted([minX, minY, maxX, maxY]: SheetBox, dx: number, dy: number): SheetBox {
  return [minX + dx, minY + dy, maxX + dx, maxY + dy];
}

/** Distance from the centre of a box. */
function distanceTo({ sheet, x, y }: SheetPlace, [minX, minY, maxX, maxY]: SheetBox): number {
  const [px, py] = [(minX + maxX) / 2, (minY + maxY) / 2];
  return Math.hypot(Math.max(x - px, 0, px - x - sheet.width), Math.max(y - py, 0, py - y - sheet.height));
}
