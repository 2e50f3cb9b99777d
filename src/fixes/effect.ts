/** What a fix changes, in figures: the width that was too small, and the size of the piece. */

import type { Report } from '../engine.ts';
import { boundsOf } from '../geometry/measure.ts';
import { findNecks } from '../geometry/necks.ts';
import type { Point } from '../geometry/types.ts';
import type { Issue } from '../issue.ts';
import { inUnits, mm } from '../spec/figures.ts';
import type { Piece } from '../tag/tag.ts';

/** A change of size below this is not worth a word, in mm. */
const toldMm = 0.05;

/** A neck is still the same one when it has moved by less than this, in mm. */
const sameNeckMm = 3;

/** How wide a neck may have become and still be found again, in min_web. */
const widest = 2;

/** Such as ["bridge 0.92 → 1.50 mm", "width +0.6 mm"]; empty where nothing can be said. */
export function effectOf(issue: Issue, before: Report, after: Report): string[] {
  const was = pieceOf(issue, before);
  const is = pieceOf(issue, after);
  if (!was || !is) return [];
  const { stock, units } = after.tag!;
  return [...widthEffect(issue, was, is, stock.minWeb), ...sizeEffect(was, is)].map((told) => inUnits(told, units));
}

function pieceOf({ piece }: Issue, { tag }: Report): Piece | undefined {
  return tag?.pieces.find(({ id }) => id === piece);
}

const narrow = {
  'weak-bridge': 'bridge',
  'thin-stroke': 'stroke',
  'hanger-weak': 'ring',
  'hole-near-edge': 'edge',
} as const;

function widthEffect(issue: Issue, was: Piece, is: Piece, minWeb: number): string[] {
  if (issue.code === 'hole-too-small') {
    const [from, to] = [was, is].map(({ hangers }) => {
      const hanger = hangers.find(({ path }) => path.join('/') === issue.path.join('/'));
      return hanger?.kind === 'slot' ? hanger.openingLength : hanger?.openingSize;
    });
    return from === undefined || to === undefined ? [] : [`${mm(from)} → ${mm(to)}`];
  }
  if (!(issue.code in narrow) || issue.width === undefined || !issue.points) return [];
  const word = narrow[issue.code as keyof typeof narrow];
  const at = middle(inBox(issue.points, was, was));
  const necks = findNecks(is.region, widest * minWeb)
    .map((neck) => ({ width: neck.width, off: distance(middle(inBox(neck.ends, is, was)), at) }))
    .filter(({ off, width }) => off < sameNeckMm && width > issue.width!);
  // Where it has become so wide that it is no neck any more, all that is known is that it passes.
  if (necks.length === 0) return [`${word} ${mm(issue.width)} → at least ${mm(minWeb)}`];
  const nearest = necks.reduce((a, b) => (b.off < a.off ? b : a));
  return [`${word} ${mm(issue.width)} → ${mm(nearest.width)}`];
}

/** Points from the middle of the piece's box, in mm of `like`, so that a piece that was made larger is laid over itself. */
function inBox(points: readonly Point[], { region }: Piece, like: Piece): Point[] {
  const box = boundsOf(region)!;
  const goal = boundsOf(like.region)!;
  const scaleX = (goal.maxX - goal.minX) / (box.maxX - box.minX);
  const scaleY = (goal.maxY - goal.minY) / (box.maxY - box.minY);
  return points.map(({ x, y }) => ({
    x: (x - (box.minX + box.maxX) / 2) * scaleX,
    y: (y - (box.minY + box.maxY) / 2) * scaleY,
  }));
}

function middle(points: readonly Point[]): Point {
  const sum = points.reduce((a, b) => ({ x: a.x + b.x, y: a.y + b.y }), { x: 0, y: 0 });
  return { x: sum.x / points.length, y: sum.y / points.length };
}

function distance(a: Point, b: Point): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

function sizeEffect(was: Piece, is: Piece): string[] {
  const [from, to] = [boundsOf(was.region), boundsOf(is.region)];
  if (!from || !to) return [];
  const changes = [
    { word: 'width', by: to.maxX - to.minX - (from.maxX - from.minX) },
    { word: 'height', by: to.maxY - to.minY - (from.maxY - from.minY) },
  ];
  return changes
    .filter(({ by }) => Math.abs(by) >= toldMm)
    .map(({ word, by }) => `${word} ${by > 0 ? '+' : '−'}${mm(Math.abs(by), 1)}`);
}
