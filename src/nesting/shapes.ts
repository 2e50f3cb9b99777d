/**
 * The distinct shapes among the parts. Parts with the same outline, wherever they are drawn, share everything that is
 * computed for it.
 */

import { largestRectangle } from '../geometry/largest-rectangle.ts';
import { boundsOf } from '../geometry/measure.ts';
import type { Bounds, Region } from '../geometry/types.ts';
import { upsideDownAlike } from './alike-upside-down.ts';
import type { PartToNest } from './layout.ts';
import type { PartOutline } from './part-outline.ts';
import { outlineOf, packedOutline, simplifiedOutline } from './part-outline.ts';
import type { Orientation, Turn } from './orientation.ts';
import { orient, turnedOutline } from './orientation.ts';
import { envelopeOf, halfTurned } from './envelopes/envelope.ts';
import type { Envelope } from './envelopes/envelope.ts';

/** Coordinates that differ by less than this, in mm, are equal: the grid of regions. */
const sameMm = 1e-5;

/** Allowed turns of a shape's parts on an upright sheet, in quarters; on a sheet turned by a quarter, one is added. */
const turnsOf: Readonly<Record<PartToNest['turns'], readonly Turn[]>> = {
  none: [0],
  half: [0, 2],
  quarter: [0, 1, 2, 3],
};

/** Corners of a rough outline: work on two shapes grows with the product of their corners. */
const roughCorners = 36;
/** Limit on the rough tolerance as a share of the part's size. */
const roughShare = 0.05;

export class NestShape {
  readonly turns: readonly Turn[];
  readonly #outline: PartOutline;
  readonly #coarse: PartOutline;
  #roughOutline: PartOutline | undefined;
  readonly #envelopes = new Map<Turn, Envelope>();
  readonly #number: number;
  readonly #orientations = new Map<Turn, Orientation>();
  readonly #rough = new Map<Turn, Orientation>();
  /** Whether a half turn leaves it as it is. */
  readonly isAlikeUpsideDown: boolean;

  constructor(outline: PartOutline, turns: PartToNest['turns'], number: number, isAlikeUpsideDown: boolean) {
    this.isAlikeUpsideDown = isAlikeUpsideDown;
    this.#outline = packedOutline(outline);
    this.#coarse = packedOutline(simplifiedOutline(outline));
    this.turns = turnsOf[turns];
    this.#number = number;
  }

  /** Orientation with the outline for the search. */
  orientation(turn: Turn): Orientation {
    return this.#made(this.#orientations, this.#coarse, turn);
  }

  /** Orientation with an outline of few corners, for a search among many different shapes. */
  rough(turn: Turn): Orientation {
    this.#roughOutline ??= packedOutline(simplifiedOutline(this.#outline, roughCorners, roughShare));
    return this.#made(this.#rough, this.#roughOutline, turn);
  }

  /** Orientation with the true outline, which has many corners: made anew each time. */
  exact(turn: Turn): Orientation {
    return orient(this.#outline, turn, this.#number);
  }

  /** Envelope of the true outline. */
  envelope(turn: Turn): Envelope {
    let envelope = this.#envelopes.get(turn);
    if (!envelope) {
      envelope =
        turn < 2 ? envelopeOf(turnedOutline(this.#outline, turn)) : halfTurned(this.envelope((turn - 2) as Turn));
      this.#envelopes.set(turn, envelope);
    }
    return envelope;
  }

  /** The largest upright box within its outline as drawn, half a gap beyond the part; without extent where there is none. */
  get boxWithin(): { readonly width: number; readonly height: number } {
    const { minX, minY, maxX, maxY } = largestRectangle(this.#outline.region) ?? { minX: 0, minY: 0, maxX: 0, maxY: 0 };
    return { width: maxX - minX, height: maxY - minY };
  }

  #made(orientations: Map<Turn, Orientation>, outline: PartOutline, turn: Turn): Orientation {
    let orientation = orientations.get(turn);
    if (!orientation) orientations.set(turn, (orientation = orient(outline, turn, this.#number)));
    return orientation;
  }
}

/** Makes orientations with true outlines, each once, and keeps them as long as it is kept itself. */
export function exactOrientations(): (shape: NestShape, turn: Turn) => Orientation {
  const known = new Map<NestShape, Map<Turn, Orientation>>();
  return (shape, turn) => {
    const turns = known.get(shape) ?? new Map<Turn, Orientation>();
    const made = turns.get(turn) ?? shape.exact(turn);
    known.set(shape, turns.set(turn, made));
    return made;
  };
}

/** A part as the search sees it: its outline as drawn, which may have thousands of points, is not needed any more. */
export interface NestPart {
  /** Absent for a part without extent. */
  readonly shape?: NestShape;
  /** Of the part as drawn. */
  readonly bounds: Bounds;
}

/** Parts of which the first has this shape, or no extent. */
interface Known {
  readonly part: PartToNest;
  readonly shape: NestShape | undefined;
}

/** The parts, in order. `gap` in mm. Each region is asked for when it is needed, as it may be made for the asking. */
export async function nestParts(
  parts: readonly PartToNest[],
  gap: number,
  checkpoint: () => Promise<void>,
): Promise<NestPart[]> {
  const boxes: Bounds[] = [];
  for (const { region } of parts) {
    boxes.push(boundsOf(region) ?? { minX: 0, minY: 0, maxX: 0, maxY: 0 });
    await checkpoint();
  }
  const isAlike = upsideDownAlike(boxes);
  const known = new Map<string, Known[]>();
  let count = 0;
  const made: NestPart[] = [];
  for (const [index, part] of parts.entries()) {
    const { region, turns } = part;
    const bounds = boxes[index]!;
    const key = `${turns} ${region.map(({ length }) => length).join()}`;
    const others = known.get(key) ?? [];
    let same = others.find((other) => isSameOutline(other.part.region, region));
    if (!same) {
      const outline = outlineOf(region, gap);
      const shape = outline && new NestShape(outline, turns, count++, turns !== 'none' && isAlike(region));
      same = { part, shape };
      known.set(key, [...others, same]);
      await checkpoint();
    }
    made.push({ bounds, ...(same.shape ? { shape: same.shape } : {}) });
  }
  return made;
}

/** Whether two regions with rings of as many points are the same, wherever they lie. */
function isSameOutline(one: Region, other: Region): boolean {
  if (one === other) return true;
  const [a, b] = [boundsOf(one), boundsOf(other)];
  if (!a || !b) return !a && !b;
  const steps = (at: number, least: number): number => Math.round((at - least) / sameMm);
  return one.every((ring, index) =>
    ring.every((point, i) => {
      const { x, y } = other[index]![i]!;
      return steps(point.x, a.minX) === steps(x, b.minX) && steps(point.y, a.minY) === steps(y, b.minY);
    }),
  );
}
