/**
 * Draws a piece as it will look when finished: face, grain, cut edge and shadow, with its marks. Shared by every
 * picture of a proof.
 */

import { perRegion } from '../../checks/measures/per-region.ts';
import { applyTo, applyToVector, translation } from '../../geometry/affine.ts';
import { intersection, offset, union } from '../../geometry/clipper.ts';
import { transformCurves } from '../../geometry/curves.ts';
import type { CurvePath } from '../../geometry/curves.ts';
import { fitContours } from '../../geometry/fit-contours.ts';
import { fitLines } from '../../geometry/strokes.ts';
import { boundsOf } from '../../geometry/measure.ts';
import type { Affine, Point, Region } from '../../geometry/types.ts';
import { grainLines, grainOrigin, grainTile } from '../../look/grain.ts';
import type { Look } from '../../look/looks.ts';
import { lookOfStock, usualThicknessMm } from '../../look/stock-look.ts';
import { stockOf } from '../../tag/by-stock.ts';
import { isGrainUpright } from '../../tag/grain-direction.ts';
import { areasIn } from '../../tag/open-lines.ts';
import type { Piece, Tag } from '../../tag/tag.ts';
import { blend } from '../../look/blend.ts';
import { curvesOf } from '../page/page.ts';
import type { Drawing, PageBuilder } from '../page/page.ts';

/** Drawn width of score lines, in mm: about that of a beam. */
const scoreWidthMm = 0.25;

/** Spacing of the outlines that the cut edge is drawn with, in mm on paper. */
const edgeStepMm = 0.45;

/** Offset of the light rim along engraved areas, in mm. */
const lipMm = { x: 0.08, y: -0.16 } as const;

/**
 * A soft shadow as outlines of decreasing width and increasing darkness; widths as shares of the piece's height above
 * what it lies on.
 */
const shadow = [
  { width: 1, darkness: 0.06 },
  { width: 0.6, darkness: 0.13 },
  { width: 0.25, darkness: 0.22 },
] as const;

export interface PaperView {
  /** From tag to paper coordinates. */
  readonly toPaper: Affine;
  /** Height of the visible cut edge below the face, in mm on paper. */
  readonly edge: number;
}

/** Share of the thickness that is visible as cut edge, for a viewer slightly below the middle, as in the preview. */
export const edgeShare = 0.17;

/** In mm. */
export function thicknessOf(piece: Piece, tag: Tag): number {
  return stockOf(piece, tag).thickness ?? usualThicknessMm;
}

/** Colour of the face; what is glued on stands out a little. */
function faceOf(piece: Piece, tag: Tag): string {
  const { wood, woodTop } = lookOfStock(stockOf(piece, tag));
  return piece.glueTo === undefined ? wood : woodTop;
}

/** Cached, because a piece is drawn several times: in place, and lifted off what it lies on. */
const fitted = perRegion((region) => curvesOf(fitContours(region)));

const pathsOn =
  (toPaper: Affine) =>
  (region: Region): CurvePath =>
    transformCurves(fitted(region), toPaper);

function lower(path: CurvePath, dx: number, dy: number): CurvePath {
  return transformCurves(path, translation(dx, -dy));
}

/** The shadow on a piece below, which ends at its edge, or on the table of a given colour. */
export function drawShadow(
  page: PageBuilder,
  { region }: Piece,
  tag: Tag,
  { toPaper, edge }: PaperView,
  ground: Piece | string,
): void {
  const paths = pathsOn(toPaper);
  const colour = typeof ground === 'string' ? ground : faceOf(ground, tag);
  // Shadows do not grow with an enlarged picture: their separate outlines would show.
  const soft = Math.min(1, Math.hypot(toPaper.a, toPaper.b));
  const path = lower(paths(region), 0.3 * soft, edge + 0.4 * soft);
  const drawings = shadow.map(({ width, darkness }): Drawing => {
    const fill = blend(colour, '#000000', darkness);
    return { path, fill, stroke: fill, lineWidth: 2 * width * soft };
  });
  if (typeof ground === 'string') for (const drawing of drawings) page.draw(path, drawing);
  else page.clipped(paths(ground.region), drawings);
}

/** Face, edge and marks; its shadow is drawn by itself before. */
export function drawFinished(page: PageBuilder, piece: Piece, tag: Tag, { toPaper, edge }: PaperView): void {
  const look = lookOfStock(stockOf(piece, tag));
  const face = faceOf(piece, tag);
  const scale = Math.hypot(toPaper.a, toPaper.b);
  const paths = pathsOn(toPaper);
  const outline = paths(piece.region);
  // Steps close enough that their outlines overlap, so that a sloping edge has no gaps.
  const steps = Math.max(1, Math.ceil(edge / edgeStepMm));
  for (let step = steps; step >= 1; step--)
    page.draw(lower(outline, 0, (edge * step) / steps), {
      fill: look.edgeFace,
      stroke: look.edgeFace,
      lineWidth: 0.15,
    });
  page.draw(outline, { fill: face, stroke: look.char, lineWidth: Math.min(0.2, 0.12 * scale) });
  page.clipped(outline, grainOn(piece, look, face, { toPaper, isUpright: isGrainUpright(piece, tag) }));
  drawMarks(page, piece, look, face, { toPaper, scale, paths });
}

function drawMarks(
  page: PageBuilder,
  { marks, region }: Piece,
  { burn, burnStrength, lip }: Look,
  face: string,
  { toPaper, scale, paths }: { toPaper: Affine; scale: number; paths: (region: Region) => CurvePath },
): void {
  // Cut-outs are clear of engraving: the hanger's opening stays open even inside an engraved field.
  const engraved = paths(
    intersection(union(marks.filter((mark) => mark.operation === 'engrave').map((mark) => mark.region)), region),
  );
  if (engraved.length > 0) {
    const by = applyToVector(lipMm, toPaper);
    page.clipped(paths(region), [
      {
        path: transformCurves(engraved, translation(by.x, by.y)),
        fill: blend(face, lip, 0.7),
      },
    ]);
    page.draw(engraved, { fill: blend(face, burn, burnStrength) });
  }
  const scored = { stroke: blend(face, burn, 0.75), lineWidth: scoreWidthMm * scale };
  for (const mark of marks.filter(({ operation }) => operation === 'score')) {
    const areas = areasIn(mark);
    if (mark.lines) page.draw(transformCurves(curvesOf(fitLines(mark.lines)), toPaper), scored);
    if (areas.length > 0) page.draw(paths(offset(areas, 0)), scored);
  }
}

/** Grain lines across the piece, each in its colour on the face. */
function grainOn(
  { region, glueTo }: Piece,
  { grain }: Look,
  face: string,
  { toPaper, isUpright }: { readonly toPaper: Affine; readonly isUpright: boolean },
): Drawing[] {
  // Upright grain is horizontal grain on the rotated piece.
  const turned = (point: Point): Point => (isUpright ? { x: point.y, y: -point.x } : point);
  const back = (point: Point): Point => (isUpright ? { x: -point.y, y: point.x } : point);
  const bounds = boundsOf(region.map((ring) => ring.map(turned)));
  if (grain === undefined || !bounds) return [];
  const scale = Math.sqrt(Math.abs(toPaper.a * toPaper.d - toPaper.b * toPaper.c));
  const { width, height } = grainTile;
  const [x0, y0] = glueTo === undefined ? grainOrigin.below : grainOrigin.onTop;
  const tiles = (from: number, to: number, origin: number, size: number) => {
    const first = Math.floor((from - origin) / size);
    return Array.from({ length: Math.floor((to - origin) / size) - first + 1 }, (_, i) => origin + (first + i) * size);
  };
  // The tile has y down, and lines wander slightly outside it.
  const columns = tiles(bounds.minX, bounds.maxX, x0, width);
  const rows = tiles(-bounds.maxY - 1, -bounds.minY + 1, y0, height);
  return rows.flatMap((top) =>
    grainLines.map(({ from, curves, width: lineWidth, opacity }): Drawing => {
      const path = columns.flatMap((left, i) => {
        const at = ([x, y]: readonly [number, number]) => applyTo(back({ x: left + x, y: -(top + y) }), toPaper);
        const starts = i === 0 ? [{ type: 'M' as const, ...at(from) }] : [];
        return [
          ...starts,
          ...curves.map(([first, second, end]) => {
            const [c1, c2] = [at(first), at(second)];
            return { type: 'C' as const, x1: c1.x, y1: c1.y, x2: c2.x, y2: c2.y, ...at(end) };
          }),
        ];
      });
      return { path, stroke: blend(face, grain, opacity), lineWidth: lineWidth * scale };
    }),
  );
}
