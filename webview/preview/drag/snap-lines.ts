/** The lines that a thing being moved may come to rest on. Pure. */

import type { Scene, SceneGrip } from '../../../src/protocol/preview.ts';
import type { Arranged } from '../scene/arrange.ts';
import { cross, middleOf, type SnapLine } from './snapping.ts';
import { joined, moved, type Box } from '../../common/camera/viewport.ts';

/**
 * The middle of what else the piece is made of, or of what it is glued on where it is all there is; the balance of the piece,
 * on which a hanger makes it hang straight; and the place that it has by itself.
 * @param box Round what is moved.
 * @param boxOf Round a shape of the scene. Both in mm where they are drawn.
 */
export function snapLines(
  scene: Scene,
  { offsets }: Arranged,
  grip: SceneGrip,
  box: Box,
  boxOf: (id: string) => Box | undefined,
): SnapLine[] {
  const moves = (id: string): boolean => grip.parts.includes(id);
  const piece = scene.pieces.find(({ shapes, parts, hangers, areas }) =>
    [...shapes, ...parts, ...hangers, ...areas].some(({ id }) => moves(id)),
  );
  if (!piece) return [];
  const at = (bounds: Box, id: string): Box => moved(bounds, offsets.get(id) ?? [0, 0]);
  const others = piece.shapes
    .filter(({ id }) => !moves(id))
    .map(({ id }) => boxOf(id))
    .filter((each) => each !== undefined);
  const glued = scene.pieces
    .filter(({ id, glueTo }) => id === piece.glueTo || glueTo === piece.id)
    .filter(({ shapes }) => !shapes.some(({ id }) => moves(id)))
    .map(({ id, bounds }) => at(bounds, id));
  const round = others.length > 0 ? others : glued;
  const [dx, dy] = offsets.get(piece.id) ?? [0, 0];
  const [x, y] = middleOf(box);
  return [
    ...(round.length > 0 ? cross(middleOf(round.reduce(joined)), 'middle') : []),
    ...(others.length > 0 ? cross([piece.balance[0] + dx, piece.balance[1] + dy], 'balance') : []),
    ...cross([x - grip.nudge[0], y + grip.nudge[1]], 'own place'),
  ];
}
