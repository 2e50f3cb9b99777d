/**
 * Exploded drawing of a layered tag: each layer lifted off the one below, seen from the front and above. Heights are
 * not to scale.
 */

import { applyTo } from '../../geometry/affine.ts';
import { boundsOf } from '../../geometry/measure.ts';
import type { Affine, Point, Region } from '../../geometry/types.ts';
import type { Tag } from '../../tag/tag.ts';
import type { FontFace } from '../../text/font-face.ts';
import type { Assembly } from './assemblies.ts';
import { drawFinished, drawShadow, thicknessOf } from './finished-look.ts';
import type { PageBuilder } from '../page/page.ts';
import { wrapped } from '../page/page.ts';
import { table } from './proof-picture.ts';

/** Oblique projection of a lying tag: vertical foreshortening, and shift to the right with depth. */
const foreshortened = 0.5;
const leaning = 0.3;

/** Least lift between two layers, and the least that is seen between one and the next, in mm on paper. */
const leastLiftMm = 9;
const apartMm = 1.5;

const paddingMm = 7;
const namesMm = 54;
const nameSizeMm = 3;
const ink = '#555555';

export interface ExplodedDrawing {
  readonly height: number;
  draw(page: PageBuilder, left: number, top: number, face: FontFace): void;
}

/** `nameOf`: caption beside each layer; 0 is the lowest. */
export function explodedDrawing(
  { layers, bounds }: Assembly,
  tag: Tag,
  { width, height }: { readonly width: number; readonly height: number },
  nameOf: (layer: number) => string,
): ExplodedDrawing {
  const [wide, deep] = [bounds.maxX - bounds.minX, bounds.maxY - bounds.minY];
  const seen = { width: wide + leaning * deep, height: foreshortened * deep };
  const across = width - namesMm - 2 * paddingMm;
  const room = height - 2 * paddingMm;
  const highAt = (scale: number) => seen.height * scale + liftsAt(layers, tag, scale).at(-1)! + edgeAt(tag, scale);
  let scale = Math.min(1.5, across / seen.width);
  while (highAt(scale) > room && scale > 0.02) scale *= 0.97;
  const lifts = liftsAt(layers, tag, scale);
  const total = highAt(scale) + 2 * paddingMm;
  return {
    height: total,
    draw(page, left, top, face) {
      page.box(left, top - total, width, total, { fill: table });
      const x = left + paddingMm + (across - seen.width * scale) / 2;
      const bottom = top - total + paddingMm + edgeAt(tag, scale);
      const maps = layers.map((_, layer): Affine => {
        const [a, c, d] = [scale, leaning * scale, foreshortened * scale];
        const f = bottom + lifts[layer]! - d * bounds.minY;
        return { a, b: 0, c, d, e: x - a * bounds.minX - c * bounds.minY, f };
      });
      layers.forEach((layer, depth) => {
        if (depth > 0) drawLeaders(page, outlineOf(layer), maps[depth - 1]!, maps[depth]!);
        for (const piece of layer) {
          const edge = thicknessOf(piece, tag) * scale * edgeShareLifted;
          const view = { toPaper: maps[depth]!, edge };
          drawShadow(page, piece, tag, view, table);
          drawFinished(page, piece, tag, view);
        }
        const y = maps[depth]!.d * ((bounds.minY + bounds.maxY) / 2) + maps[depth]!.f;
        wrapped(nameOf(depth), face, nameSizeMm, namesMm - 4).forEach((line, i) => {
          page.caption(line, face, {
            x: left + width - namesMm,
            y: y - 1 - i * 1.4 * nameSizeMm,
            size: nameSizeMm,
            fill: ink,
          });
        });
      });
    },
  };
}

/** Share of a layer's thickness that is visible from the front. */
const edgeShareLifted = 0.8;

/** Thickness of the thickest layer on paper, in mm. */
function edgeAt(tag: Tag, scale: number): number {
  return Math.max(...tag.pieces.map((piece) => thicknessOf(piece, tag))) * scale * edgeShareLifted;
}

/** How high each layer is lifted, in mm on paper: nothing of the one below is hidden, such as its ring. */
function liftsAt(layers: Assembly['layers'], tag: Tag, scale: number): number[] {
  const lifts = [0];
  for (const [index, layer] of layers.slice(1).entries()) {
    const [below, own] = [boundsOf(outlineOf(layers[index]!)), boundsOf(outlineOf(layer))];
    const seenMm = below && own ? foreshortened * scale * (below.maxY - own.minY) : 0;
    lifts.push(lifts.at(-1)! + Math.max(leastLiftMm, seenMm + edgeAt(tag, scale) + apartMm));
  }
  return lifts;
}

function outlineOf(layer: Assembly['layers'][number]): Region {
  return layer.flatMap(({ region }) => [...region]);
}

/** Dashed lines from where a lifted layer is seen to end on the left and on the right, to where that will lie. */
function drawLeaders(page: PageBuilder, outline: Region, below: Affine, above: Affine): void {
  const points = outline.flat();
  const seenX = ({ x, y }: Point): number => applyTo({ x, y }, above).x;
  const end = (isFarther: (a: number, b: number) => boolean): Point =>
    points.reduce((farthest, point) => (isFarther(seenX(point), seenX(farthest)) ? point : farthest));
  if (points.length === 0) return;
  for (const point of [end((a, b) => a < b), end((a, b) => a > b)]) {
    const from = applyTo(point, below);
    const to = applyTo(point, above);
    for (let at = from.y; at < to.y; at += 2)
      page.line([from.x, at], [from.x, Math.min(at + 1.1, to.y)], '#8a8a8a', 0.2);
  }
}
