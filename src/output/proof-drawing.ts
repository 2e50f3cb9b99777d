/** The tag as it will look, with its dimensions: the drawing of a proof. */

import { intersection, offset, union } from '../geometry/clipper.ts';
import { fitContours } from '../geometry/fit-contours.ts';
import { boundsOf } from '../geometry/measure.ts';
import type { Bounds, Region } from '../geometry/types.ts';
import type { Piece, Tag } from '../tag/tag.ts';
import type { FontFace } from '../text/font-face.ts';
import { lookOf } from './look.ts';
import { curvesOf } from './page.ts';
import type { PageBuilder } from './page.ts';
import { lengthIn } from './proof-facts.ts';

/** Between what is drawn side by side, for the dimensions, in mm on paper. */
const gapMm = 22;

/** How far a dimension line lies from what it measures, and how far its end strokes reach, in mm on paper. */
const dimensionMm = 6;
const strokeMm = 1.5;

/** Score lines are as wide as a beam. */
const scoreWidthMm = 0.25;

/** What is glued on throws a shadow so far to the right and down; without it, letters look scored. */
const shadowMm = 0.5;

const ink = '#555555';

/** Pieces that are seen together: one, and those glued on it. */
interface Assembly {
  readonly pieces: readonly Piece[];
  readonly bounds: Bounds;
}

export interface ProofDrawing {
  /** On paper, dimensions included, in mm. */
  readonly height: number;
  /** Paper by tag: 1 at true size. */
  readonly scale: number;
  /** With its upper left corner there. */
  draw(page: PageBuilder, left: number, top: number, face: FontFace): void;
}

/** As large as goes into `width` by `height` mm, but no larger than `most` times its size. */
export function proofDrawing(
  tag: Tag,
  { width, height, most }: { width: number; height: number; most: number },
): ProofDrawing {
  const assemblies = assembliesOf(tag.pieces);
  const wide = assemblies.reduce((sum, { bounds }) => sum + bounds.maxX - bounds.minX, 0);
  const high = Math.max(...assemblies.map(({ bounds }) => bounds.maxY - bounds.minY));
  const scale = Math.min(most, (width - gapMm * assemblies.length) / wide, (height - 2 * dimensionMm) / high);
  return {
    height: high * scale + 2 * dimensionMm,
    scale,
    draw(page, left, top, face) {
      let x = left;
      for (const { pieces, bounds } of assemblies) {
        const tall = (bounds.maxY - bounds.minY) * scale;
        const y = top - (high * scale + tall) / 2;
        const place = { scale, dx: x - bounds.minX * scale, dy: y - bounds.minY * scale };
        for (const piece of pieces) drawPiece(page, piece, tag, place);
        drawDimensions(page, bounds, tag, place, face);
        x += (bounds.maxX - bounds.minX) * scale + gapMm;
      }
    },
  };
}

interface Place {
  readonly scale: number;
  readonly dx: number;
  readonly dy: number;
}

/** Every piece after what it is glued on; each heap with what lies on it. */
function assembliesOf(pieces: readonly Piece[]): Assembly[] {
  const baseOf = (piece: Piece): Piece => {
    const under = pieces.find(({ id }) => id === piece.glueTo);
    return under ? baseOf(under) : piece;
  };
  const heightOf = (piece: Piece): number => {
    const under = pieces.find(({ id }) => id === piece.glueTo);
    return under ? 1 + heightOf(under) : 0;
  };
  const bases = pieces.filter((piece) => baseOf(piece) === piece);
  return bases.flatMap((base) => {
    const members = pieces.filter((piece) => baseOf(piece) === base).sort((a, b) => heightOf(a) - heightOf(b));
    const bounds = boundsOf(members.flatMap(({ region }) => region));
    return bounds ? [{ pieces: members, bounds }] : [];
  });
}

function drawPiece(page: PageBuilder, piece: Piece, tag: Tag, { scale, dx, dy }: Place): void {
  const look = lookOf(tag.stock.material);
  const outlines = fitContours(piece.region);
  if (piece.glueTo !== undefined)
    page.draw(curvesOf(outlines, scale, dx + shadowMm * scale, dy - shadowMm * scale), { fill: look.engraved });
  const curves = (region: Region) => curvesOf(fitContours(region), scale, dx, dy);
  const marked = (operation: 'engrave' | 'score') =>
    piece.marks.filter((mark) => mark.operation === operation).map(({ region }) => region);
  page.draw(curvesOf(outlines, scale, dx, dy), { fill: look.face, stroke: look.edge, lineWidth: 0.2 });
  // What is cut away shows no engraving: the tie's opening stays open in a field that it is set in.
  const engraved = intersection(union(marked('engrave')), piece.region);
  page.draw(curves(engraved), { fill: look.engraved });
  for (const region of marked('score'))
    page.draw(curves(offset(region, 0)), { stroke: look.engraved, lineWidth: scoreWidthMm * scale });
}

function drawDimensions(page: PageBuilder, bounds: Bounds, { units }: Tag, place: Place, face: FontFace): void {
  const at = (x: number, y: number) => [x * place.scale + place.dx, y * place.scale + place.dy] as const;
  const [left, bottom] = at(bounds.minX, bounds.minY);
  const [right, top] = at(bounds.maxX, bounds.maxY);
  const size = 3;
  const below = bottom - dimensionMm + 1;
  const beside = right + dimensionMm - 1;
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
