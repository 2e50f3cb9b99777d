/**
 * Finds the nearest place where an opening is clear of edges, other openings, glued pieces and marks: on the line on
 * which the tag hangs straight if possible, else anywhere.
 */

import { assemblyOf, balanceOf, gluedOver } from '../../checks/measures/assembly.ts';
import { intendedUp } from '../../checks/hangs-askew.ts';
import { accentAbove, nearerToLetters, openingNeighbours, slipMm } from '../../checks/measures/hole-beside-marks.ts';
import { difference } from '../../geometry/clipper.ts';
import { EdgeIndex } from '../../geometry/edge-index.ts';
import { boundsOf, distance, distanceToSegment } from '../../geometry/measure.ts';
import type { Bounds, Point } from '../../geometry/types.ts';
import { strandOf } from '../../spec/model/tie.ts';
import { keptLever, liesUnder } from '../../tag/hanger/clear-of.ts';
import type { Piece, PlacedHanger, Tag } from '../../tag/tag.ts';
import type { Case, Remedy } from '../candidate.ts';
import { hangerAt, placedAt } from './hanger-at.ts';
import { nudging } from './moving.ts';

/** Search pattern: spacing of circles in mm, directions on each, and the largest radius in mm. */
const stepMm = 0.5;
const directions = 16;
const farthestMm = 25;

/** Number of places that are tried. */
const most = 6;

/** Places where the tag still hangs straight. */
export function clearOnLine(at: Case): Remedy[] {
  return clearAmong(at, alongAxis);
}

/** Places elsewhere, if none on that line is clear. */
export function clearOffLine(at: Case): Remedy[] {
  const isOnLine = clearOnLine(at).some(({ candidates }) => candidates.length > 0);
  return isOnLine ? [] : clearAmong(at, allRound);
}

/** Places on that line, then elsewhere. */
export function clearOfAll(at: Case): Remedy[] {
  return clearAmong(at, (piece, placed, tag) => [...alongAxis(piece, placed, tag), ...allRound()]);
}

function clearAmong(at: Case, movesOf: (piece: Piece, placed: PlacedHanger, tag: Tag) => Point[]): Remedy[] {
  const hanger = hangerAt(at);
  const { piece, tag } = at;
  const placed = placedAt(at);
  if (!piece || !placed || !hanger || hanger.kind === 'ring') return [];
  const isClear = clearancesOf(piece, placed, tag);
  const isOuter = outerPlaces(piece, placed, tag);
  const candidates = movesOf(piece, placed, tag)
    .filter(({ x, y }) => {
      const centre = { x: placed.centre.x + x, y: placed.centre.y + y };
      return isOuter(centre) && isClear(centre);
    })
    .slice(0, most)
    .flatMap((move) => nudging(at, hanger.path, hanger.nudge, move));
  return [{ words: `Move the ${hanger.kind} to where it is clear`, candidates }];
}

/** Returns a test of whether the opening would be about as far out as it is, and not behind words over which the tie would then lie. */
function outerPlaces(piece: Piece, placed: PlacedHanger, { pieces }: Tag): (centre: Point) => boolean {
  const balance = balanceOf(assemblyOf(piece, pieces));
  if (!balance) return () => true;
  const words = openingNeighbours(piece, pieces, placed).filter(({ lettering }) => lettering.length > 0);
  const isBehindWords = (centre: Point): boolean => {
    const lever = distance(centre, balance);
    const out = { x: (centre.x - balance.x) / lever, y: (centre.y - balance.y) / lever };
    return words.some(({ region }) => liesUnder(region, centre, out, placed.openingSize / 2));
  };
  const least = keptLever * distance(placed.centre, balance);
  return (centre) => distance(centre, balance) >= least && !isBehindWords(centre);
}

/** Returns a test of whether the opening would be clear of everything with its centre at a point. */
function clearancesOf(piece: Piece, placed: PlacedHanger, { pieces, tie, stock }: Tag): (centre: Point) => boolean {
  const openings = piece.hangers.filter((each) => each !== placed).map(({ opening }) => opening);
  const cuts = piece.sources.filter(({ use }) => use === 'cut').map(({ region }) => region);
  const glued = gluedOver(piece, pieces).map(({ region }) => region);
  const free = new EdgeIndex(difference(piece.body, [...openings, ...cuts, ...glued]));
  const besides = openingNeighbours(piece, pieces, placed).map(({ region, lettering }) => {
    // A hole among letters looks like a mistake, however clear it is of each.
    const letters = lettering.flatMap((each) => each.letters.flatMap((letter) => letter.region));
    return { edges: new EdgeIndex(region), lettering, box: letters.length > 0 ? boundsOf(letters) : undefined };
  });
  // A keyhole extends to one side of where its nail rests.
  const reach = placed.kind === 'keyhole' ? placed.openingLength : placed.openingLength / 2;
  const strand = glued.length > 0 ? strandOf(tie, placed.kind === 'slot') : 0;
  const clear = reach + Math.max(stock.minWeb, strand) + stepMm / 10;
  const fromMarks = reach + slipMm + stepMm / 10;
  return (centre) =>
    free.contains(centre) &&
    !isNear(free, centre, clear) &&
    besides.every(
      ({ edges, lettering, box }) =>
        !(box && isIn(box, centre)) &&
        !edges.contains(centre) &&
        !isNear(edges, centre, fromMarks) &&
        [centre, nearerToLetters(centre)].every((at) => !accentAbove({ ...placed, centre: at }, lettering)),
    );
}

function isIn({ minX, minY, maxX, maxY }: Bounds, { x, y }: Point): boolean {
  return x > minX && x < maxX && y > minY && y < maxY;
}

/**
 * Moves onto the plumb line through the centre of gravity and along it, the shortest first, never past the centre of
 * gravity, where the tag would turn over; none if it hangs at any angle.
 */
function alongAxis(piece: Piece, { at, centre }: PlacedHanger, { pieces }: Tag): Point[] {
  const balance = balanceOf(assemblyOf(piece, pieces));
  const lever = balance && { x: centre.x - balance.x, y: centre.y - balance.y };
  const up = lever && intendedUp(at, lever);
  if (!up) return [];
  const beside = lever.x * up.y - lever.y * up.x;
  const onto = { x: -beside * up.y, y: beside * up.x };
  // An opening that is nearly on the line keeps its coordinate, so that round numbers of the spec stay round.
  const across = Math.abs(beside) < stepMm ? { x: 0, y: 0 } : onto;
  const above = lever.x * up.x + lever.y * up.y;
  const moves: Point[] = [];
  for (let far = across === onto ? 0 : stepMm; far <= farthestMm; far += stepMm) {
    for (const way of [far, -far]) {
      if (above + way > 0) moves.push({ x: across.x + way * up.x, y: across.y + way * up.y });
    }
  }
  return moves;
}

/** Moves in all directions, shortest first. */
function allRound(): Point[] {
  const moves: Point[] = [];
  for (let far = stepMm; far <= farthestMm; far += stepMm) {
    for (let turn = 0; turn < directions; turn++) {
      const angle = Math.PI / 2 + (turn * 2 * Math.PI) / directions;
      moves.push({ x: far * Math.cos(angle), y: far * Math.sin(angle) });
    }
  }
  return moves;
}

function isNear(edges: EdgeIndex, centre: Point, reach: number): boolean {
  return edges.near(centre, reach).some(([from, to]) => distanceToSegment(centre, from, to) < reach);
}
