/** Assembly steps: the pieces of a tag, numbered in the order in which they are put together. */

import { strokeMm, strokesAlong } from '../../geometry/strokes.ts';
import { areasIn } from '../../tag/open-lines.ts';
import { difference, offset, union } from '../../geometry/clipper.ts';
import { stretchesInside } from '../../geometry/length-inside.ts';
import { area, boundsOf, boxCentre, perimeter } from '../../geometry/measure.ts';
import { partsOf } from '../../geometry/parts.ts';
import type { Bounds, Region } from '../../geometry/types.ts';
import { lookOfStock } from '../../look/stock-look.ts';
import { stockOf } from '../../tag/by-stock.ts';
import type { Piece, Tag } from '../../tag/tag.ts';
import { placeInWords } from '../../core/place-in-words.ts';
import { counted } from '../../core/units.ts';
import { assembliesOf } from '../pictures/assemblies.ts';
import { lengthIn } from '../../core/in-words.ts';

export interface AssemblyStep {
  /** Starts at 1. */
  readonly number: number;
  readonly piece: Piece;
  /** Instruction, as a sentence. */
  readonly what: string;
}

/** Empty if no piece is glued to another. */
export function assemblySteps(tag: Tag): AssemblyStep[] {
  const layered = assembliesOf(tag.pieces).filter(({ layers }) => layers.length > 1);
  return layered
    .flatMap(({ layers }) => layers.flat())
    .map((piece, index) => ({ number: index + 1, piece, what: whatToDo(piece, tag) }));
}

function whatToDo(piece: Piece, tag: Tag): string {
  const under = tag.pieces.find(({ id }) => id === piece.glueTo);
  if (!under) return `Lay “${piece.title}” down with its face up.`;
  const parts = partsOf(piece.region).length;
  const what = parts > 1 ? `the ${counted(parts, 'part')} of “${piece.title}”` : `“${piece.title}”`;
  return `Glue ${what} onto “${under.title}”${hasLinesFor(piece, under) ? ', over the scored lines' : ''}.`;
}

/** Whether score lines under the piece show where it goes; a border around it does not count. */
function hasLinesFor(piece: Piece, under: Piece): boolean {
  const cover = offset(piece.region, 0.05);
  return under.marks.some(({ operation, region }) => {
    return operation === 'score' && area(difference(region, [cover])) < 0.05 * area(region);
  });
}

/** Union of the pieces glued directly on a piece. */
export function gluedOn(piece: Piece, { pieces }: Tag): Region {
  return union(pieces.filter(({ glueTo }) => glueTo === piece.id).map(({ region }) => region));
}

/** A line this near to the edge of what lies on it, in mm, shows beside it: as much of its stroke as does not is in the joint. */
const edgeMm = strokeMm / 2;

/** Where marks of a piece disappear under what is glued on it. */
export function hiddenOn(piece: Piece, tag: Tag): Region {
  return offset(gluedOn(piece, tag), -edgeMm);
}

/** Shorter visible stretches of a score line than this, in mm, are not noticed. */
const unseenMm = 1;

/** Notes on a piece for the time before anything is glued, as sentences. */
export function beforeGluing(piece: Piece, tag: Tag): string[] {
  const cover = gluedOn(piece, tag);
  const isUnder = cover.length > 0;
  const isOnTop = piece.glueTo !== undefined;
  const isWood = lookOfStock(stockOf(piece, tag)).grain !== undefined;
  const bare = isWood ? 'leave the wood bare' : 'leave it clean and bare';
  const face = isUnder
    ? `Finish its face first, but ${bare} where other layers go: glue does not hold on oil, wax or paint.`
    : 'Finish its face and its edges first: beside the layer below they are hard to reach afterwards.';
  return [
    face,
    ...(isOnTop ? [`Glue side: the back. Spread it thin and keep a little off the edge; ${bare} there.`] : []),
    ...scoresInSight(piece, tag),
  ];
}

/** A line by itself is measured as a strip of this width, in mm, which has two sides. */
const lineMm = 0.02;

/** Names the score lines that stay in sight after gluing, and where they are. */
function scoresInSight(piece: Piece, tag: Tag): string[] {
  const cover = gluedOn(piece, tag);
  if (cover.length === 0) return [];
  const scores = piece.marks.filter(({ operation }) => operation === 'score');
  if (scores.length === 0) return [];
  const body = boundsOf(piece.region)!;
  const hidden = hiddenOn(piece, tag);
  const withEdge = offset(cover, edgeMm);
  const drawn = scores.flatMap((mark) => [
    { region: areasIn(mark), sides: 1 },
    { region: strokesAlong(mark.lines ?? [], lineMm), sides: 2 },
  ]);
  const seen = drawn.flatMap(({ region, sides }) => {
    const outside = (of: Region) =>
      (perimeter(region) - stretchesInside(region, of).reduce((sum, { length }) => sum + length, 0)) / sides;
    const [free, all] = [outside(withEdge), outside(hidden)];
    // A line that only crosses the edge ends there.
    const length = all - free < unseenMm ? outside(cover) : all;
    if (length < unseenMm) return [];
    if (free < unseenMm) return [{ length, where: 'along the edge of what is glued on' }];
    const box = boundsOf(difference(offset(region, 0.05), [hidden]));
    return box ? [{ length, where: placeIn(box, body) }] : [];
  });
  if (seen.length === 0) return ['All its score lines disappear under what is glued on.'];
  return seen.map(
    ({ length, where }) => `A score line stays in sight: ${lengthIn(length, tag.units)} of it, ${where}.`,
  );
}

/** Extent, as a share of the piece in both directions, from which something counts as all round it. */
const roundShare = 0.7;

/** Place on a piece in words. */
function placeIn(seen: Bounds, body: Bounds): string {
  const [wide, high] = [body.maxX - body.minX, body.maxY - body.minY];
  if (seen.maxX - seen.minX > roundShare * wide && seen.maxY - seen.minY > roundShare * high) return 'all round';
  return placeInWords(boxCentre(seen), body);
}
