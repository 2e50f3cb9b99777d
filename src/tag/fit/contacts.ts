/** The contacts between a placed shape and its room, and the largest size they allow. */

import type { DistanceField } from '../../geometry/distance-field.ts';
import { EdgeIndex } from '../../geometry/edge-index.ts';
import { maximise } from '../../geometry/linear-program.ts';
import type { Constraint } from '../../geometry/linear-program.ts';
import { boundsOf, contains } from '../../geometry/measure.ts';
import type { Bounds, Point, Region } from '../../geometry/types.ts';
import type { Walls } from './room.ts';
import type { FitPlacement } from './search.ts';
import type { Silhouette } from './silhouette.ts';

/** A silhouette with an index of what lies near a point. */
export class IndexedSilhouette {
  readonly points: readonly Point[];
  readonly solids: readonly Region[];
  /** Distance from the origin to its furthest point. */
  readonly radius: number;
  readonly #boxes: readonly Bounds[];
  #edges: EdgeIndex | undefined;

  constructor({ solids, points }: Silhouette) {
    this.solids = solids;
    this.points = points;
    this.#boxes = solids.map((solid) => boundsOf(solid)!);
    this.radius = this.points.reduce((most, { x, y }) => Math.max(most, Math.hypot(x, y)), 0);
  }

  get edges(): EdgeIndex {
    return (this.#edges ??= new EdgeIndex(this.solids.flat()));
  }

  contains(point: Point): boolean {
    return this.solids.some((solid, index) => isIn(this.#boxes[index]!, point, 0) && contains(solid, point));
  }

  isBeside(point: Point, reach: number): boolean {
    return this.#boxes.some((box) => isIn(box, point, reach));
  }
}

function isIn({ minX, minY, maxX, maxY }: Bounds, { x, y }: Point, reach: number): boolean {
  return x >= minX - reach && x <= maxX + reach && y >= minY - reach && y <= maxY + reach;
}

/** What may change: everything, its size and where it is along one axis, or its size alone. */
export type Freedom = 'all' | 'along x' | 'along y' | 'size';

export interface FitSearch {
  readonly outline: IndexedSilhouette;
  readonly walls: Walls;
  readonly field: DistanceField;
  readonly free: Freedom;
  /** Length of its first step, in mm. */
  readonly step: number;
  /** The search ends with a step that changes less than this, in mm. */
  readonly still?: number;
}

/** A point of the shape, in the shape's coordinates, and the limit of the room beside it. */
interface FitContact {
  readonly own: Point;
  /** Direction into the free room. */
  readonly free: Point;
  /** In mm; negative if the shape is outside. */
  readonly gap: number;
}

/** Most steps of a search. */
const steps = 14;

/** The search ends with a step that changes less than this, in mm. */
const stillMm = 1e-4;

/** Rounding tolerance for what sticks out, in mm. */
const outMm = 2e-4;

/** Length of the shortest step, in mm. */
const shortestMm = 0.01;

/**
 * The largest size near a placement. Contacts are straight enough nearby, so each step is a linear program with the
 * size and the place as unknowns. `undefined` if the shape would stick out.
 */
export function largestNear(search: FitSearch, from: FitPlacement): FitPlacement | undefined {
  const { radius } = search.outline;
  let { step } = search;
  const { still = stillMm } = search;
  let at = from;
  let best: FitPlacement | undefined;
  for (let round = 0; round < steps; round++) {
    const contacts = contactsOf(search, at, 1.5 * step);
    const out = deepestPenetration(contacts);
    if (out < outMm && (!best || at.scale > best.scale)) best = at;
    const move = bestMove(contacts, search, step) ?? [-1.5 * Math.max(out, stillMm), 0, 0];
    const [grown = 0, x = 0, y = 0] = move;
    at = { scale: at.scale + grown / radius, x: at.x + x, y: at.y + y };
    if (at.scale <= 0) break;
    const moved = Math.max(Math.abs(grown), Math.abs(x), Math.abs(y));
    if (moved < still && out < outMm) break;
    if (moved < 0.9 * step || round > 2) step = Math.max(step / 2.5, Math.min(moved, step), shortestMm);
  }
  return best ?? shrunkToFit(search, at);
}

/** Most steps towards the clearest place nearby. */
const clearingSteps = 10;

/** The placement nearby, of the same size, that is furthest from everything, and that distance in mm. */
export function clearestNear(
  search: FitSearch,
  from: FitPlacement,
): { readonly at: FitPlacement; readonly clear: number } {
  let { step } = search;
  let best = { at: from, clear: clearanceOf(search, from) };
  for (let round = 0; round < clearingSteps; round++) {
    const { at, clear } = best;
    const contacts = contactsOf(search, at, clear + 2 * step);
    const conditions = contacts.map(({ free, gap }): Constraint => {
      return { normal: [-1, free.x, free.y], least: clear - gap };
    });
    const far = [step, search.free === 'along y' ? 0 : step, search.free === 'along x' ? 0 : step];
    const [, x = 0, y = 0] = maximise([1, 0, 0], conditions, far) ?? [];
    const moved = { ...at, x: at.x + x, y: at.y + y };
    const found = { at: moved, clear: clearanceOf(search, moved) };
    if (found.clear > clear + stillMm) best = found;
    else if (step < shortestMm * 4) break;
    else step /= 3;
  }
  return best;
}

/** Distance of a placement from everything in mm; more than `farthestMm` means there is nothing. */
function clearanceOf(search: FitSearch, at: FitPlacement): number {
  for (let reach = 2; ; reach *= 2) {
    const clear = contactsOf(search, at, reach).reduce((least, { gap }) => Math.min(least, gap), Infinity);
    if (clear < Infinity || reach > farthestMm) return clear;
  }
}

const deepestPenetration = (contacts: readonly FitContact[]): number =>
  contacts.reduce((most, { gap }) => Math.max(most, -gap), 0);

/** The growth of the furthest point, and the shift of the whole along x and y; `undefined` if none keeps it inside. */
function bestMove(
  contacts: readonly FitContact[],
  { free, outline }: FitSearch,
  step: number,
): readonly number[] | undefined {
  const unknowns = { all: [0, 1, 2], 'along x': [0, 1], 'along y': [0, 2], size: [0] }[free];
  const conditions = contacts.map(({ own, free: way, gap }): Constraint => {
    const normal = [(way.x * own.x + way.y * own.y) / outline.radius, way.x, way.y];
    return { normal: unknowns.map((each) => normal[each]!), least: -gap };
  });
  const goal = unknowns.map((_, index) => (index === 0 ? 1 : 0));
  const found = maximise(goal, conditions, Array<number>(unknowns.length).fill(step));
  if (!found) return undefined;
  const move = [0, 0, 0];
  unknowns.forEach((each, index) => (move[each] = found[index] ?? 0));
  return move;
}

/** Makes a shape that sticks out a little smaller at its place. */
function shrunkToFit(search: FitSearch, from: FitPlacement): FitPlacement | undefined {
  let at = from;
  for (let round = 0; round < 6 && at.scale > 0; round++) {
    const out = deepestPenetration(contactsOf(search, at, 0.5));
    if (out < outMm) return at;
    at = { ...at, scale: at.scale - (2 * out) / search.outline.radius };
  }
  return undefined;
}

/** All contacts nearer than `reach`, from both sides: corners of one with edges of the other. */
function contactsOf({ outline, walls, field }: FitSearch, { scale, x, y }: FitPlacement, reach: number): FitContact[] {
  const contacts: FitContact[] = [];
  const { edges } = walls;
  const off = fieldOff * field.step + fieldOffMm;
  // Most points are far from everything, so nothing is made for those.
  for (const own of outline.points) {
    const depth = field.at(x + scale * own.x, y + scale * own.y);
    if (depth > reach + off) continue;
    const here = { x: x + scale * own.x, y: y + scale * own.y };
    const isFree = Math.abs(depth) > off ? depth > 0 : edges.contains(here);
    const add = (free: Point, gap: number) => contacts.push({ own, free, gap });
    // A point outside is about that far from the nearest edge.
    if (isFree) eachContact(here, edges, reach, 1, add);
    else wayBack(here, edges, Math.min(reach, off - depth), 1, add);
  }
  const far = reach / scale;
  for (const corner of walls.corners) {
    const there = { x: (corner.x - x) / scale, y: (corner.y - y) / scale };
    if (!outline.isBeside(there, far)) continue;
    // From the shape's point of view: its point nearest to the corner, and the direction away from the corner.
    const add = (free: Point, gap: number) => {
      const own = { x: there.x - free.x * gap, y: there.y - free.y * gap };
      contacts.push({ own, free: { x: -free.x, y: -free.y }, gap: gap * scale });
    };
    if (outline.contains(there)) wayBack(there, outline.edges, far, -1, add);
    else eachContact(there, outline.edges, far, -1, add);
  }
  return contacts;
}

type AddContact = (free: Point, gap: number) => void;

/**
 * The contacts of a point with the edges that it should be on one side of, and is.
 * @param side For an edge that it lies on: 1 if the left of it is free.
 */
function eachContact(point: Point, edges: EdgeIndex, reach: number, side: 1 | -1, add: AddContact): void {
  edges.eachNear(point, reach, (from, to) => {
    const gap = gapTo(point, from, to);
    if (gap <= reach) add(awayFrom(point, from, to, gap, side), gap);
  });
}

/** The contact of a point on the wrong side with the edge nearest to it. */
function wayBack(point: Point, edges: EdgeIndex, reach: number, side: 1 | -1, add: AddContact): void {
  for (let within = reach; ; within *= 2) {
    let nearest: readonly [Point, Point] | undefined;
    let gap = Infinity;
    edges.eachNear(point, within, (from, to) => {
      const found = gapTo(point, from, to);
      if (found < gap) [gap, nearest] = [found, [from, to]];
    });
    if (gap > within && within <= farthestMm) continue;
    if (!nearest) return;
    const free = awayFrom(point, ...nearest, gap, side);
    if (gap < onEdgeMm) add(free, gap);
    else add({ x: -free.x, y: -free.y }, -gap);
    return;
  }
}

/** A point nearer to an edge than this is on it, in mm. */
const onEdgeMm = 1e-7;

/** Largest error of the distance field: a quarter of its step at corners, with an allowance for its rough room. */
const fieldOff = 0.35;
const fieldOffMm = 0.05;

/** Distance beyond any tag, in mm. */
const farthestMm = 1000;

/** How far along an edge its nearest point is, from 0 to 1. */
function shareOf({ x, y }: Point, from: Point, to: Point): number {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const share = ((x - from.x) * dx + (y - from.y) * dy) / (dx * dx + dy * dy || 1);
  return share < 0 ? 0 : share > 1 ? 1 : share;
}

function gapTo(point: Point, from: Point, to: Point): number {
  const share = shareOf(point, from, to);
  return Math.hypot(point.x - from.x - share * (to.x - from.x), point.y - from.y - share * (to.y - from.y));
}

/** Unit direction from an edge to a point at that distance. */
function awayFrom(point: Point, from: Point, to: Point, gap: number, side: 1 | -1): Point {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  if (gap <= onEdgeMm) {
    const turned = side / Math.sqrt(dx * dx + dy * dy || 1);
    return { x: -dy * turned, y: dx * turned };
  }
  const share = shareOf(point, from, to);
  return { x: (point.x - from.x - share * dx) / gap, y: (point.y - from.y - share * dy) / gap };
}
