/** Slides the letters of a line together one after the other, and adds what joins those that cannot meet. */

import type { Point, Region } from '../../geometry/types.ts';
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
  const line = new SlidingLine(bodies, measures);
  for (const index of bodies.keys()) line.put(index);
  return line.slid();
}

/** A letter that is set next, where it would stand if it did not slide. */
interface NextLetter {
  readonly index: number;
  readonly body: LetterBody;
  readonly start: number;
  /** Those before it, the nearest first, without a sign that opens its word. */
  readonly placed: readonly PlacedLetter[];
  readonly last: LetterBody;
  readonly opensWord: boolean;
  /** Whether it is a part of the same letter as the one before. */
  readonly isOneLetter: boolean;
  /** A high sign before it that waits for a place. */
  readonly sign: number | undefined;
  readonly profile: Profile;
  /** Largest distance that it may move closer, in mm. */
  readonly room: number;
}

/** How a letter meets those before it. */
interface Meeting {
  readonly join: Join;
  /** What holds it besides. */
  readonly bars: readonly Region[];
  readonly isAtSide: boolean;
}

/** The letters of a line, set one after the other. */
class SlidingLine {
  readonly #bodies: readonly LetterBody[];
  readonly #measures: Measures;
  readonly #isScript: boolean;
  /** Largest distance that a letter moves closer, in mm. */
  readonly #reach: number;
  readonly #baselinePoints: Point[] = [];
  readonly #joints: Joint[] = [];
  readonly #heldByMark = new Set<number>();
  readonly #wordGaps: WordGap[] = [];
  /** A high sign that nothing before it reaches; it waits for the next letter. */
  #waiting: number | undefined;
  /** A high sign beside a letter as tall as itself, and before one that is not. */
  #atSide: number | undefined;

  constructor(bodies: readonly LetterBody[], measures: Measures) {
    this.#bodies = bodies;
    this.#measures = measures;
    this.#isScript = isScript(bodies);
    this.#reach = (this.#isScript ? shares.scriptReach : shares.reach) * measures.xHeight;
  }

  put(index: number): void {
    const body = this.#bodies[index]!;
    if (index === 0) {
      this.#baselinePoints.push({ x: body.at.x, y: 0 });
      if (body.part.isHanging) this.#waiting = index;
      return;
    }
    const next = this.#next(index);
    if (this.#putBehindHyphen(next) || this.#putOnBar(next)) return;
    this.#putJoined(next);
    this.#putWaiting(index);
  }

  slid(): Slid {
    return {
      baselinePoints: this.#baselinePoints,
      joints: [...this.#joints, ...wordJoints(this.#wordGaps, this.#measures)],
      heldByMark: this.#heldByMark,
    };
  }

  #next(index: number): NextLetter {
    const [bodies, points, measures] = [this.#bodies, this.#baselinePoints, this.#measures];
    const body = bodies[index]!;
    const waiting = this.#waiting;
    const sign = waiting !== undefined && waiting > 0 ? waiting : undefined;
    const opening = sign !== undefined && bodies[sign]!.afterGap ? sign : undefined;
    const placed = Array.from({ length: Math.min(index, lookBack) }, (_, k) => index - 1 - k)
      .filter((k) => k !== opening)
      .map((k): PlacedLetter => ({ body: bodies[k]!, dx: points[k]!.x }));
    const last = placed[0]!.body;
    const start = points[index - 1]!.x + body.at.x - bodies[index - 1]!.at.x;
    const isOneLetter = body.index === last.index;
    const profile = profileOf(rowsOf(placed), { rows: body.rows, dx: start });
    const room = Math.min(
      markRoom(placed, body, start, measures),
      isOneLetter ? Infinity : crossingRoom([last.text, body.text], profile, measures),
    );
    const opensWord = body.afterGap || opening !== undefined;
    return { index, body, start, placed, last, opensWord, isOneLetter, sign, profile, room };
  }

  /** Whether it is behind a hyphen, which then stands midway. */
  #putBehindHyphen({ index, body, start, placed, last }: NextLetter): boolean {
    if (!isHyphenBetween(this.#bodies, index - 1)) return false;
    const beside = besideHyphen(placed.slice(1), last, { body, dx: start }, this.#measures);
    if (!beside) return false;
    this.#baselinePoints[index - 1] = beside.at;
    this.#baselinePoints.push({ x: start - beside.shift, y: 0 });
    this.#joints.push({ region: beside.held, fillet: 0 });
    return true;
  }

  /** Whether it is one of two letters that are read as another where they meet. */
  #putOnBar({ body, start, last, profile, room }: NextLetter): boolean {
    const most = Math.min(room, this.#isScript ? this.#reach : Infinity);
    const barred = barredLetters(last, body, profile, most, this.#measures);
    if (!barred) return false;
    const { shift, bar } = barred;
    this.#baselinePoints.push({ x: start - shift, y: 0 });
    this.#joints.push({ region: bar.region, fillet: filletFor(profile, shift, this.#measures) });
    return true;
  }

  #putJoined(next: NextLetter): void {
    const { index, body, start, profile, opensWord } = next;
    const measures = this.#measures;
    const { join, bars, isAtSide } = this.#meeting(next);
    const sides = this.#sidesOf(next);
    const held = this.#held(next, sides, join);
    if (held.joint === 'none' && body.part.isHanging) this.#waiting = index;
    if (held.byMark) this.#heldByMark.add(index);
    if (isAtSide) this.#atSide = index;
    this.#joints.push(...bars.map((region) => ({ region, fillet: 0 })));
    const foot = held.joint === 'bar' ? footJoint(sides, held.shift, measures) : undefined;
    const isTouching = held.touch !== undefined && (!foot || foot.isLong);
    const shift = isTouching ? held.touch : held.shift;
    const fillet = filletFor(profile, shift, measures);
    if (foot && !isTouching && opensWord) this.#wordGaps.push({ sides, own: foot.region, shift, fillet });
    else if (foot && !isTouching) this.#joints.push({ region: foot.region, fillet });
    this.#baselinePoints.push({ x: start - shift, y: 0 });
    if (typeof held.joint === 'object') this.#joints.push({ region: postBar(held.joint, measures), fillet });
  }

  /** What it does by its kind, and by that of the letter before. */
  #meeting(next: NextLetter): Meeting {
    const { index, body, start, placed, last, opensWord, isOneLetter, sign, profile, room } = next;
    const [bodies, points, measures] = [this.#bodies, this.#baselinePoints, this.#measures];
    const met = (join: Join): Meeting => ({ join, bars: [], isAtSide: false });
    const metOnBar = ({ shift, held }: { readonly shift: number; readonly held: Region }): Meeting => ({
      join: { shift, joint: 'met' },
      bars: [held],
      isAtSide: false,
    });
    const standing = { rows: body.rows, dx: start };
    if (body.part.isHanging) {
      const isBeside = !opensWord && sign === undefined && isAsTall(last, body);
      const side = isBeside && isBelow(bodies[index + 1], body) ? sidePlace(profile, body.base, measures) : undefined;
      if (side) return { ...metOnBar(side), isAtSide: true };
      if (opensWord || (sign === undefined && !isBeside)) return met({ shift: 0, joint: 'none' });
    }
    const isStop = fullStop.test(body.text);
    const most = Math.min(room, isStop ? shares.stopReach * measures.xHeight : this.#reach);
    const stop = isStop && !opensWord ? stopPlace(profile, body, most, measures) : undefined;
    if (stop) return metOnBar(stop);
    const isBehindStop = fullStop.test(last.text);
    const behindStop =
      isBehindStop && !body.part.isHanging && !isStop
        ? pastStop(rowsOf(placed), standing, last, room, measures)
        : undefined;
    if (behindStop) return metOnBar(behindStop);
    if (opensWord && isBehindStop) return met(afterStop(rowsOf(placed), standing, room, measures));
    if (opensWord) return met(wordsApart(placed, profile, { body, dx: start }, measures));
    if (sign !== undefined) return met(roundSign(bodies, points, sign, { body, dx: start }, measures));
    if (this.#isPastSign(index)) return met(pastSign(bodies, points, index - 1, { body, dx: start }, measures));
    return met(meet(profile, measures, { oneLetter: isOneLetter, room: most }));
  }

  #isPastSign(index: number): boolean {
    return this.#atSide === index - 1;
  }

  /** What joins two words, or letters past a sign beside one, does not start from that: at its height it would be the arm of a T. */
  #sidesOf({ index, body, start, placed, last, opensWord, profile }: NextLetter): FootNeighbours {
    const isPast = opensWord || this.#isPastSign(index);
    const letters = isPast ? placed.filter((each) => !each.body.part.isHanging) : placed;
    const from = isPast ? (letters[0]?.body ?? last) : last;
    const isFewer = letters.length < placed.length;
    return {
      profile: isFewer ? profileOf(rowsOf(letters), { rows: body.rows, dx: start }) : profile,
      isScript: this.#isScript,
      beside: besideOf(from, body),
      ...(opensWord ? { wordTop: wordTopOf([from, body], this.#measures) } : {}),
    };
  }

  #held(next: NextLetter, sides: FootNeighbours, join: Join): Join {
    const { body, start, placed, last, opensWord, isOneLetter } = next;
    const isLoose = join.joint === 'none' && !body.part.isHanging && !isOneLetter;
    const joined = isLoose ? reachFor({ left: placed, body, start, reach: this.#reach, sides }, this.#measures) : join;
    const isSign = fullStop.test(body.text) || body.part.isHanging || last.part.isHanging;
    const mayMisread = !(this.#isScript || isOneLetter || opensWord || isSign);
    return mayMisread ? readable(joined, sides, body, this.#measures) : joined;
  }

  /** A high sign that waited has its place once the letter behind it has. */
  #putWaiting(index: number): void {
    const waiting = this.#waiting;
    if (waiting === undefined || (waiting >= index && index < this.#bodies.length - 1)) return;
    const { position, held } = placeSign(this.#bodies, this.#baselinePoints, waiting, this.#measures);
    this.#baselinePoints[waiting] = position;
    if (held) this.#joints.push({ region: held, fillet: 0 });
    this.#waiting = undefined;
  }
}

const rowsOf = (placed: readonly PlacedLetter[]): ShiftedRows[] =>
  placed.map(({ body: { rows }, dx }) => ({ rows, dx }));

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
