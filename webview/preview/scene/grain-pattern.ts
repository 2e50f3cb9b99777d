/** Patterns of wood grain, in the colour of the look that they inherit. */

import { grainLines, grainOrigin, grainTile } from '../../../src/look/grain.ts';
import { svg } from '../../common/dom.ts';
import type { XY } from '../../common/camera/viewport.ts';

export interface GrainKind {
  /** A piece that lies on another shows another part of the same sheet. */
  readonly isOnTop: boolean;
  readonly isUpright: boolean;
}

/** The pattern that all pieces of the tag's own stock share. */
export function sharedGrainId({ isOnTop, isUpright }: GrainKind): string {
  return `grain${isOnTop ? '-on-top' : ''}${isUpright ? '-upright' : ''}`;
}

export function grainPattern(id: string, { isOnTop, isUpright }: GrainKind): SVGPatternElement {
  const [x, y] = isOnTop ? grainOrigin.onTop : grainOrigin.below;
  const { width, height } = grainTile;
  const tile = { x: `${x}`, y: `${y}`, width: `${width}`, height: `${height}`, patternUnits: 'userSpaceOnUse' };
  const turned = isUpright ? { patternTransform: 'rotate(90)' } : {};
  return svg('pattern', { id, class: 'grain-tile', ...tile, ...turned }, ...grain());
}

function grain(): SVGPathElement[] {
  return grainLines.map(({ from, curves, width, opacity }) => {
    const points = (...those: readonly XY[]) =>
      those
        .flat()
        .map((value) => value.toFixed(2))
        .join(' ');
    return svg('path', {
      d: `M${points(from)}${curves.map((curve) => `C${points(...curve)}`).join('')}`,
      'stroke-width': width.toFixed(3),
      'stroke-opacity': opacity.toFixed(3),
    });
  });
}
