/** Lines that something being moved can snap to. Pure. */

import type { Scene, SceneGrip } from '../../../src/protocol/scene.ts';
import type { Arranged } from '../scene/arrange.ts';
import { cross, boxCentre, type SnapLine } from './snapping.ts';
import { joinedBox, moved, type Box } from '../../common/camera/viewport.ts';

/**
 * Lines through the centre of the rest of the piece, or, if there is no rest, of the pieces glued to it or below it;
 * through the piece's centre of gravity, where a hanger makes it hang straight; and through where the thing would be without its nudge.
 * @param box Bounds of what is moved.
 * @param boxOf Bounds of a shape of the scene. Both in mm, as drawn.
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
  const [x, y] = boxCentre(box);
  return [
    ...(round.length > 0 ? cross(boxCentre(round.reduce(joinedBox)), 'middle') : []),
    ...(others.length > 0 ? cross([piece.balance[0] + dx, piece.balance[1] + dy], 'balance') : []),
    ...cross([x - grip.nudge[0], y + grip.nudge[1]], 'start'),
  ];
}
