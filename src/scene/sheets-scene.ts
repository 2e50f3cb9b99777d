/** Converts sheets into what their page draws: each distinct piece once, and the places of its copies. Pure. */

import { difference, offset, union } from '../geometry/clipper.ts';
import { boundsOf } from '../geometry/measure.ts';
import { poleOf } from '../geometry/pole.ts';
import type { Affine, Region } from '../geometry/types.ts';
import { blend } from '../look/blend.ts';
import { lookOfStock } from '../look/stock-look.ts';
import type { PieceOnSheet, SheetBox, SheetOnPage, SheetShape } from '../protocol/sheets.ts';
import type { Stock } from '../spec/model/workshop-model.ts';
import type { Piece } from '../tag/tag.ts';
import { scoreData, pathData } from './path-data.ts';

export interface PieceToShow extends Pick<
  PieceOnSheet,
  'id' | 'number' | 'name' | 'order' | 'rush' | 'faulty' | 'fixed'
> {
  readonly piece: Piece;
  readonly toSheet: Affine;
  /** Finished outline on the sheet, y up, and the area enclosed by the beam. */
  readonly region: Region;
  readonly enclosed: Region;
}

export interface SheetToShow extends Pick<
  SheetOnPage,
  'id' | 'name' | 'stock' | 'width' | 'height' | 'margin' | 'filled'
> {
  readonly of: Stock;
  readonly outline: Region;
  readonly pieces: readonly PieceToShow[];
}

/**
 * Largest deviation of outlines on sheets, in mm: whole sheets with hundreds of outlines are seen at once, so less is
 * invisible.
 */
export const sheetWithinMm = 0.03;

/** The sheets, with the shapes of all their pieces. */
export function sheetsOnPage(sheets: readonly SheetToShow[]): {
  readonly sheets: SheetOnPage[];
  readonly shapes: SheetShape[];
} {
  const shapes = new Map<string, SheetShape>();
  const shown = sheets.map(({ of, outline, pieces, ...sheet }): SheetOnPage => ({
    ...sheet,
    outline: pathData(lowered(outline, sheet.height)),
    pieces: pieces.map(({ piece, toSheet, region, enclosed, ...each }): PieceOnSheet => {
      const shape = shapeOf(piece, of);
      shapes.set(shape.id, shape);
      const { a, b, c, d, e, f } = toSheet;
      // Both the shape and the sheet are drawn with y down.
      const matrix = [a, -b, -c, d, e, sheet.height - f] as const;
      const turned = (Math.round((Math.atan2(b, a) * 180_000) / Math.PI) / 1000 + 360) % 360;
      const [box, cut] = [sheetBoxOf(region, sheet.height), sheetBoxOf(enclosed, sheet.height)];
      const beyond = Math.max(box[0] - cut[0], box[1] - cut[1], cut[2] - box[2], cut[3] - box[3]);
      return { ...each, shape: shape.id, matrix, box, turned, beyond };
    }),
  }));
  return { sheets: shown, shapes: [...shapes.values()] };
}

/** Shifted so that the upper left corner lands on the origin once y is flipped. */
function lowered(outline: Region, height: number): Region {
  return outline.map((ring) => ring.map(({ x, y }) => ({ x, y: y - height })));
}

function sheetBoxOf(region: Region, height: number): SheetBox {
  const { minX, minY, maxX, maxY } = boundsOf(region) ?? { minX: 0, minY: 0, maxX: 0, maxY: 0 };
  return [minX, height - maxY, maxX, height - minY];
}

/** Builds each piece's shape once, under a unique id. */
const cache = new WeakMap<Piece, SheetShape>();
let count = 0;

function shapeOf(piece: Piece, stock: Stock): SheetShape {
  const before = cache.get(piece);
  if (before) return before;
  const look = lookOfStock(stock);
  const engraved = piece.marks.filter(({ operation }) => operation === 'engrave').map(({ region }) => region);
  const scored = piece.marks.filter(({ operation }) => operation === 'score');
  const shape: SheetShape = {
    id: `${++count}`,
    solid: pathData(piece.region, sheetWithinMm),
    engraved: pathData(union(engraved), sheetWithinMm),
    scored: scored.map((mark) => scoreData(mark, sheetWithinMm)).join(''),
    number: numberPlace(piece),
    wood: look.wood,
    burn: blend(look.wood, look.burn, look.burnStrength),
    rim: look.char,
  };
  cache.set(piece, shape);
  return shape;
}

/**
 * Smallest and largest height of a piece's number, in mm: legible with the whole sheet in view, without hiding a small
 * piece.
 */
const numberMm = [1.5, 9] as const;

function numberPlace(piece: Piece): SheetShape['number'] {
  const box = boundsOf(piece.region);
  const engraved = piece.marks.map(({ region }) => offset(region, 1));
  const place = poleOf(difference(piece.region, engraved), 0.5) ?? poleOf(piece.region, 0.5);
  if (!box || !place) return [0, 0, 0];
  const size = 0.3 * Math.min(box.maxX - box.minX, box.maxY - box.minY);
  return [place.x, -place.y, Math.max(numberMm[0], Math.min(numberMm[1], size))];
}
