/** Which of the shapes of a piece a ring is seen beside. */

import { difference } from '../../geometry/clipper.ts';
import { area, ringArea } from '../../geometry/measure.ts';
import type { MadeShape } from '../made-shape.ts';

/** Of lettering inside a frame, its share that may reach beyond (our own judgement). */
const beyondShare = 0.1;

/** Without the lettering inside a frame: a ring outside is not read with it. */
export function besideFrame(shapes: readonly MadeShape[]): MadeShape[] {
  const frames = shapes
    .filter(({ lettering }) => !lettering)
    .map(({ region }) => region.filter((ring) => ringArea(ring) > 0));
  const isInside = ({ region }: MadeShape): boolean =>
    frames.some((frame) => frame.length > 0 && area(difference(region, [frame])) < beyondShare * area(region));
  return shapes.filter((shape) => !shape.lettering || !isInside(shape));
}
