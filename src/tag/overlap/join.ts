/**
 * Makes letters that have been slid together hold: what cannot meet is joined by bars or, as a last resort, by straps;
 * what is too thin where they meet is made as wide as the least web.
 */

import { unionNear } from '../../geometry/change-within.ts';
import { difference, offset, union } from '../../geometry/clipper.ts';
import { boundsOf, boxesOverlap } from '../../geometry/measure.ts';
import { strapsFor } from '../../geometry/straps.ts';
import type { Region } from '../../geometry/types.ts';
import type { Checkpoint, StageCache } from '../cache.ts';
import { movedRegion } from './bodies.ts';
import type { LetterBody } from './bodies.ts';
import { filletsOf } from './fillets.ts';
import { grownJoint } from './grown-shape.ts';
import { hairlinesOf, hairlineStrokes } from './hairlines.ts';
import type { Measures } from './measures.ts';
import type { StandingLetters } from './stand.ts';
import { ease } from './post.ts';
import { slitsOf } from './slits.ts';
import { wedgesOf } from './wedges.ts';
import { beadsFor } from './weld.ts';

/** Least width of posts and bars, in mm; otherwise they are as wide as the web less the growth to come. */
const leastBarMm = 0.1;

/**
 * Posts, bars with their fillets and filled slits, less the growth to come.
 * @throws whatever `checkpoint` throws to stop it.
 */
export async function joinLetters(
  bodies: readonly LetterBody[],
  { points, joints, shapes }: StandingLetters,
  measures: Measures,
  cache: StageCache,
  checkpoint: Checkpoint,
): Promise<Region> {
  const counters = bodies.flatMap((body, index) => movedRegion(body.counters, points[index]!));
  const open = joints
    .map((joint) => ({ ...joint, region: clearOf(joint.region, counters) }))
    .filter(({ region }) => region.length > 0);
  const grown = shapes.map(({ region }) => region);
  const held = open.map(({ region }) => region);
  let whole = union([...grown, ...held]);
  const add = async (more: readonly Region[]): Promise<void> => {
    await checkpoint();
    if (more.length === 0) return;
    whole = unionNear(whole, more);
    await checkpoint();
  };
  const straps = strapsFor(whole, ease * measures.web).map((strap) => [strap]);
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
  return [
    ...held.flatMap((joint) => thinned(joint, measures)),
    ...fillets.flatMap((each) => offset(each, -Math.min(measures.grow, (measures.web - leastBarMm) / 2), 'miter')),
    ...wedges.flat(),
    ...bodies.flatMap(({ strokes }, index) => movedRegion(strokes, points[index]!)),
    ...hairlineStrokes(hairlines, 2 * measures.grow),
    ...slits,
  ];
}

/** The joint without what reaches through a stroke into the counter behind it, which would fill that. */
function clearOf(joint: Region, counters: Region): Region {
  const box = boundsOf(joint);
  const met = counters.filter((ring) => box && boxesOverlap(boundsOf([ring])!, box));
  return met.length > 0 ? difference(joint, [met]) : joint;
}

/** A bar or post less the growth that it will get; its ends stay, so that they reach as far into what they hold. */
export function thinned(joint: Region, { grow }: Measures): Region {
  const box = boundsOf(joint);
  if (!box || grow === 0) return joint;
  const inset = (from: number, to: number): number => Math.min(grow, Math.max(0, (to - from - leastBarMm) / 2));
  const x = inset(box.minX, box.maxX);
  const y = inset(box.minY, box.maxY);
  return offset(joint, -Math.min(x, y), 'miter');
}
