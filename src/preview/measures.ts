/** What the page is told of a drawing once there is time for it. Pure. */

import { offset } from '../geometry/clipper.ts';
import { thinnestWall } from '../measure/thinnest-wall.ts';
import type { Tag } from '../tag/tag.ts';
import type { SceneCutPath, SceneWall } from './protocol.ts';
import { flipped, pathData } from './scene.ts';

/** Walls are looked for from this many min_web on: there is nearly always one narrower. */
const firstLook = 2;

export function wallsOf({ pieces, stock }: Tag): SceneWall[] {
  return pieces.flatMap(({ id, region }) => {
    const wall = thinnestWall(region, firstLook * stock.minWeb);
    return wall ? [{ piece: id, width: wall.width, points: [flipped(wall.ends[0]), flipped(wall.ends[1])] }] : [];
  });
}

export function cutPathsOf({ pieces, stock }: Tag): SceneCutPath[] {
  return pieces.map(({ id, region }) => ({ piece: id, data: pathData(offset(region, stock.kerf / 2)) }));
}
