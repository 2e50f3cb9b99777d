/** Effect of a fix in numbers: at the place it is for, and on the size of the piece. */

import { samePath } from '../core/values.ts';
import type { Report } from '../engine/engine.ts';
import { slackOf } from '../checks/measures/slack.ts';
import { boundsOf, distance, ringArea } from '../geometry/measure.ts';
import { findNecks } from '../geometry/necks.ts';
import type { Point, Region } from '../geometry/types.ts';
import type { Issue } from '../core/issue.ts';
import { inUnits, mm } from '../core/figures.ts';
import type { Piece } from '../tag/tag.ts';

/** Smaller changes of size than this, in mm, are not mentioned. */
const noticeableMm = 0.05;

/** Distance, in mm, by which a neck may move and still count as the same. */
const sameNeckMm = 2;

/** Widest neck that is searched for, as a multiple of its minimum. */
const widest = 2;

/** For example ["bridge 0.92 → 1.50 mm", "width +0.6 mm"]; empty if nothing can be said. */
export function effectOf(issue: Issue, before: Report, after: Report): string[] {
  const was = pieceOf(issue, before);
  const is = pieceOf(issue, after);
  if (!was || !is) return [];
  const { units } = after.tag!;
  return [...partsEffect(issue, was, is), ...widthEffect(issue, before, after), ...sizeEffect(was, is)].map((effect) =>
    inUnits(effect, units),
  );
}

function pieceOf({ piece }: Issue, { tag }: Report): Piece | undefined {
  return tag?.pieces.find(({ id }) => id === piece);
}

function partsEffect({ code }: Issue, was: Piece, is: Piece): string[] {
  const count = ({ region }: Piece) => region.filter((ring) => ringArea(ring) > 0).length;
  return code === 'loose-part' && count(is) !== count(was) ? [`${count(was)} parts → ${count(is)}`] : [];
}

const narrow = {
  'weak-bridge': 'bridge',
  'thin-stroke': 'stroke',
  'hanger-weak': 'ring',
  'hole-near-edge': 'edge',
} as const;

function widthEffect(issue: Issue, before: Report, after: Report): string[] {
  if (issue.code === 'hole-too-small') return openingEffect(issue, before, after);
  const { width, points, minimum } = issue;
  if (!(issue.code in narrow) || width === undefined || minimum === undefined || !points) return [];
  const word = narrow[issue.code as keyof typeof narrow];
  const now = widthAt(points, minimum, outlinesOf(issue, before), outlinesOf(issue, after));
  // If it is so wide now that it is no longer found as a neck, all that is known is that it passes.
  return [`${word} ${mm(width)} → ${now === undefined ? `at least ${mm(minimum)}` : mm(now)}`];
}

function openingEffect(issue: Issue, before: Report, after: Report): string[] {
  const [from, to] = [before, after].map((report) => {
    const hanger = pieceOf(issue, report)?.hangers.find(({ path }) => samePath(path, issue.path));
    return hanger?.kind === 'slot' ? hanger.openingLength : hanger?.openingSize;
  });
  return from === undefined || to === undefined ? [] : [`${mm(from)} → ${mm(to)}`];
}

/** The piece that a width is measured on, and the shape that it moves and scales with. */
interface MeasuredOutlines {
  readonly piece: Region;
  readonly shape: Region;
}

function outlinesOf(issue: Issue, report: Report): MeasuredOutlines {
  const piece = pieceOf(issue, report)!.region;
  const made = [...report.tag!.made].find(([{ path }]) => samePath(path, issue.path));
  return { piece, shape: made && made[1].region.length > 0 ? made[1].region : piece };
}

/**
 * Width of the neck that is now at the given points; one below the minimum must be another, because this one has been
 * fixed.
 */
function widthAt(
  points: readonly Point[],
  minimum: number,
  was: MeasuredOutlines,
  is: MeasuredOutlines,
): number | undefined {
  const at = meanPoint(inBox(points, was.shape, was.shape));
  const necks = findNecks(is.piece, widest * minimum)
    .map(({ width, ends }) => ({ width, off: distance(meanPoint(inBox(ends, is.shape, was.shape)), at) }))
    .filter(({ off, width }) => off < sameNeckMm && width > minimum - Math.max(sameWidthMm, slackOf(minimum)));
  if (necks.length === 0) return undefined;
  return necks.reduce((a, b) => (b.off < a.off ? b : a)).width;
}

/** Widths are measured this exactly, in mm. */
const sameWidthMm = 0.02;

/** Points relative to the centre of a shape's box, scaled to `like`, so that an enlarged shape lines up with itself. */
function inBox(points: readonly Point[], shape: Region, like: Region): Point[] {
  const box = boundsOf(shape)!;
  const goal = boundsOf(like)!;
  const scaleX = (goal.maxX - goal.minX) / (box.maxX - box.minX);
  const scaleY = (goal.maxY - goal.minY) / (box.maxY - box.minY);
  return points.map(({ x, y }) => ({
    x: (x - (box.minX + box.maxX) / 2) * scaleX,
    y: (y - (box.minY + box.maxY) / 2) * scaleY,
  }));
}

function meanPoint(points: readonly Point[]): Point {
  const sum = points.reduce((a, b) => ({ x: a.x + b.x, y: a.y + b.y }), { x: 0, y: 0 });
  return { x: sum.x / points.length, y: sum.y / points.length };
}

function sizeEffect(was: Piece, is: Piece): string[] {
  const [from, to] = [boundsOf(was.region), boundsOf(is.region)];
  if (!from || !to) return [];
  const changes = [
    { word: 'width', by: to.maxX - to.minX - (from.maxX - from.minX) },
    { word: 'height', by: to.maxY - to.minY - (from.maxY - from.minY) },
  ];
  return changes
    .filter(({ by }) => Math.abs(by) >= noticeableMm)
    .map(({ word, by }) => `${word} ${by > 0 ? '+' : '−'}${mm(Math.abs(by), 1)}`);
}
