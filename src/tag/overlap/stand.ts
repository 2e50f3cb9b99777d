/**
 * Slides letters until they join. Each letter, with all that follow, moves towards those before it until they overlap
 * by a joint as wide as the least web; marks are lowered and held by posts.
 *
 * Everything is judged as it will be once grown, since growing a union and uniting what is grown are the same. So the
 * letters move no further than necessary, and the growth to come does its share.
 */

import type { Point, Region } from '../../geometry/types.ts';
import type { Checkpoint } from '../cache.ts';
import { movedRegion } from './bodies.ts';
import type { LetterBody } from './bodies.ts';
import { uncrowded } from './crowded.ts';
import type { Joint } from './foot-joint.ts';
import { grownLetter } from './grown-shape.ts';
import type { GrownShape } from './grown-shape.ts';
import { riseOf } from './lines.ts';
import type { PlacedMark } from './marks.ts';
import type { Measures } from './measures.ts';
import { slideLine } from './slide.ts';
import { groupedBy } from '../../core/grouped.ts';

/** Part of a letter, as drawn, and where it is now. */
export interface PlacedPart {
  readonly drawn: Region;
  readonly at: Point;
}

/** Letters at their places, not yet joined. */
export interface StandingLetters {
  /** The origin of each letter. */
  readonly points: readonly Point[];
  /** The parts of each letter, the marks that do not touch it included. */
  readonly parts: readonly (readonly PlacedPart[])[];
  /** Letters and marks, as grown. */
  readonly shapes: readonly GrownShape[];
  /** The bars and posts to come, as grown. */
  readonly joints: readonly Joint[];
  /** Letters that one of their marks holds. */
  readonly heldByMark: ReadonlySet<number>;
}

/** @throws whatever `checkpoint` throws to stop it. */
export async function standingLetters(
  bodies: readonly LetterBody[],
  measures: Measures,
  checkpoint: Checkpoint,
): Promise<StandingLetters> {
  const points: Point[] = [];
  const joints: Joint[] = [];
  const placed: (readonly PlacedMark[])[] = [];
  const heldByMark = new Set<number>();
  const shapes: GrownShape[] = [];
  let above: Region = [];
  let risen = 0;
  for (const line of groupedBy(bodies, (body) => body.line).values()) {
    const slid = slideLine(line, measures);
    const marks = uncrowded(line, slid.baselinePoints, slid.heldByMark, measures);
    const pointsOn = (baseline: number) => slid.baselinePoints.map(({ x, y }) => ({ x, y: y + baseline }));
    const asSet = line[0]!.at.y + risen;
    let own = pointsOn(asSet);
    let grown = grownAt(line, marks, own);
    const rise = above.length > 0 ? riseOf(regionOf(grown), above, measures) : 0;
    const baseline = asSet + rise;
    if (rise > 0) {
      risen += rise;
      own = pointsOn(baseline);
      grown = grownAt(line, marks, own);
    }
    above = regionOf(grown);
    shapes.push(...grown);
    placed.push(...marks);
    for (const index of slid.heldByMark) heldByMark.add(points.length + index);
    points.push(...own);
    for (const { region, fillet } of slid.joints)
      joints.push({ region: movedRegion(region, { x: 0, y: baseline }), fillet });
    await checkpoint();
  }
  for (const [index, at] of points.entries())
    for (const { held } of placed[index]!) if (held) joints.push({ region: movedRegion(held, at), fillet: 0 });
  const parts = bodies.map(({ part }, index) => {
    const at = points[index]!;
    const marks = part.marks.map((drawn, k): PlacedPart => {
      const { move } = placed[index]![k]!;
      return { drawn, at: { x: at.x + move.x, y: at.y + move.y } };
    });
    return [{ drawn: part.base, at }, ...marks];
  });
  return { points, parts, shapes, joints, heldByMark };
}

/** Letters at their places, each with its marks after it. */
function grownAt(
  line: readonly LetterBody[],
  marks: readonly (readonly PlacedMark[])[],
  points: readonly Point[],
): GrownShape[] {
  return line.flatMap(({ base }, index) =>
    [base, ...marks[index]!.map(({ region }) => region)].map((each) => grownLetter(each, points[index]!)),
  );
}

function regionOf(shapes: readonly GrownShape[]): Region {
  return shapes.flatMap(({ region }) => region);
}
