/** Caption of a proof: title, size, material. */

import type { Scene } from '../../../src/protocol/scene.ts';
import { arrange } from './arrange.ts';
import { lengthText } from '../../../src/core/units.ts';
import { bothSizes } from '../../common/format.ts';

export function captionOf(scene: Scene): string {
  const [group, ...others] = arrange(scene, 'assembled').groups;
  const [minX, minY, maxX, maxY] = group?.bounds ?? scene.bounds;
  const size = others.length === 0 ? bothSizes(maxX - minX, maxY - minY, scene.units) : `${others.length + 1} tags`;
  const sheets = scene.pieces
    .map(({ sheet = scene }) => sheet)
    .flatMap(({ material, thickness }) => {
      if (material === undefined) return [];
      return [`${material}${thickness === undefined ? '' : `, ${lengthText(thickness, scene.units)}`}`];
    });
  return [scene.title, size, ...new Set(sheets)].join(' · ');
}
