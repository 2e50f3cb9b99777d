/** The shapes among the parts. Parts with the same outline, wherever they are drawn, share all that is computed for it. */

import { boundsOf } from '../geometry/measure.ts';
import type { Region } from '../geometry/types.ts';
import type { PartToNest } from './layout.ts';
import type { PartOutline } from './outline.ts';
import { coarser, outlineOf } from './outline.ts';
import type { Orientation, Turn } from './orientation.ts';
import { orient } from './orientation.ts';

/** Coordinates that differ by less are the same, in mm: the grid that regions are on. */
const sameMm = 1e-5;

/** How the parts of a shape go on a sheet that stands, in quarters; on one that lies on its side they are turned by one more. */
const turnsOf: Readonly<Record<PartToNest['turns'], readonly Turn[]>> = {
  none: [0],
  half: [0, 2],
  quarter: [0, 1, 2, 3],
};

/** What two shapes have to do with each other takes time as the square of their corners. */
const roughCorners = 36;
/** Nor are they to be made larger by more than this share of their size. */
const roughShare = 0.05;

export class NestShape {
  readonly turns: readonly Turn[];
  readonly #outline: PartOutline;
  readonly #coarse: PartOutline;
  #roughOutline: PartOutline | undefined;
  readonly #number: number;
  readonly #orientations = new Map<Turn, Orientation>();
  readonly #rough = new Map<Turn, Orientation>();
  readonly #exact = new Map<Turn, Orientation>();

  constructor(outline: PartOutline, turns: PartToNest['turns'], number: number) {
    this.#outline = outline;
    this.#coarse = coarser(outline);
    this.turns = turnsOf[turns];
    this.#number = number;
  }

  /** With an outline for the search. */
  orientation(turn: Turn): Orientation {
    return this.#made(this.#orientations, this.#coarse, turn);
  }

  /** With an outline of few corners, for a search among many different shapes. */
  rough(turn: Turn): Orientation {
    this.#roughOutline ??= coarser(this.#outline, roughCorners, roughShare);
    return this.#made(this.#rough, this.#roughOutline, turn);
  }

  /** With its outline as it is. */
  exact(turn: Turn): Orientation {
    return this.#made(this.#exact, this.#outline, turn);
  }

  #made(orientations: Map<Turn, Orientation>, outline: PartOutline, turn: Turn): Orientation {
    let orientation = orientations.get(turn);
    if (!orientation) orientations.set(turn, (orientation = orient(outline, turn, this.#number)));
    return orientation;
  }
}

/** The shape of each part, in their order; `undefined` for a part without extent. `gap` in mm. */
export async function nestShapes(
  parts: readonly PartToNest[],
  gap: number,
  checkpoint: () => Promise<void>,
): Promise<(NestShape | undefined)[]> {
  const contents = new Map<Region, string>();
  const known = new Map<string, NestShape | undefined>();
  const shapes: (NestShape | undefined)[] = [];
  for (const { region, turns } of parts) {
    let content = contents.get(region);
    if (content === undefined) contents.set(region, (content = contentOf(region)));
    const key = `${turns} ${content}`;
    if (!known.has(key)) {
      const outline = outlineOf(region, gap);
      known.set(key, outline && new NestShape(outline, turns, known.size));
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
