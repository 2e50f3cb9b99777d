/** Lettering as it comes out of the machine, drawn for a reader. By other libraries than the engine's: Clipper2 and resvg. */

import { Resvg } from '@resvg/resvg-js';
import { boundsOf } from '../../src/geometry/measure.ts';
import type { Region } from '../../src/geometry/types.ts';
import { offset } from '../unit/support/clipper2.ts';
import type { DrawAt } from './reader.ts';

/** In mm. `cut`: gaps narrower than the kerf are not cut. `engraved`: a round spot runs along lines. */
export type Beam =
  | { readonly use: 'cut'; readonly kerf: number }
  | { readonly use: 'engraved'; readonly spot: number; readonly interval: number };

/**
 * Pictures of a region, which need not be one: overlapping rings are filled by the non-zero rule. `shift`: in pixels, right and down,
 * to see whether a reader that is shown the same a hair further on says the same.
 */
export function drawn(region: Region, xHeight: number, beam?: Beam, shift = 0): DrawAt {
  const marks = beam?.use === 'engraved' ? scanned(region, beam) : filled(beam ? closed(region, beam.kerf) : region);
  const box = boundsOf(region) ?? { minX: 0, minY: 0, maxX: 1, maxY: 1 };
  return (xHeightPx) => {
    const margin = xHeight;
    const [width, height] = [box.maxX - box.minX + 2 * margin, box.maxY - box.minY + 2 * margin];
    const by = (shift * xHeight) / xHeightPx;
    const [left, top] = [box.minX - margin - by, -box.maxY - margin - by];
    const svg =
      `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${left} ${top} ${width} ${height}">` +
      `<rect x="${left}" y="${top}" width="${width}" height="${height}" fill="white"/>${marks}</svg>`;
    const fitTo = { mode: 'width' as const, value: Math.round((width * xHeightPx) / xHeight) };
    return new Resvg(svg, { fitTo, font: { loadSystemFonts: false } }).render().asPng();
  };
}

function filled(region: Region): string {
  const rings = region.map((ring) => `M${ring.map(({ x, y }) => `${x.toFixed(4)} ${(-y).toFixed(4)}`).join('L')}Z`);
  return `<path d="${rings.join('')}"/>`;
}

/** Without the gaps and counters that no disc as wide as the kerf goes into. */
function closed(region: Region, kerf: number): Region {
  return offset(offset(region, kerf / 2, 0.005), -kerf / 2, 0.005);
}

/** The lines along which the beam burns, as wide as its spot. */
function scanned(region: Region, { spot, interval }: { readonly spot: number; readonly interval: number }): string {
  const lines = new Map<number, { readonly x: number; readonly turn: number }[]>();
  for (const ring of region) {
    let from = ring[ring.length - 1]!;
    for (const to of ring) {
      const [low, high] = from.y < to.y ? [from, to] : [to, from];
      for (let row = Math.ceil(low.y / interval); row * interval < high.y; row++) {
        const x = low.x + ((row * interval - low.y) / (high.y - low.y)) * (high.x - low.x);
        lines.set(row, [...(lines.get(row) ?? []), { x, turn: to.y > from.y ? 1 : -1 }]);
      }
      from = to;
    }
  }
  let path = '';
  for (const [row, crossings] of lines) {
    let winding = 0;
    let start = 0;
    for (const { x, turn } of crossings.sort((a, b) => a.x - b.x)) {
      if (winding === 0) start = x;
      winding += turn;
      if (winding === 0) path += `M${start.toFixed(4)} ${(-row * interval).toFixed(4)}H${x.toFixed(4)}`;
    }
  }
  return `<path d="${path}" fill="none" stroke="black" stroke-width="${spot}" stroke-linecap="round"/>`;
}
