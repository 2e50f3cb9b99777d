/**
 * Clears space for an opening that stays where it is: whatever is drawn, cut or glued beside it is moved or made
 * smaller.
 */

import { gluedOver } from '../../checks/measures/assembly.ts';
import { slipMm } from '../../checks/measures/hole-beside-marks.ts';
import { boundsArea, boundsOf, boxCentre, widened } from '../../geometry/measure.ts';
import type { Bounds, Point } from '../../geometry/types.ts';
import type { TextEdit } from '../../core/issue.ts';
import type { Shape } from '../../spec/model/shape-model.ts';
import type { Candidate, Case, Remedy } from '../candidate.ts';
import { shapeTitle } from '../candidate.ts';
import { placedAt } from './hanger-at.ts';
import { madeSmaller, movedBy, smallerArc } from './moving.ts';

/** Distances to move, in mm. */
const stepsMm = [0.5, 1, 1.5, 2, 3, 4, 6, 8];

/** Tolerance for comparing coordinates of a drawing, in mm. */
const slackMm = 0.01;

/** Fields with at least this share of the piece are its background and are not moved for a hole. */
const groundShare = 0.8;

/**
 * @param larger Growth of the opening that goes with it, in mm; at an edge, all of it goes inwards.
 * @param along A change to combine with each candidate.
 */
export function makingRoom(at: Case, larger = 0, along: Candidate = { description: '', edits: [] }): Remedy[] {
  const { piece, issue } = at;
  const placed = placedAt(at);
  const box = placed && boundsOf(placed.opening);
  if (!piece || !placed || !box) return [];
  // Something that could be read as an accent may lie further away than the obstacle.
  const near = widened(box, Math.max(slipMm + larger, (issue.width ?? 0) + slackMm));
  return inTheWay(at, near).flatMap(({ shape, bounds }) => {
    const middle = boxCentre(bounds);
    const away = { x: middle.x - placed.centre.x, y: middle.y - placed.centre.y };
    const ways = stepsMm.flatMap((step) => directionsOf(away).map(({ x, y }) => ({ x: step * x, y: step * y })));
    return [
      { words: `Run ${shapeTitle(shape)} further in`, candidates: combined(along, smallerArc(at, shape)) },
      { words: `Move ${shapeTitle(shape)}`, candidates: combined(along, movedBy(at, shape, ways)) },
      { words: `Make ${shapeTitle(shape)} smaller`, candidates: combined(along, madeSmaller(at, shape)) },
    ];
  });
}

function inTheWay({ piece, tag }: Case, near: Bounds): { readonly shape: Shape; readonly bounds: Bounds }[] {
  if (!piece) return [];
  const whole = boundsOf(piece.body)!;
  const all = [
    ...piece.marks,
    ...piece.sources.filter(({ use }) => use === 'cut'),
    ...gluedOver(piece, tag.pieces).flatMap(({ sources }) => sources.filter(({ use }) => use === 'body')),
  ];
  return all.flatMap(({ shape, region }) => {
    const bounds = boundsOf(region);
    const isGround = bounds && boundsArea(bounds) > groundShare * boundsArea(whole);
    return bounds && !isGround && doOverlap(bounds, near) ? [{ shape, bounds }] : [];
  });
}

/** Away from the opening: first along the axis with the greater distance, then along the other. */
function directionsOf({ x, y }: Point): Point[] {
  const sideways = { x: Math.sign(x) || 1, y: 0 };
  const upwards = { x: 0, y: Math.sign(y) || -1 };
  return Math.abs(x) > Math.abs(y) ? [sideways, upwards] : [upwards, sideways];
}

function combined(along: Candidate, candidates: readonly Candidate[]): Candidate[] {
  return candidates.map(({ description, edits }) => ({
    description: along.description === '' ? description : `${along.description}, ${description}`,
    edits: [...along.edits, ...edits] satisfies TextEdit[],
  }));
}

function doOverlap(a: Bounds, b: Bounds): boolean {
  return a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;
}
