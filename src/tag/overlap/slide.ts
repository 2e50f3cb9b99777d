/** Slides the letters of a line together one after the other, and adds what joins those that cannot meet. */

import type { Point } from '../../geometry/types.ts';
import { hasSmallLetters } from '../../spec/read/evenly.ts';
import { heldByArm, postBar } from './bars.ts';
import type { BarSides } from './bars.ts';
import { sidePlace } from './beside-marks.ts';
import { barredLetters } from './between-letters.ts';
import type { LetterBody } from './bodies.ts';
import { closesBays } from './closed-bays.ts';
import { filletFor } from './fillets.ts';
import { footJoint } from './foot-joint.ts';
import type { FootNeighbours, Joint } from './foot-joint.ts';
import { besideHyphen, isHyphenBetween } from './hyphens.ts';
import { placeSign, isAsTall, pastSign, roundSign } from './hanging-signs.ts';
import type { Measures } from './measures.ts';
import { crossingRoom, keptApart, markRoom, meet } from './meet.ts';
import type { Join, PlacedLetter } from './meet.ts';
import { profileOf, touching } from './profile.ts';
import type { Profile, ShiftedRows } from './profile.ts';
import { areArmsOnStem, misreadingOf } from './reading.ts';
import { reachFor } from './reach.ts';
import { pastStop, stopPlace } from './full-stop.ts';
import { topOf } from './runs.ts';
import { wordJoints } from './word-joints.ts';
import type { WordGap } from './word-joints.ts';
import { shares } from './shares.ts';
import { slantOf, uprightTo } from './slant.ts';

/** Number of letters back that a letter may touch: an arm may reach over several. */
const lookBack = 4;

/** A colon stands on its lower dot as a full stop does. */
const fullStop = /^[.:;]$/u;

/** A line of slid letters, from the baseline up. */
export interface Slid {
  /** Final origin of each letter. */
  readonly baselinePoints: readonly Point[];
  readonly joints: readonly Joint[];
  /** Letters that are held by one of their marks, which stays where it is. */
  readonly heldByMark: ReadonlySet<number>;
}

/** `bodies` are the letters of one line from left to right. */
export function slideLine(bodies: readonly LetterBody[], measures: Measures): Slid {
  const script = isScript(bodies);
  const reach = (script ? shares.scriptReach : shares.reach) * measures.xHeight;
  const baselinePoints: Point[] = [];
  const joints: Joint[] = [];
  const heldByMark = new Set<number>();
  const wordGaps: WordGap[] = [];
  // A high sign that nothing before it reaches; it waits for the next letter.
  let waiting: number | undefined;
  // A high sign beside a letter as tall as itself, and before one that is not.
  let atSide: number | undefined;
  bodies.forEach((body, index) => {
    if (index === 0) {
      baselinePoints.push({ x: body.at.x, y: 0 });
      if (body.part.isHanging) waiting = index;
      return;
    }
    const sign = waiting !== undefined && waiting > 0 ? waiting : undefined;
    const opening = sign !== undefined && bodies[sign]!.afterGap ? sign : undefined;
    const before = Array.from({ length: Math.min(index, lookBack) }, (_, k) => index - 1 - k).filter(
      (k) => k !== opening,
    );
    const placed = before.map((k): PlacedLetter => ({ body: bodies[k]!, dx: baselinePoints[k]!.x }));
    const left = placed.map(({ body: { rows }, dx }): ShiftedRows => ({ rows, dx }));
    const last = bodies[before[0]!]!;
    const start = baselinePoints[index - 1]!.x + body.at.x - bodies[index - 1]!.at.x;
    const opensWord = body.afterGap || opening !== undefined;
    const isOneLetter = body.index === last.index;
    const behindHyphen = isHyphenBetween(bodies, index - 1)
      ? besideHyphen(placed.slice(1), last, { body, dx: start }, measures)
      : undefined;
    if (behindHyphen) {
      const { shift, at, held: bar } = behindHyphen;
      baselinePoints[index - 1] = at;
      baselinePoints.push({ x: start - shift, y: 0 });
      joints.push({ region: bar, fillet: 0 });
      return;
    }
    const profile = profileOf(left, { rows: body.rows, dx: start });
    const room = Math.min(
      markRoom(placed, body, start, measures),
      isOneLetter ? Infinity : crossingRoom([last.text, body.text], profile, measures),
    );
    const barred = barredLetters(last, body, profile, Math.min(room, script ? reach : Infinity), measures);
    if (barred) {
      const { shift, bar } = barred;
      baselinePoints.push({ x: start - shift, y: 0 });
      joints.push({ region: bar.region, fillet: filletFor(profile, shift, measures) });
      return;
    }
    const isStop = fullStop.test(body.text);
    const most = isStop ? shares.stopReach * measures.xHeight : reach;
    const next = bodies[index + 1];
    const isAtSide =
      body.part.isHanging && !opensWord && sign === undefined && isAsTall(last, body) && isBelow(next, body);
    const stop = isStop && !opensWord ? stopPlace(profile, body, Math.min(room, most), measures) : undefined;
    const behindStop =
      fullStop.test(last.text) && !body.part.isHanging && !isStop
        ? pastStop(left, { rows: body.rows, dx: start }, last, room, measures)
        : undefined;
    const side = isAtSide ? sidePlace(profile, body.base, measures) : undefined;
    let join: Join;
    if (side) join = { shift: side.shift, joint: 'met' };
    else if (stop) join = { shift: stop.shift, joint: 'met' };
    else if (body.part.isHanging && (opensWord || (sign === undefined && !isAsTall(last, body))))
      join = { shift: 0, joint: 'none' };
    else if (behindStop) join = { shift: behindStop.shift, joint: 'met' };
    else if (opensWord && fullStop.test(last.text))
      join = afterStop(left, { rows: body.rows, dx: start }, room, measures);
    else if (opensWord) join = wordsApart(placed, profile, { body, dx: start }, measures);
    else if (sign !== undefined) join = roundSign(bodies, baselinePoints, sign, { body, dx: start }, measures);
    else if (atSide === index - 1) join = pastSign(bodies, baselinePoints, atSide, { body, dx: start }, measures);
    else join = meet(profile, measures, { oneLetter: isOneLetter, room: Math.min(room, most) });
    // What joins two words, or letters past a sign beside one, does not start from that: at its height it would be the arm of a T.
    const isPast = opensWord || atSide === index - 1;
    const letters = isPast ? placed.filter((each) => !each.body.part.isHanging) : placed;
    const from = isPast ? (letters[0]?.body ?? last) : last;
    const low = letters.map(({ body: { rows }, dx }): ShiftedRows => ({ rows, dx }));
    const wordTop = opensWord ? wordTopOf([from, body], measures) : undefined;
    const footProfile = letters.length < placed.length ? profileOf(low, { rows: body.rows, dx: start }) : profile;
    const sides = {
      ...{
        profile: footProfile,
        isScript: script,
        beside: besideOf(from, body),
      },
      ...(wordTop === undefined ? {} : { wordTop }),
    };
    const isLoose = join.joint === 'none' && !body.part.isHanging && !isOneLetter;
    const joined = isLoose ? reachFor({ left: placed, body, start, reach, sides }, measures) : join;
    const mayMisread = !(script || isOneLetter || opensWord || isStop || body.part.isHanging || last.part.isHanging);
    const held = mayMisread ? readable(joined, sides, body, measures) : joined;
    if (held.joint === 'none' && body.part.isHanging) waiting = index;
    if (held.byMark) heldByMark.add(index);
    if (side) {
      atSide = index;
      joints.push({ region: side.held, fillet: 0 });
    }
    for (const bar of [stop, behindStop]) if (bar) joints.push({ region: bar.held, fillet: 0 });
    const foot = held.joint === 'bar' ? footJoint(sides, held.shift, measures) : undefined;
    const isTouching = held.touch !== undefined && (!foot || foot.isLong);
    const shift = isTouching ? held.touch : held.shift;
    const fillet = filletFor(profile, shift, measures);
    if (foot && !isTouching && wordTop !== undefined) wordGaps.push({ sides, own: foot.region, shift, fillet });
    else if (foot && !isTouching) joints.push({ region: foot.region, fillet });
    baselinePoints.push({ x: start - shift, y: 0 });
    if (typeof held.joint === 'object') joints.push({ region: postBar(held.joint, measures), fillet });
    if (waiting !== undefined && (waiting < index || index === bodies.length - 1)) {
      const { position, held: bar } = placeSign(bodies, baselinePoints, waiting, measures);
      baselinePoints[waiting] = position;
      if (bar) joints.push({ region: bar, fillet: 0 });
      waiting = undefined;
    }
  });
  joints.push(...wordJoints(wordGaps, measures));
  return { baselinePoints, joints, heldByMark };
}

/** Whether a letter of the same word follows a sign and ends below it, so that it would be drawn in under that. */
function isBelow(next: LetterBody | undefined, sign: LetterBody): boolean {
  return next !== undefined && !next.afterGap && !isAsTall(next, sign);
}

function besideOf(left: LetterBody, right: LetterBody): BarSides {
  return { text: left.text, left: left.rows, right: right.rows, isDotted: right.marks.length > 0 };
}

/** Letters that read as another one where they meet, or whose dot melts into the arm of an F, keep apart, on a bar. */
function readable(
  join: Join,
  { profile, beside }: FootNeighbours,
  { marks, text }: LetterBody,
  measures: Measures,
): Join {
  const { xHeight } = measures;
  if (join.joint !== 'met' || touching(profile) <= 0) return join;
  const isMelting = marks.length > 0 && heldByArm(beside, xHeight) !== undefined;
  const areArms = hasSmallLetters(text) && areArmsOnStem(beside, profile, join.shift, xHeight);
  const isMisread = !join.byMark && (areArms || misreadingOf(beside, profile, join.shift, xHeight) !== undefined);
  const isClosed = closesBays(beside.text, profile, join.shift, xHeight);
  return isMelting || isMisread || isClosed ? keptApart(profile, shares.stemGap, measures) : join;
}

/** Two words keep a distance, side by side and over one another, or whatever there is of it. */
function wordsApart(placed: readonly PlacedLetter[], profile: Profile, next: PlacedLetter, measures: Measures): Join {
  const join = keptApart(profile, shares.wordGap, measures);
  const upper = ({ rows }: LetterBody): number[] => rows.lines.slice(Math.max(0, -rows.first)).flat();
  const end = Math.max(...placed.flatMap(({ body, dx }) => upper(body).map((x) => x + dx)));
  const room = Math.min(...upper(next.body)) + next.dx - end - shares.wordRoom * measures.xHeight;
  return { ...join, shift: Math.max(0, Math.min(join.shift, room)) };
}

/** The top of small letters or, where two words meet in a capital each, that of the lower one. */
function wordTopOf(letters: readonly LetterBody[], { xHeight }: Measures): number {
  if (letters.some(({ text }) => hasSmallLetters(text))) return xHeight;
  return Math.min(...letters.map(({ rows }) => topOf(rows)));
}

/**
 * A full stop separates two words as well as a space does: “A. B.” needs no bar, unless the letters before and after it
 * would come too near to each other.
 */
function afterStop(left: readonly ShiftedRows[], standing: ShiftedRows, room: number, measures: Measures): Join {
  const { xHeight } = measures;
  const most = Math.min(room, shares.stopReach * xHeight);
  const join = meet(profileOf(left.slice(0, 1), standing), measures, { oneLetter: false, room: most });
  const clear = Math.max(0, touching(profileOf(left.slice(1), standing)) - shares.signGap * xHeight);
  if (join.joint === 'met' && join.shift <= clear) return join;
  return { shift: Math.min(join.joint === 'none' ? most : join.shift, clear), joint: 'bar' };
}

function isScript(bodies: readonly LetterBody[]): boolean {
  return areJoined(bodies) || Math.abs(slantOf(bodies.map(({ base }) => base))) > uprightTo;
}

/** Whether at least half of the letters meet the one before in the font itself. */
function areJoined(bodies: readonly LetterBody[]): boolean {
  const gaps = bodies.slice(1).map((body, index) => {
    const before = bodies[index]!;
    return touching(profileOf([{ rows: before.rows, dx: before.at.x }], { rows: body.rows, dx: body.at.x }));
  });
  return 2 * gaps.filter((gap) => gap < 0).length >= Math.max(1, gaps.length);
}
