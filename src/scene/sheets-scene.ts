/** Converts sheets into what their page draws: each distinct piece once, and the places of its copies. Pure. */

import { oncePer } from '../core/once-per.ts';
import { transform } from '../geometry/affine.ts';
import { offset, union } from '../geometry/clipper.ts';
import { boundsOf } from '../geometry/measure.ts';
import type { Affine, Region } from '../geometry/types.ts';
import { blend } from '../look/blend.ts';
import { rushSign } from '../look/signs.ts';
import { lookOfStock } from '../look/stock-look.ts';
import type { PieceOnSheet, SheetBox, SheetOnPage, SheetShape } from '../protocol/sheets.ts';
import type { Stock } from '../spec/model/workshop-model.ts';
import type { Piece } from '../tag/tag.ts';
import { numberPlace } from './number-place.ts';
import type { NumberPlace } from './number-place.ts';
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
      const sign = signOf(piece, toSheet, `${each.number}${each.rush ? rushSign : ''}`, sheet.height);
      return { ...each, shape: shape.id, matrix, box, turned, beyond, sign };
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
    wood: look.wood,
    burn: blend(look.wood, look.burn, look.burnStrength),
    rim: look.char,
  };
  cache.set(piece, shape);
  return shape;
}

/** For each piece by how it is turned and what is written, from the origin of its own coordinates. */
const numberPlaces = oncePer<Piece, Map<string, NumberPlace | undefined>>(() => new Map());

function signOf(piece: Piece, { a, b, c, d, e, f }: Affine, text: string, height: number): PieceOnSheet['sign'] {
  const known = numberPlaces(piece);
  const key = [a, b, c, d]
    .map((value) => value.toFixed(4))
    .concat(`${text.length}`)
    .join(' ');
  if (!known.has(key)) {
    const turn = { a, b, c, d, e: 0, f: 0 };
    known.set(key, numberPlace(transform(piece.region, turn), transform(airOf(piece), turn), text));
  }
  const place = known.get(key);
  if (!place) return { text, box: [e, height - f, e, height - f], size: 0 };
  const { minX, minY, maxX, maxY } = place.box;
  return { text, box: [minX + e, height - maxY - f, maxX + e, height - minY - f], size: place.size };
}

/** What is marked on a piece, with some air. */
const airOf = oncePer((piece: Piece) => union(piece.marks.map(({ region }) => offset(region, 1))));
