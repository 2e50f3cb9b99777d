/** Moving what is drawn, cut or glued beside an opening out of its way, or making it smaller: the opening stays where it is. */

import { gluedOver } from '../../checks/assembly.ts';
import { slipMm } from '../../checks/hole-beside-marks.ts';
import { boundsOf, boxCentre, widened } from '../../geometry/measure.ts';
import type { Bounds, Point } from '../../geometry/types.ts';
import type { TextEdit } from '../../core/issue.ts';
import type { Shape } from '../../spec/model.ts';
import type { Candidate, Case, Remedy } from '../candidate.ts';
import { nameOf } from '../candidate.ts';
import { placedAt } from './hanger-at.ts';
import { madeSmaller, movedBy } from './moving.ts';

/** How far it is moved, in mm. */
const stepsMm = [0.5, 1, 1.5, 2, 3, 4, 6, 8];

/** A comparison of two figures of a drawing. */
const slackMm = 0.01;

/** Fields as large as this share of the piece carry the lettering, and are not moved for a hole. */
const groundShare = 0.8;

/**
 * @param larger By how much the opening grows with it, in mm: at an edge, all of that goes inwards.
 * @param along What is changed as well, in words, and its edits.
 */
export function makingRoom(at: Case, larger = 0, along: Candidate = { told: '', edits: [] }): Remedy[] {
  const { piece, issue } = at;
  const placed = placedAt(at);
  const box = placed && boundsOf(placed.opening);
  if (!piece || !placed || !box) return [];
  // What reads as an accent stands further off than what is in the way.
  const near = widened(box, Math.max(slipMm + larger, (issue.width ?? 0) + slackMm));
  return inTheWay(at, near).flatMap(({ shape, bounds }) => {
    const middle = boxCentre(bounds);
    const away = { x: middle.x - placed.centre.x, y: middle.y - placed.centre.y };
    const ways = stepsMm.flatMap((step) => directionsOf(away).map(({ x, y }) => ({ x: step * x, y: step * y })));
    return [
      { words: `Move ${nameOf(shape)}`, candidates: joined(along, movedBy(at, shape, ways)) },
      { words: `Make ${nameOf(shape)} smaller`, candidates: joined(along, madeSmaller(at, shape)) },
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
    const isGround = bounds && areaOf(bounds) > groundShare * areaOf(whole);
    return bounds && !isGround && overlap(bounds, near) ? [{ shape, bounds }] : [];
  });
}

/** Away from the opening: along the axis on which it lies farther, then along the other. */
function directionsOf({ x, y }: Point): Point[] {
  const sideways = { x: Math.sign(x) || 1, y: 0 };
  const upwards = { x: 0, y: Math.sign(y) || -1 };
  return Math.abs(x) > Math.abs(y) ? [sideways, upwards] : [upwards, sideways];
}

function joined(along: Candidate, candidates: readonly Candidate[]): Candidate[] {
  return candidates.map(({ told, edits }) => ({
    told: along.told === '' ? told : `${along.told}, ${told}`,
    edits: [...along.edits, ...edits] satisfies TextEdit[],
  }));
}

function areaOf({ minX, minY, maxX, maxY }: Bounds): number {
  return (maxX - minX) * (maxY - minY);
}

function overlap(a: Bounds, b: Bounds): boolean {
  return a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;
}
