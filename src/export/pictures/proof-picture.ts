/** Picture of a proof: the tag as it will look, with its dimensions. */

import { difference } from '../../geometry/clipper.ts';
import { area } from '../../geometry/measure.ts';
import type { Bounds } from '../../geometry/types.ts';
import { piecesBelow } from '../../tag/pieces-below.ts';
import type { Piece, Tag } from '../../tag/tag.ts';
import type { FontFace } from '../../text/font-face.ts';
import { assembliesOf } from './assemblies.ts';
import type { Assembly } from './assemblies.ts';
import { drawFinished, drawShadow, edgeShare, thicknessOf } from './finished-look.ts';
import { lengthIn } from '../../core/in-words.ts';
import type { PageBuilder } from '../page/page.ts';

/** Margins around the drawing for dimensions, in mm on paper. */
const aroundMm = { left: 8, right: 22, top: 9, bottom: 16 } as const;

/** Margin around the true-size drawing, in mm. */
const trueSizeMm = 5;

/** Distance of a dimension line from what it measures, and length of its end strokes, in mm on paper. */
const dimensionMm = 5;
const strokeMm = 1.5;

/** Background under a tag: a neutral grey, which leaves colours as they are. */
export const table = '#f3f3f3';
const ink = '#555555';

export interface ProofPicture {
  /** Height on paper in mm, dimensions included. */
  readonly height: number;
  /** Paper mm per mm of the tag; 1 is true size. */
  readonly scale: number;
  /**
   * Draws on a background of the requested width, with its upper left corner at `left`, `top`. Returns the place of
   * each assembly.
   */
  draw(page: PageBuilder, left: number, top: number, face: FontFace): readonly PicturePlace[];
}

/** From tag to paper coordinates. */
export interface PicturePlace {
  readonly scale: number;
  readonly dx: number;
  readonly dy: number;
}

export interface PictureRoom {
  readonly width: number;
  readonly height: number;
  /** Largest scale. */
  readonly most: number;
}

/** As large as fits; `undefined` without pieces. */
export function proofPicture(tag: Tag, { width, height, most }: PictureRoom): ProofPicture | undefined {
  const assemblies = assembliesOf(tag.pieces);
  if (assemblies.length === 0) return undefined;
  const { rows, scale } = bestRows(assemblies, { width, height, most });
  const rowHeights = rows.map(
    (row) => Math.max(...row.map(({ bounds }) => bounds.maxY - bounds.minY)) * scale + around.y,
  );
  const total = rowHeights.reduce((sum, each) => sum + each, 0);
  return {
    height: total,
    scale,
    draw(page, left, top, face) {
      page.box(left, top - total, width, total, { fill: table });
      const places: PicturePlace[] = [];
      let y = top;
      rows.forEach((row, index) => {
        const used = row.reduce((sum, { bounds }) => sum + (bounds.maxX - bounds.minX) * scale + around.x, 0);
        // Centred in its row, not counting the dimension beside it.
        const slack = (width - used) / 2;
        let x = left + slack + Math.min(Math.max(0, slack), (aroundMm.right - aroundMm.left) / 4);
        for (const assembly of row) {
          const { bounds } = assembly;
          const tall = (bounds.maxY - bounds.minY) * scale;
          const middle = y - aroundMm.top - (rowHeights[index]! - around.y) / 2;
          const place = {
            scale,
            dx: x + aroundMm.left - bounds.minX * scale,
            dy: middle - tall / 2 - bounds.minY * scale,
          };
          places.push(place);
          drawAssembly(page, assembly, tag, place);
          drawDimensions(page, bounds, tag, place, face);
          x += (bounds.maxX - bounds.minX) * scale + around.x;
        }
        y -= rowHeights[index]!;
      });
      return places;
    },
  };
}

const around = { x: aroundMm.left + aroundMm.right, y: aroundMm.top + aroundMm.bottom } as const;

/** The number of rows that allows the largest scale. */
function bestRows(
  assemblies: readonly Assembly[],
  { width, height, most }: PictureRoom,
): { rows: Assembly[][]; scale: number } {
  const tries = assemblies.map((_, i) => {
    const perRow = Math.ceil(assemblies.length / (i + 1));
    const rows: Assembly[][] = [];
    for (let at = 0; at < assemblies.length; at += perRow) rows.push(assemblies.slice(at, at + perRow));
    const wide = (row: readonly Assembly[]) => row.reduce((sum, { bounds }) => sum + bounds.maxX - bounds.minX, 0);
    const high = rows.reduce((sum, row) => sum + Math.max(...row.map(({ bounds }) => bounds.maxY - bounds.minY)), 0);
    const across = Math.min(...rows.map((row) => Math.max(0.05 * width, width - around.x * row.length) / wide(row)));
    const down = Math.max(0.2 * height, height - around.y * rows.length) / high;
    return { rows, scale: Math.min(most, across, down) };
  });
  return tries.reduce((best, each) => (each.scale > best.scale + 1e-9 ? each : best));
}

/** Draws all assemblies at true size, side by side, without dimensions. Returns the height of the background strip. */
export function drawTrueSize(page: PageBuilder, tag: Tag, left: number, top: number, width: number): number {
  const assemblies = assembliesOf(tag.pieces);
  const high = Math.max(...assemblies.map(({ bounds }) => bounds.maxY - bounds.minY));
  page.box(left, top - high - 2 * trueSizeMm, width, high + 2 * trueSizeMm, { fill: table });
  let x = left + trueSizeMm;
  for (const assembly of assemblies) {
    const { minX, maxX, maxY } = assembly.bounds;
    drawAssembly(page, assembly, tag, { scale: 1, dx: x - minX, dy: top - trueSizeMm - maxY });
    x += maxX - minX + trueSizeMm;
  }
  return high + 2 * trueSizeMm;
}

/** Draws every layer on the one below; a shadow falls on what is seen below it, and no farther. `under`: colour of what it lies on. */
export function drawAssembly(
  page: PageBuilder,
  { layers }: Assembly,
  tag: Tag,
  { scale, dx, dy }: PicturePlace,
  under = table,
): void {
  const toPaper = { a: scale, b: 0, c: 0, d: scale, e: dx, f: dy };
  const members = layers.flat();
  const viewOf = (piece: Piece) => ({ toPaper, edge: thicknessOf(piece, tag) * edgeShare * scale });
  const shadows = members.map((piece) => ({ piece, grounds: groundsOf(piece, tag) }));
  const cast = (ground: Piece | 'table') => {
    for (const { piece, grounds } of shadows)
      if (grounds.includes(ground)) drawShadow(page, piece, tag, viewOf(piece), ground === 'table' ? under : ground);
  };
  cast('table');
  for (const piece of members) {
    drawFinished(page, piece, tag, viewOf(piece));
    cast(piece);
  }
}

/** Less than this of a piece beyond what it is glued on is not noticed, in mm². */
const unseenMm2 = 0.1;

/** What a piece lies on or hangs over: the pieces below that are seen beside it, and the table. */
function groundsOf(piece: Piece, { pieces }: Tag): (Piece | 'table')[] {
  const grounds: Piece[] = [];
  let over = piece.region;
  for (const below of piecesBelow(piece, pieces)) {
    grounds.push(below);
    over = difference(over, [below.region]);
    if (area(over) < unseenMm2) return grounds;
  }
  return [...grounds, 'table'];
}

function drawDimensions(page: PageBuilder, bounds: Bounds, tag: Tag, place: PicturePlace, face: FontFace): void {
  const at = (x: number, y: number) => [x * place.scale + place.dx, y * place.scale + place.dy] as const;
  const [left, bottom] = at(bounds.minX, bounds.minY);
  const [right, top] = at(bounds.maxX, bounds.maxY);
  const { units } = tag;
  const size = 3;
  const thickest = Math.max(...tag.pieces.map((piece) => thicknessOf(piece, tag)));
  const below = bottom - thickest * edgeShare * place.scale - dimensionMm;
  const beside = right + dimensionMm;
  const line = (from: readonly [number, number], to: readonly [number, number]) => {
    page.line(from, to, ink, 0.15);
  };
  line([left, below], [right, below]);
  for (const x of [left, right]) line([x, below - strokeMm], [x, below + strokeMm]);
  line([beside, bottom], [beside, top]);
  for (const y of [bottom, top]) line([beside - strokeMm, y], [beside + strokeMm, y]);
  const width = lengthIn(bounds.maxX - bounds.minX, units);
  page.caption(width, face, { x: (left + right) / 2, y: below - 4, size, at: 'middle', fill: ink });
  const height = lengthIn(bounds.maxY - bounds.minY, units);
  page.caption(height, face, { x: beside + 2, y: (bottom + top) / 2 - 1, size, fill: ink });
}
