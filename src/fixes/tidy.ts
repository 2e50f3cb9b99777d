/**
 * Decides whether a change leaves a tag as a maker would lay it out: what was in the middle stays there, and nothing comes
 * close to an edge, an opening or another mark.
 */

import { oncePer } from '../core/once-per.ts';
import { samePath } from '../core/values.ts';
import type { YamlPath } from '../core/issue.ts';
import type { Report } from '../engine/engine.ts';
import { difference, intersection, offset } from '../geometry/clipper.ts';
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

/** Whether nothing has come nearer than what looks meant to an edge, an opening or another mark. */
function keepsRoom(was: Piece, is: Piece): boolean {
  const [before, after] = [was, is].map((piece) => [...thingsOf(piece), ...openingsOf(piece)]) as [Thing[], Thing[]];
  const room = roomIn(is.body);
  const inBefore = (thing: Thing): Thing | undefined => before.find(({ path }) => samePath(path, thing.path));
  // What is new on the piece is where the change has put it.
  const known = after.flatMap((now) => {
    const old = inBefore(now);
    return old ? [{ now, old }] : [];
  });
  return known.every(({ now, old }, index) => {
    const isSqueezed =
      isAtEdge(now, is.body, room) && !wasSo((by) => isAtEdge(old, was.body, by), room, isAtEdge(now, is.body, 0));
    if (isSqueezed) return false;
    return known.slice(index + 1).every((other) => {
      if (!areNear(now, other.now, room)) return true;
      return wasSo((by) => areNear(old, other.old, by), room, areNear(now, other.now, 0));
    });
  });
}

/** Whether two things were as near before as their maker had them: near without running into each other, or as they run now. */
function wasSo(near: (by: number) => boolean, room: number, runs: boolean): boolean {
  return near(0) ? runs : near(room);
}

function isAtEdge({ region }: Thing, body: Region, room: number): boolean {
  return difference(room > 0 ? offset(region, room) : region, [outersOf(body)]).length > 0;
}

function areNear(one: Thing, other: Thing, room: number): boolean {
  const [a, b] = [boundsOf(one.region), boundsOf(other.region)];
  if (!a || !b) return false;
  const apart = Math.max(a.minX - b.maxX, b.minX - a.maxX, a.minY - b.maxY, b.minY - a.maxY);
  return apart <= room && intersection(room > 0 ? offset(one.region, room) : one.region, other.region).length > 0;
}

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
