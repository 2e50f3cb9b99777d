/**
 * Exploded drawing of a layered tag: each layer lifted off the one below, seen from the front and above. Heights are
 * not to scale.
 */

import { applyTo } from '../geometry/affine.ts';
import { boundsOf } from '../geometry/measure.ts';
import type { Affine, Bounds } from '../geometry/types.ts';
import type { Tag } from '../tag/tag.ts';
import type { FontFace } from '../text/font-face.ts';
import type { Assembly } from './assemblies.ts';
import { drawFinished, groundOf, thicknessOf } from './finished-look.ts';
import type { PageBuilder } from './page.ts';
import { wrapped } from './page.ts';
import { table } from './proof-picture.ts';

/** Oblique projection of a lying tag: vertical foreshortening, and shift to the right with depth. */
const foreshortened = 0.5;
const leaning = 0.3;

/** Lift between two layers: as a share of the drawn height of a tag, and the least in mm on paper. */
const liftShare = 0.8;
const leastLiftMm = 9;

const paddingMm = 7;
const namesMm = 48;
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
  const [across, lifts] = [width - namesMm - 2 * paddingMm, layers.length - 1];
  const room = height - 2 * paddingMm;
  const liftAt = (scale: number) => Math.max(leastLiftMm, seen.height * scale * liftShare);
  const highAt = (scale: number) => seen.height * scale + lifts * liftAt(scale) + edgeAt(tag, scale);
  let scale = Math.min(1.5, across / seen.width);
  while (highAt(scale) > room && scale > 0.02) scale *= 0.97;
  const lift = liftAt(scale);
  const total = highAt(scale) + 2 * paddingMm;
  return {
    height: total,
    draw(page, left, top, face) {
      page.box(left, top - total, width, total, { fill: table });
      const x = left + paddingMm + (across - seen.width * scale) / 2;
      const bottom = top - total + paddingMm + edgeAt(tag, scale);
      const maps = layers.map((_, layer): Affine => {
        const [a, c, d] = [scale, leaning * scale, foreshortened * scale];
        const f = bottom + layer * lift - d * bounds.minY;
        return { a, b: 0, c, d, e: x - a * bounds.minX - c * bounds.minY, f };
      });
      layers.forEach((layer, depth) => {
        if (depth > 0) drawLeaders(page, boundsOfLayer(layer) ?? bounds, maps[depth - 1]!, maps[depth]!);
        for (const piece of layer) {
          const edge = thicknessOf(piece, tag) * scale * edgeShareLifted;
          drawFinished(page, piece, tag, { toPaper: maps[depth]!, edge, ground: groundOf(piece, tag, table) });
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

function boundsOfLayer(layer: Assembly['layers'][number]): Bounds | undefined {
  return boundsOf(layer.flatMap(({ region }) => region));
}

/** Dashed lines from the near corners of a lifted layer to where they will lie. */
function drawLeaders(page: PageBuilder, { minX, minY, maxX }: Bounds, below: Affine, above: Affine): void {
  for (const [x, y] of [
    [minX, minY],
    [maxX, minY],
  ] as const) {
    const from = applyTo({ x, y }, below);
    const to = applyTo({ x, y }, above);
    for (let at = from.y; at < to.y; at += 2)
      page.line([from.x, at], [from.x, Math.min(at + 1.1, to.y)], '#8a8a8a', 0.2);
  }
}
