/** A small picture of a region, to be shown where there is text only. */

import { boundsOf } from '../geometry/measure.ts';
import { simplified } from '../geometry/simplify.ts';
import type { Region } from '../geometry/types.ts';

/** In pixels. */
export interface PictureSize {
  readonly width: number;
  readonly height: number;
}

/** One grey for every theme: 4.0 : 1 on white and 4.2 : 1 on #1e1e1e by the formula of WCAG 2.1, which asks for 3 : 1. */
const ink = '#7f7f7f';

/** Room left round the region, for the edge to be smooth. */
const padding = 2;

/** As large as will go into `most`, as an SVG data URI; `undefined` where there is nothing to see. */
export function pictureOf(region: Region, most: PictureSize): { uri: string; size: PictureSize } | undefined {
  const bounds = boundsOf(region);
  if (!bounds) return undefined;
  const [spanX, spanY] = [bounds.maxX - bounds.minX, bounds.maxY - bounds.minY];
  const scale = Math.min((most.width - 2 * padding) / spanX, (most.height - 2 * padding) / spanY);
  const x = (value: number) => ((value - bounds.minX) * scale + padding).toFixed(1);
  const y = (value: number) => ((bounds.maxY - value) * scale + padding).toFixed(1);
  // A third of a pixel is not seen, and a picture of few points is a short text.
  const path = simplified(region, 0.3 / scale)
    .map((ring) => `M${ring.map((point) => `${x(point.x)} ${y(point.y)}`).join('L')}Z`)
    .join('');
  const size = { width: Math.ceil(spanX * scale + 2 * padding), height: Math.ceil(spanY * scale + 2 * padding) };
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${size.width}" height="${size.height}"><path fill="${ink}" fill-rule="evenodd" d="${path}"/></svg>`;
  return { uri: `data:image/svg+xml,${encodeURIComponent(svg)}`, size };
}
