/**
 * Slides letters until they join. Each letter, with all that follow, moves towards those before it until they overlap
 * by a joint as wide as the least web; marks are lowered and held by posts; what cannot meet is joined by bars or, as a
 * last resort, by straps.
 *
 * Everything is judged as it will be once grown, since growing a union and uniting what is grown are the same. So the
 * letters move no further than necessary, and the growth to come does its share.
 */

import { unionNear } from '../../geometry/change-within.ts';
import { difference, offset, union } from '../../geometry/clipper.ts';
import { boundsOf, boxesOverlap } from '../../geometry/measure.ts';
import { strapsFor } from '../../geometry/straps.ts';
import type { Point, Region } from '../../geometry/types.ts';
import type { Checkpoint, StageCache } from '../cache.ts';
import { movedRegion } from './bodies.ts';
import type { LetterBody } from './bodies.ts';
import { uncrowded } from './crowded.ts';
import { filletsOf } from './fillets.ts';
import type { Joint } from './foot-joint.ts';
import { grownJoint, grownLetter } from './grown-shape.ts';
import type { GrownShape } from './grown-shape.ts';
import { hairlinesOf, hairlineStrokes } from './hairlines.ts';
import type { PlacedMark } from './marks.ts';
import { riseOf } from './lines.ts';
import type { Measures } from './measures.ts';
import { postBar } from './bars.ts';
import { slideLine } from './slide.ts';
import { slitsOf } from './slits.ts';
import { wedgesOf } from './wedges.ts';
import { beadsFor } from './weld.ts';

/** Part of a letter, as drawn, and where it is now. */
export interface PlacedPart {
  readonly drawn: Region;
  readonly at: Point;
}

export interface JoinedLetters {
  /** The parts of each letter, the marks that do not touch it included. */
  readonly letters: readonly (readonly PlacedPart[])[];
  /** Those that one of their marks holds. */
  readonly heldByMark: ReadonlySet<number>;
  /** Posts, bars with their fillets and filled slits, less the growth to come. */
  readonly joints: Region;
}

/** Least width of posts and bars, in mm; otherwise they are as wide as the web less the growth to come. */
const leastBarMm = 0.1;

/** @throws whatever `checkpoint` throws to stop it. */
export async function joinLetters(
  bodies: readonly LetterBody[],
  measures: Measures,
  cache: StageCache,
  checkpoint: Checkpoint,
): Promise<JoinedLetters> {
  const positions: Point[] = [];
  const joints: Joint[] = [];
  const placed: (readonly PlacedMark[])[] = [];
  const heldByMark = new Set<number>();
  const shapes: GrownShape[] = [];
  let above: Region = [];
  let risen = 0;
  for (const line of byLine(bodies)) {
    const slid = slideLine(line, measures);
    const marks = uncrowded(line, slid.baselinePoints, slid.heldByMark, measures);
    const pointsOn = (baseline: number) => slid.baselinePoints.map(({ x, y }) => ({ x, y: y + baseline }));
    const asSet = line[0]!.at.y + risen;
    let points = pointsOn(asSet);
    let own = grownAt(line, marks, points);
    const rise = above.length > 0 ? riseOf(regionsOf(own).flat(), above, measures) : 0;
    const baseline = asSet + rise;
    if (rise > 0) {
      risen += rise;
      points = pointsOn(baseline);
      own = grownAt(line, marks, points);
    }
    above = regionsOf(own).flat();
    shapes.push(...own);
    placed.push(...marks);
    for (const index of slid.heldByMark) heldByMark.add(positions.length + index);
    positions.push(...points);
    for (const { region, fillet } of slid.joints)
      joints.push({ region: movedRegion(region, { x: 0, y: baseline }), fillet });
    await checkpoint();
  }
  for (const [index, at] of positions.entries())
    for (const { post } of placed[index]!)
      if (post) joints.push({ region: movedRegion(postBar(post, measures), at), fillet: 0 });
  const counters = bodies.flatMap((body, index) => movedRegion(body.counters, positions[index]!));
  const open = joints.map((joint) => ({ ...joint, region: clearOf(joint.region, counters) }));
  const grown = regionsOf(shapes);
  const held = open.map(({ region }) => region);
  let whole = union([...grown, ...held]);
  const add = async (more: readonly Region[]): Promise<void> => {
    await checkpoint();
    if (more.length === 0) return;
    whole = unionNear(whole, more);
    await checkpoint();
  };
  const straps = strapsFor(whole, measures.web).map((strap) => [strap]);
  await add(straps);
  held.push(...straps);
  const fillets = open.map((joint) => filletsOf(whole, joint, counters)).filter((each) => each.length > 0);
  // Before the beads: a gap filled only part of the way is a thin wall.
  const wedges = wedgesOf([...shapes, ...[...held, ...fillets].map(grownJoint)], cache);
  await add([...fillets, ...wedges]);
  // Marks, and what joins letters; their own hairlines are as wide already.
  const hairlines = hairlinesOf(whole, measures.hairline, counters);
  await add([hairlineStrokes(hairlines)]);
  const beads = beadsFor(whole, [...grown, ...held, ...wedges], measures);
  await add(beads);
  held.push(...beads);
  const slits = slitsOf(whole, grown, measures);
  return {
    letters: bodies.map(({ part }, index) => {
      const at = positions[index]!;
      const marks = part.marks.map((drawn, k): PlacedPart => {
        const { move } = placed[index]![k]!;
        return { drawn, at: { x: at.x + move.x, y: at.y + move.y } };
      });
      return [{ drawn: part.base, at }, ...marks];
    }),
    heldByMark,
    joints: [
      ...held.flatMap((joint) => thinned(joint, measures)),
      ...fillets.flatMap((each) => offset(each, -Math.min(measures.grow, (measures.web - leastBarMm) / 2), 'miter')),
      ...wedges.flat(),
      ...bodies.flatMap(({ strokes }, index) => movedRegion(strokes, positions[index]!)),
      ...hairlineStrokes(hairlines, 2 * measures.grow),
      ...slits,
    ],
  };
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

/** The joint without what reaches through a stroke into the counter behind it, which would fill that. */
function clearOf(joint: Region, counters: Region): Region {
  const box = boundsOf(joint);
  const met = counters.filter((ring) => box && boxesOverlap(boundsOf([ring])!, box));
  return met.length > 0 ? difference(joint, [met]) : joint;
}

function regionsOf(shapes: readonly GrownShape[]): Region[] {
  return shapes.map(({ region }) => region);
}

/** The bodies by line, in their order. */
function byLine(bodies: readonly LetterBody[]): LetterBody[][] {
  const lines = new Map<number, LetterBody[]>();
  for (const body of bodies) {
    const line = lines.get(body.line);
    if (line) line.push(body);
    else lines.set(body.line, [body]);
  }
  return [...lines.values()];
}

/** A bar or post less the growth that it will get; its ends stay, so that they reach as far into what they hold. */
function thinned(joint: Region, { grow }: Measures): Region {
  const box = boundsOf(joint);
  if (!box || grow === 0) return joint;
  const inset = (from: number, to: number): number => Math.min(grow, Math.max(0, (to - from - leastBarMm) / 2));
  const x = inset(box.minX, box.maxX);
  const y = inset(box.minY, box.maxY);
  return offset(joint, -Math.min(x, y), 'miter');
}
