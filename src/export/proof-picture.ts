/** The tag as it will look, with its dimensions: the picture of a proof. */

import type { Bounds } from '../geometry/types.ts';
import type { Tag } from '../tag/tag.ts';
import type { FontFace } from '../text/font-face.ts';
import { assembliesOf } from './assemblies.ts';
import type { Assembly } from './assemblies.ts';
import { drawFinished, edgeShare, groundOf, thicknessOf } from './finished-look.ts';
import { lengthIn } from './in-words.ts';
import type { PageBuilder } from './page.ts';

/** Room about what is drawn: dimensions stand in it, in mm on paper. */
const aroundMm = { left: 8, right: 22, top: 9, bottom: 16 } as const;

/** About what is shown at true size, in mm. */
const trueSizeMm = 5;

/** How far a dimension line lies from what it measures, and how far its end strokes reach, in mm on paper. */
const dimensionMm = 5;
const strokeMm = 1.5;

/** The quiet table that a tag lies on: neutral, so that it changes no colour. */
export const table = '#f3f3f3';
const ink = '#555555';

export interface ProofPicture {
  /** On paper, dimensions included, in mm. */
  readonly height: number;
  /** Paper by tag: 1 at true size. */
  readonly scale: number;
  /** On a table as wide as it was asked for, its upper left corner there. Gives the place of each assembly. */
  draw(page: PageBuilder, left: number, top: number, face: FontFace): readonly PicturePlace[];
}

/** From the tag's coordinates to the paper's. */
export interface PicturePlace {
  readonly scale: number;
  readonly dx: number;
  readonly dy: number;
}

export interface Room {
  readonly width: number;
  readonly height: number;
  /** A tag is shown at most so many times its own size. */
  readonly most: number;
}

/** As large as goes into the room. Without any piece there is nothing to draw: `undefined`. */
export function proofPicture(tag: Tag, { width, height, most }: Room): ProofPicture | undefined {
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
        // In the middle of its row, the dimension beside it not counted.
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

/** In as many rows as let them be largest. */
function bestRows(
  assemblies: readonly Assembly[],
  { width, height, most }: Room,
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

/** All of the tag at its true size, side by side; no dimensions. Gives the height of the strip of table that it lies on. */
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

/** Every layer on the one below. */
function drawAssembly(page: PageBuilder, { layers }: Assembly, tag: Tag, { scale, dx, dy }: PicturePlace): void {
  const toPaper = { a: scale, b: 0, c: 0, d: scale, e: dx, f: dy };
  for (const piece of layers.flat()) {
    const edge = thicknessOf(piece, tag) * edgeShare * scale;
    drawFinished(page, piece, tag, { toPaper, edge, ground: groundOf(piece, tag, table) });
  }
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
