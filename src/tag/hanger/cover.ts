/**
 * Whether a ring takes so much of a letter that it is another one: it covers the end of a stroke, hides much of the ink, or
 * fills a counter or a bay. The limits are our own judgement, from 120 names in four scripts.
 */

import { boundsOf, ringArea } from '../../geometry/measure.ts';
import type { Bounds, Point, Region } from '../../geometry/types.ts';
import type { MadeShape } from '../made-shape.ts';
import { cellsOf, lostWithin, shareWithin } from './letter-cells.ts';

/** Letters that a ring may cover. */
export interface Coverable {
  readonly letters: readonly { readonly text: string; readonly region: Region; readonly box: Bounds }[];
  /** By which they are scaled about the origin. */
  readonly factor: number;
}

export interface Cover {
  readonly text: string;
  /** As a share of the most that it may. */
  readonly degree: number;
}

/** The most that a ring may cover, in shares of a letter's ink, bays and counters. */
const most = { ink: 0.3, end: 0.165, bays: 0.32, counters: 0.2 } as const;

/** The ring covers the end of a stroke where the outline turns by so much within it, in degrees; at a corner of 90° it does not yet. */
const endTurn = { from: 90, to: 120 } as const;

/** It does so if the letter loses so much of its height or width: the head of a stem, not one side of a serif. */
const endLost = 0.04;

/** Bays are measured against this share of the ink at least, as the hollow of an “r” is hardly one. */
const leastBays = 0.4;

/** Beyond the limit the cost rises, up to this share of a fully joined ring at this degree. */
const ramp = { to: 1.25, cost: 0.7 } as const;

/** A ring that would rather cover more stands at the limit: from this degree on, the letter may be taken for another one. */
const atLimit = 0.95;

/** Over the gap between two letters it takes from both, and less of each is enough: so much together, and so much of the second. */
const ofTwo = { together: 1.05, second: 0.2 } as const;

export function coverableOf(shapes: readonly MadeShape[]): Coverable {
  const lettering = shapes.flatMap((shape) => shape.lettering ?? []).filter((each) => each.as === 'material');
  const letters = lettering.flatMap((each) => each.letters);
  return { letters: letters.map(({ text, region }) => ({ text, region, box: boundsOf(region)! })), factor: 1 };
}

export function coverCost(covers: readonly Cover[]): number {
  const degree = Math.max(0, ...covers.map((each) => each.degree));
  return ramp.cost * Math.min(1, Math.max(0, (degree - 1) / (ramp.to - 1)));
}

/** The letter that may be taken for another one. */
export function coveredOf(covers: readonly Cover[]): string | undefined {
  const [worst, second] = covers.toSorted((a, b) => b.degree - a.degree);
  if (!worst) return undefined;
  const areTwo = second && second.degree >= ofTwo.second && worst.degree + second.degree >= ofTwo.together;
  return worst.degree >= atLimit || areTwo ? worst.text : undefined;
}

/** How much a ring of that outer radius covers of each letter that it reaches. */
export function coversOf({ letters, factor }: Coverable, at: Point, outerRadius: number): Cover[] {
  // A share does not depend on the scale.
  const radius = outerRadius / factor;
  const centre = { x: at.x / factor, y: at.y / factor };
  const { x, y } = centre;
  return letters.flatMap(({ text, region, box }) => {
    if (x + radius < box.minX || x - radius > box.maxX || y + radius < box.minY || y - radius > box.maxY) return [];
    const cells = cellsOf(region);
    const ink = shareWithin(cells.ink, centre, radius);
    const bays = shareWithin(cells.bays, centre, radius, leastBays * cells.ink.length);
    const counters = shareWithin(cells.counters, centre, radius);
    // Turning is looked at only where it matters.
    const end = ink > atLimit * most.end ? endShare(region, cells.ink, centre, radius) : 0;
    const mostInk = most.ink + end * (most.end - most.ink);
    const degree = Math.max(ink / mostInk, bays / most.bays, counters / most.counters);
    return [{ text, degree }];
  });
}

/** How far a ring covers the end of a stroke, from 0 to 1. */
function endShare(region: Region, ink: readonly number[], centre: Point, radius: number): number {
  const lost = lostWithin(ink, centre, radius) / endLost;
  if (lost === 0) return 0;
  const turned = (turnWithin(region, centre, radius) - endTurn.from) / (endTurn.to - endTurn.from);
  return Math.min(1, lost) * Math.min(1, Math.max(0, turned));
}

/** The most by which one stretch of the outline turns within a circle, in degrees: 180 round the end of a stroke. */
function turnWithin(region: Region, { x, y }: Point, radius: number): number {
  const isWithin = (point: Point): boolean => (point.x - x) ** 2 + (point.y - y) ** 2 < radius * radius;
  let widest = 0;
  for (const ring of region) {
    if (ringArea(ring) < 0) continue;
    const start = ring.findIndex((point) => !isWithin(point));
    if (start < 0) return 360;
    let turn = 0;
    let [before, at] = [ring.at(start - 1)!, ring[start]!];
    for (let step = 1; step <= ring.length; step++) {
      const after = ring[(start + step) % ring.length]!;
      const [ux, uy, vx, vy] = [at.x - before.x, at.y - before.y, after.x - at.x, after.y - at.y];
      turn = isWithin(at) ? turn + Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy) : 0;
      widest = Math.max(widest, turn);
      [before, at] = [at, after];
    }
  }
  return (widest * 180) / Math.PI;
}
