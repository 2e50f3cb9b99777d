/** Beads of material, as a welder lays them, where joints are still too narrow. */

import { offset } from '../../geometry/clipper.ts';
import { boundsOf } from '../../geometry/measure.ts';
import { findNecks } from '../../geometry/necks.ts';
import type { Neck } from '../../geometry/necks.ts';
import type { Point, Region } from '../../geometry/types.ts';
import { coarseMm } from './bodies.ts';
import type { Measures } from './measures.ts';

/**
 * The longest places that get a bead, in webs: where two shapes meet, where they meet in less than half of the web, as at the fine end of a
 * stroke, and where a stroke of one letter is pinched. Anything thin for longer is a thin stroke, which only growth can help.
 */
const longest = { joint: 1, fineJoint: 1.5, own: 0.5 } as const;

/**
 * A place that lacks no more than this share of the web gets a bead even if it is this many webs long: nobody notices
 * it, while growth would make every letter heavier. Our own judgement.
 */
const slight = { lack: 0.1, longest: 2 } as const;

/** Factor by which a bead is wider than the web, so that it is wide enough beside its middle too. */
const ease = 1.15;

/** Distance from an outline at which a point counts as on it, in mm. */
const onMm = 0.06;

/** Beads for `whole`, the union of `shapes`, where it is pinched, above all where two of them meet. */
export function beadsFor(whole: Region, shapes: readonly Region[], { web }: Measures): Region[] {
  const boxes = shapes.map((shape) => boundsOf(shape));
  const onShape = (index: number, at: Point): boolean => {
    const box = boxes[index];
    if (!box || at.x < box.minX - onMm || at.x > box.maxX + onMm || at.y < box.minY - onMm || at.y > box.maxY + onMm)
      return false;
    return shapes[index]!.some((ring) => isNear(ring, at));
  };
  return findNecks(whole, web)
    .filter((neck) => {
      if (neck.length <= longest.own * web) return true;
      if (neck.width >= (1 - slight.lack) * web && neck.length <= slight.longest * web) return true;
      const most = neck.width < web / 2 ? longest.fineJoint : longest.joint;
      return neck.length <= most * web && isJoint(neck, shapes.length, onShape);
    })
    .map((neck) => beadAt(neck, web));
}

function isJoint({ ends: [a, b] }: Neck, count: number, onShape: (index: number, at: Point) => boolean): boolean {
  let both = 0;
  let either = 0;
  for (let index = 0; index < count; index++) {
    const [atA, atB] = [onShape(index, a), onShape(index, b)];
    if (atA && atB) both += 1;
    if (atA || atB) either += 1;
  }
  return both !== 1 || either > 1;
}

function isNear(ring: Region[number], { x, y }: Point): boolean {
  let from = ring[ring.length - 1]!;
  for (const to of ring) {
    const [dx, dy] = [to.x - from.x, to.y - from.y];
    const t = Math.min(1, Math.max(0, ((x - from.x) * dx + (y - from.y) * dy) / (dx * dx + dy * dy || 1)));
    const offX = from.x + t * dx - x;
    const offY = from.y + t * dy - y;
    if (offX * offX + offY * offY < onMm * onMm) return true;
    from = to;
  }
  return false;
}

/** A strip along the joint with round ends. */
function beadAt({ ends: [a, b], width, length }: Neck, web: number): Region {
  const [cx, cy] = [(a.x + b.x) / 2, (a.y + b.y) / 2];
  // Perpendicular to the chord; a joint of no width has no direction, and needs none.
  const [ux, uy] = width > 1e-6 ? [-(b.y - a.y) / width, (b.x - a.x) / width] : [1, 0];
  const half = length / 2 + coarseMm;
  const core: Region = [
    [
      { x: cx - half * ux, y: cy - half * uy },
      { x: cx + coarseMm * uy, y: cy - coarseMm * ux },
      { x: cx + half * ux, y: cy + half * uy },
      { x: cx - coarseMm * uy, y: cy + coarseMm * ux },
    ],
  ];
  return offset(core, (ease * web) / 2, 'round', coarseMm);
}
