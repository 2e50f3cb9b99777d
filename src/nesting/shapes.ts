/** The shapes among the parts. Parts with the same outline, wherever they are drawn, share all that is computed for it. */

import { boundsOf } from '../geometry/measure.ts';
import type { Region } from '../geometry/types.ts';
import type { LayoutPart } from './layout.ts';
import type { Outline } from './outline.ts';
import { coarser, outlineOf } from './outline.ts';
import type { Pose, Turn } from './orientation.ts';
import { poseOf } from './orientation.ts';

/** Coordinates that differ by less are the same, in mm: the grid that regions are on. */
const sameMm = 1e-5;

/** How the parts of a shape go on a sheet that stands, in quarters; on one that lies on its side they are turned by one more. */
const turnsOf: Readonly<Record<LayoutPart['turns'], readonly Turn[]>> = {
  none: [0],
  half: [0, 2],
  quarter: [0, 1, 2, 3],
};

export class Shape {
  readonly turns: readonly Turn[];
  readonly #outline: Outline;
  readonly #coarse: Outline;
  readonly #number: number;
  readonly #poses = new Map<Turn, Pose>();
  readonly #exact = new Map<Turn, Pose>();

  constructor(outline: Outline, turns: LayoutPart['turns'], number: number) {
    this.#outline = outline;
    this.#coarse = coarser(outline);
    this.turns = turnsOf[turns];
    this.#number = number;
  }

  /** With an outline for the search. */
  pose(turn: Turn): Pose {
    return this.#made(this.#poses, this.#coarse, turn);
  }

  /** With its outline as it is. */
  exact(turn: Turn): Pose {
    return this.#made(this.#exact, this.#outline, turn);
  }

  #made(poses: Map<Turn, Pose>, outline: Outline, turn: Turn): Pose {
    let pose = poses.get(turn);
    if (!pose) poses.set(turn, (pose = poseOf(outline, turn, this.#number)));
    return pose;
  }
}

/** The shape of each part, in their order; `undefined` for a part without extent. `gap` in mm. */
export async function shapesOf(
  parts: readonly LayoutPart[],
  gap: number,
  checkpoint: () => Promise<void>,
): Promise<(Shape | undefined)[]> {
  const contents = new Map<Region, string>();
  const known = new Map<string, Shape | undefined>();
  const shapes: (Shape | undefined)[] = [];
  for (const { region, turns } of parts) {
    let content = contents.get(region);
    if (content === undefined) contents.set(region, (content = contentOf(region)));
    const key = `${turns} ${content}`;
    if (!known.has(key)) {
      const outline = outlineOf(region, gap);
      known.set(key, outline && new Shape(outline, turns, known.size));
      await checkpoint();
    }
    shapes.push(known.get(key));
  }
  return shapes;
}

/** The same for regions that differ in where they lie only. */
function contentOf(region: Region): string {
  const { minX = 0, minY = 0 } = boundsOf(region) ?? {};
  return region
    .map((ring) => ring.map(({ x, y }) => [Math.round((x - minX) / sameMm), Math.round((y - minY) / sameMm)]).join())
    .join(';');
}
