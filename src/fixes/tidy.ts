/**
 * Decides whether a change leaves a tag as a maker would lay it out: what was in the middle stays there, and nothing comes
 * close to an edge, an opening or another mark.
 */

import { oncePer } from '../core/once-per.ts';
import { samePath } from '../core/values.ts';
import type { YamlPath } from '../core/issue.ts';
import { clearance } from '../checks/measures/clearance.ts';
import type { Report } from '../engine/engine.ts';
import { boundsOf, boxCentre, ringArea } from '../geometry/measure.ts';
import type { Point, Region } from '../geometry/types.ts';
import type { Piece } from '../tag/tag.ts';

/** Nearer than this, in mm, or than this share of the smaller side of a small piece, words and openings look squeezed in (our own judgement). */
const roomMm = { least: 1, most: 2 } as const;
const roomShare = 0.05;

/** Off the middle by more than this, in mm, one sees it (our own judgement). */
const seenMm = 0.5;

/** Something drawn on a piece or cut through it. */
interface Thing {
  readonly path: YamlPath;
  readonly region: Region;
}

export function isTidy(before: Report, after: Report): boolean {
  return (after.tag?.pieces ?? []).every((is) => {
    const was = before.tag?.pieces.find(({ id }) => id === is.id);
    return !was || (staysInMiddle(was, is) && keepsRoom(was, is));
  });
}

/** Whether what was level with the middle, or right above or below it, still is: towards the hanger or away from it, it may move. */
function staysInMiddle(was: Piece, is: Piece): boolean {
  const [from, to] = [was, is].map(({ body }) => middleOf(body)) as [Point, Point];
  return thingsOf(was).every((thing) => {
    const same = thingsOf(is).find(({ path }) => samePath(path, thing.path));
    if (!same) return true;
    const [a, b] = [middleOf(thing.region), middleOf(same.region)];
    const [off, now] = [
      { x: a.x - from.x, y: a.y - from.y },
      { x: b.x - to.x, y: b.y - to.y },
    ];
    const leaves = (axis: 'x' | 'y'): boolean => Math.abs(off[axis]) < seenMm && Math.abs(now[axis]) > 2 * seenMm;
    return !(leaves('x') && !isAlong(is, 'x')) && !(leaves('y') && !isAlong(is, 'y'));
  });
}

/** Whether the piece hangs by one side, which the axis leads to. */
function isAlong({ hangers, body }: Piece, axis: 'x' | 'y'): boolean {
  const middle = middleOf(body);
  const across = axis === 'x' ? 'y' : 'x';
  const sides = hangers.map(({ centre }) => ({
    along: centre[axis] - middle[axis],
    across: centre[across] - middle[across],
  }));
  return (
    sides.length > 0 &&
    sides.every(
      ({ along, across: aside }) =>
        Math.abs(along) > Math.abs(aside) && Math.sign(along) === Math.sign(sides[0]!.along),
    )
  );
}

/** Whether nothing that the change has moved is nearer than what looks meant to an edge, an opening or another mark. */
function keepsRoom(was: Piece, is: Piece): boolean {
  const [before, after] = [was, is].map((piece) => [...thingsOf(piece), ...openingsOf(piece)]) as [Thing[], Thing[]];
  const room = roomIn(is.body);
  // What is new on the piece is where the change has put it.
  const known = after.flatMap((now) => {
    const old = before.find(({ path }) => samePath(path, now.path));
    return old ? [{ now: now.region, old: old.region }] : [];
  });
  const edges = { now: outersOf(is.body), old: outersOf(was.body) };
  return known.every((thing, index) =>
    [edges, ...known.slice(index + 1)].every((other) => {
      const gap = clearance(thing.now, other.now, room);
      // As near as its maker had it, it may stay; so may what runs across something, which is told.
      return gap === Infinity || Math.abs(gap - clearance(thing.old, other.old, room)) < sameMm;
    }),
  );
}

/** Gaps that differ by less than this, in mm, are the same. */
const sameMm = 0.05;

function roomIn(body: Region): number {
  const box = boundsOf(body);
  const side = box ? Math.min(box.maxX - box.minX, box.maxY - box.minY) : 0;
  return Math.min(roomMm.most, Math.max(roomMm.least, roomShare * side));
}

const thingsOf = ({ marks, sources }: Piece): Thing[] => [
  ...marks,
  ...sources.flatMap(({ use, entry, region }) => (use === 'cut' ? [{ path: entry, region }] : [])),
];

/** A ring stands outside, with a wall of its own. */
const openingsOf = ({ hangers }: Piece): Thing[] =>
  hangers.flatMap(({ kind, path, opening }, nth) =>
    kind === 'ring' ? [] : [{ path: [...path, nth], region: opening }],
  );

const outersOf = oncePer((region: Region): Region => region.filter((ring) => ringArea(ring) > 0));

function middleOf(region: Region): Point {
  const box = boundsOf(region);
  return box ? boxCentre(box) : { x: 0, y: 0 };
}
