/** Small pictures of shapes and tags, for places that otherwise show text. */

import { boundsOf } from '../../geometry/measure.ts';
import { simplified } from '../../geometry/simplify.ts';
import type { Region } from '../../geometry/types.ts';
import type { Tag } from '../../tag/tag.ts';

/** In pixels. */
export interface PictureSize {
  readonly width: number;
  readonly height: number;
}

/** What a path of a picture shows: material, an engraving or a score. */
export type PictureUse = 'material' | 'engrave' | 'score';

export interface Picture {
  readonly size: PictureSize;
  /** Closed paths in SVG syntax, in the picture's pixels, to be filled even-odd; the first is at the bottom. */
  readonly paths: readonly { readonly use: PictureUse; readonly data: string }[];
}

interface PictureLayer {
  readonly use: PictureUse;
  readonly region: Region;
}

/** Margin for antialiased edges, in pixels. */
const padding = 2;

/**
 * One grey for every theme: its contrast is 4.0 : 1 on white and 4.2 : 1 on #1e1e1e by the formula of WCAG 2.1, which
 * requires 3 : 1.
 */
const ink = '#7f7f7f';

/** A tag with its pieces in place, as large as fits into `most`; `undefined` if there is nothing to see. */
export function pictureOfTag({ pieces }: Tag, most: PictureSize): Picture | undefined {
  const layers = pieces.flatMap(({ region, marks }): PictureLayer[] => [
    { use: 'material', region },
    ...marks.map(({ operation, region: mark }) => ({ use: operation, region: mark })),
  ]);
  return pictureOfLayers(layers, most);
}

/** A region as an SVG data URI, as large as fits into `most`; `undefined` if there is nothing to see. */
export function pictureOf(region: Region, most: PictureSize): { uri: string; size: PictureSize } | undefined {
  const picture = pictureOfLayers([{ use: 'material', region }], most);
  if (!picture) return undefined;
  const { size, paths } = picture;
  const path = `<path fill="${ink}" fill-rule="evenodd" d="${paths[0]!.data}"/>`;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${size.width}" height="${size.height}">${path}</svg>`;
  return { uri: `data:image/svg+xml,${encodeURIComponent(svg)}`, size };
}

function pictureOfLayers(layers: readonly PictureLayer[], most: PictureSize): Picture | undefined {
  const bounds = boundsOf(layers.flatMap(({ region }) => region));
  if (!bounds) return undefined;
  const [spanX, spanY] = [bounds.maxX - bounds.minX, bounds.maxY - bounds.minY];
  const scale = Math.min((most.width - 2 * padding) / spanX, (most.height - 2 * padding) / spanY);
  const x = (value: number) => ((value - bounds.minX) * scale + padding).toFixed(1);
  const y = (value: number) => ((bounds.maxY - value) * scale + padding).toFixed(1);
  // A third of a pixel is invisible, and fewer points make a shorter text.
  const data = (region: Region) =>
    simplified(region, 0.3 / scale)
      .map((ring) => `M${ring.map((point) => `${x(point.x)} ${y(point.y)}`).join('L')}Z`)
      .join('');
  return {
    size: { width: Math.ceil(spanX * scale + 2 * padding), height: Math.ceil(spanY * scale + 2 * padding) },
    paths: layers.map(({ use, region }) => ({ use, data: data(region) })),
  };
}
