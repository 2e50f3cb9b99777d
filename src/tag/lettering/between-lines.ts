/** The room between lines of lettering, as far as two of them stand above each other. */

import { rotation, transform } from '../../geometry/affine.ts';
import { boundsOf, boxCentre, boxRing } from '../../geometry/measure.ts';
import type { Region } from '../../geometry/types.ts';
import type { Lettering } from './letters.ts';

/** From the middle of each line to that of the next. `rotate` is how far the lines are turned, in degrees clockwise. */
export function betweenLines(lines: readonly Lettering[], rotate: number): Region {
  const about = { x: 0, y: 0 };
  const upright = rotation(-rotate, about);
  const boxes = lines
    .flatMap((lettering) => lettering.mapped(upright).lines)
    .flatMap((letters) => boundsOf(letters.flatMap(({ region }) => [...region])) ?? [])
    .sort((a, b) => boxCentre(b).y - boxCentre(a).y);
  const rooms = boxes.slice(1).flatMap((below, index) => {
    const above = boxes[index]!;
    const [minX, maxX] = [Math.max(above.minX, below.minX), Math.min(above.maxX, below.maxX)];
    return maxX > minX ? [boxRing({ minX, maxX, minY: boxCentre(below).y, maxY: boxCentre(above).y })] : [];
  });
  return transform(rooms, rotation(rotate, about));
}
