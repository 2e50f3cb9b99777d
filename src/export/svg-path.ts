/** Contours as SVG path data, with y flipped to run down. */

import { radiusOf, startsOf } from '../geometry/contour.ts';
import type { Contour } from '../geometry/contour.ts';
import type { Point } from '../geometry/types.ts';
import { formatNumber } from './job/job.ts';

/** Height `top` becomes y = 0. */
export function svgPath(contours: readonly Contour[], top: number): string {
  return contours.map((contour) => onePath(contour, top)).join('');
}

function onePath(contour: Contour, top: number): string {
  const starts = startsOf(contour);
  const at = ({ x, y }: Point): string => `${formatNumber(x)} ${formatNumber(top - y)}`;
  const commands = contour.segments.map((segment, i): string => {
    switch (segment.type) {
      case 'line':
        // `Z` draws the closing line.
        return contour.closed && i + 1 === contour.segments.length ? '' : `L${at(segment.to)}`;
      case 'arc': {
        const radius = formatNumber(radiusOf(starts[i]!, segment), 4);
        const large = Math.abs(segment.sweep) > Math.PI ? 1 : 0;
        return `A${radius} ${radius} 0 ${large} ${segment.sweep > 0 ? 0 : 1} ${at(segment.to)}`;
      }
      case 'cubic':
        return `C${at(segment.c1)} ${at(segment.c2)} ${at(segment.to)}`;
    }
  });
  return `M${at(contour.start)}${commands.join('')}${contour.closed ? 'Z' : ''}`;
}
