/** Tags that hang at a different angle from the one their hangers imply: the balance is not below the opening. */

import type { Point } from '../geometry/types.ts';
import type { Finding } from '../core/issue.ts';
import type { HangerPlace } from '../spec/model/model.ts';
import type { Tie } from '../spec/model/workshop-model.ts';
import { directionOf, seenTilt, spoiltTilt } from '../tag/hanger/direction.ts';
import type { PlacedHanger, Tag } from '../tag/tag.ts';
import { assemblyOf, balanceOf } from './measures/assembly.ts';
import type { Check } from './check.ts';
import { mm } from '../core/figures.ts';

/** Visible tilt, in degrees (our own judgement). */
const seenDegrees = 3;

/** The same of two openings that are meant to be level: what hangs on two cords shows it sooner (our own judgement). */
const levelDegrees = 1;

/** A place that leaves the direction open is meant for the side that it lies this near to; else for a corner, at any angle. */
const meantDegrees = 20;

/** If the opening is nearer to the balance than this, in mm, the tag may turn freely. */
const leastLeverMm = 1;

export const hangsAskew: Check = ({ pieces, tie }) => suspensionsOf(pieces).flatMap((each) => tiltFindings(each, tie));

/** The load on the hangers of one piece. */
export interface Suspension {
  readonly piece: string;
  readonly hangers: readonly PlacedHanger[];
  readonly balance: Point;
}

/**
 * Pieces that are glued together hang on the hangers of the first that has any: the holes of the others are for the
 * same tie.
 */
export function suspensionsOf(pieces: Tag['pieces']): Suspension[] {
  return pieces.flatMap((piece) => {
    if (piece.hangers.length === 0) return [];
    const all = assemblyOf(piece, pieces);
    const balance = balanceOf(all);
    const carries = all.find(({ hangers }) => hangers.length > 0) === piece;
    return carries && balance ? [{ piece: piece.id, hangers: piece.hangers, balance }] : [];
  });
}

function tiltFindings({ piece, hangers, balance }: Suspension, tie: Tie | undefined): Finding[] {
  const [first, second] = outermost(hangers);
  const tilt = second ? tiltBetweenTwo(first, second, balance, hangers.length) : tiltOnOneHanger(first, balance, tie);
  if (!tilt || Math.abs(tilt.clockwise) <= tilt.seen) return [];
  const angle = Math.abs(tilt.clockwise);
  const turned = `turned ${Math.round(angle)}° ${tilt.clockwise > 0 ? 'clockwise' : 'counter-clockwise'}`;
  return [
    {
      code: 'hangs-askew',
      severity: angle > spoiltTilt ? 'warning' : 'info',
      piece,
      path: tilt.hanger.path,
      points: [tilt.from, balance],
      angle,
      message: `Hangs askew, ${turned}: ${tilt.because}.`,
    },
  ];
}

/** The two hangers that are furthest apart; with more than two, the piece hangs between those. */
function outermost(hangers: readonly PlacedHanger[]): readonly [PlacedHanger, PlacedHanger?] {
  let found: readonly [PlacedHanger, PlacedHanger?] = [hangers[0]!];
  let farthest = -1;
  hangers.forEach((one, index) => {
    for (const other of hangers.slice(index + 1)) {
      const apart = Math.hypot(other.centre.x - one.centre.x, other.centre.y - one.centre.y);
      if (apart <= farthest) continue;
      farthest = apart;
      found = [one, other];
    }
  });
  return found;
}

/**
 * Whether the place was chosen rather than given: a ring is only asked to be on a side; a hole on a side goes where it
 * hangs straight.
 */
function hasChosenPlace({ kind, at }: PlacedHanger): boolean {
  return kind === 'ring' && at.kind !== 'point';
}

/** A place that finds itself, at most on a side that is asked for. */
function isLeftToProgram({ kind, at }: PlacedHanger): boolean {
  return kind === 'ring' && (at.kind === 'auto' || at.kind === 'anchor');
}

interface Tilt {
  readonly hanger: PlacedHanger;
  /** Rotation of the drawing when it hangs, relative to what is meant, in degrees. */
  readonly clockwise: number;
  /** From this many degrees on it counts. */
  readonly seen: number;
  /** Start of the plumb line. */
  readonly from: Point;
  readonly because: string;
}

function tiltOnOneHanger(hanger: PlacedHanger, balance: Point, tie: Tie | undefined): Tilt | undefined {
  const lever = minus(hanger.centre, balance);
  const up = intendedUp(hanger.at, lever);
  return up && Math.hypot(lever.x, lever.y) >= leastLeverMm ? tiltOf(hanger, balance, up, tie) : undefined;
}

/** A ribbon lies flat in its slot, so the tag stays level as long as it balances below any part of the slot. */
function tiltOf(hanger: PlacedHanger, balance: Point, up: Point, tie: Tie | undefined): Tilt {
  const { centre, kind, openingLength, openingSize } = hanger;
  const lever = minus(centre, balance);
  const isFlat = kind === 'slot' && (tie?.kind ?? 'ribbon') === 'ribbon';
  const level = isFlat ? (openingLength - openingSize) / 2 : 0;
  const sideways = cross(up, lever);
  const beside = Math.sign(sideways) * Math.max(0, Math.abs(sideways) - level);
  const length = Math.hypot(lever.x, lever.y) || 1;
  const reach = openingSize / 2 / length;
  return {
    hanger,
    clockwise: degrees(Math.atan2(beside, dot(up, lever))),
    seen: hasChosenPlace(hanger) ? seenTilt : seenDegrees,
    from: { x: centre.x + reach * lever.x, y: centre.y + reach * lever.y },
    because: `${reasonOf(up, sideways, kind)}${isLeftToProgram(hanger) ? ', where it holds and reads best' : ''}`,
  };
}

/** Between two, or the outer ones of more, a tag hangs level if they are level and it balances between them. */
function tiltBetweenTwo(first: PlacedHanger, second: PlacedHanger, balance: Point, count: number): Tilt | undefined {
  const chord = minus(second.centre, first.centre);
  const middle = { x: (first.centre.x + second.centre.x) / 2, y: (first.centre.y + second.centre.y) / 2 };
  const length = Math.hypot(chord.x, chord.y);
  // One tie goes through both.
  if (length < (first.openingLength + second.openingLength) / 2) return tiltOnOneHanger(first, balance, undefined);
  const across = { x: -chord.y / length, y: chord.x / length };
  const above = dot(minus(middle, balance), across);
  // One above the other: the tag hangs on the upper, and the next tag on the lower.
  if (Math.abs(chord.y) > Math.abs(chord.x) && Math.abs(above) < leastLeverMm)
    return tiltOnOneHanger(first.centre.y > second.centre.y ? first : second, balance, undefined);
  const outwards = above < 0 ? { x: -across.x, y: -across.y } : across;
  // Holes level with the balance: the tag may hang from either side, so the upper one is meant.
  const up = nearestSide(Math.abs(above) < leastLeverMm && outwards.y < 0 ? across : outwards);
  if (!up) return undefined;
  const beyond = dot(minus(balance, first.centre), chord) / length;
  if (beyond < 0 || beyond > length) return tiltOf(beyond < 0 ? first : second, balance, up, undefined);
  const right = { x: up.y, y: -up.x };
  const rise = dot(chord, up) * Math.sign(dot(chord, right));
  return {
    hanger: second,
    clockwise: degrees(Math.atan2(rise, Math.abs(dot(chord, right)))),
    seen: levelDegrees,
    from: middle,
    because: `its ${count === 2 ? 'two' : 'outer'} openings are ${mm(Math.abs(rise))} off level`,
  };
}

/**
 * The direction that points up when the tag hangs as its hanger implies; `undefined` if it hangs by a corner, at any
 * angle.
 */
export function intendedUp(at: HangerPlace, lever: Point): Point | undefined {
  switch (at.kind) {
    case 'degrees':
      return directionOf(at);
    case 'anchor':
      return at.anchor.includes('-') ? undefined : directionOf(at);
    case 'auto':
    case 'point':
      return nearestSide(lever);
  }
}

function nearestSide({ x, y }: Point): Point | undefined {
  const isUpright = Math.abs(y) >= Math.abs(x);
  const off = degrees(isUpright ? Math.atan2(Math.abs(x), Math.abs(y)) : Math.atan2(Math.abs(y), Math.abs(x)));
  if (off > meantDegrees) return undefined;
  return isUpright ? { x: 0, y: Math.sign(y) } : { x: Math.sign(x), y: 0 };
}

/**
 * The reason as seen on the drawing. `sideways` is how far the hanger lies left of the balance, with `up` pointing up.
 */
function reasonOf(up: Point, sideways: number, kind: PlacedHanger['kind']): string {
  const off = mm(Math.abs(sideways));
  const [x, y] = [up.y * sideways, -up.x * sideways];
  if (Math.abs(x) >= Math.abs(y)) return `it balances ${off} ${x > 0 ? 'right' : 'left'} of the ${kind}`;
  return `the ${kind} is ${off} too ${y > 0 ? 'low' : 'high'} on the drawing`;
}

function minus(a: Point, b: Point): Point {
  return { x: a.x - b.x, y: a.y - b.y };
}

function dot(a: Point, b: Point): number {
  return a.x * b.x + a.y * b.y;
}

function cross(a: Point, b: Point): number {
  return a.x * b.y - a.y * b.x;
}

function degrees(radians: number): number {
  return (radians * 180) / Math.PI;
}
