/** Lines of lettering over the top and along the bottom of an ellipse, and straight ones in the middle. */

import { curveBounds } from '../../geometry/curves.ts';
import { scaling, translation } from '../../geometry/affine.ts';
import { boundsOf } from '../../geometry/measure.ts';
import type { Bounds, Point, Ring } from '../../geometry/types.ts';
import { keptHeight, spacedOval } from '../../text/arc.ts';
import type { Ellipse } from '../../text/ellipse.ts';
import { evenReach } from './letter-band.ts';
import { setRound, straightLine } from './lettering.ts';
import type { SetText } from './lettering.ts';
import { boundsOfLines, drawnLine, placedLines, shapeOfLines, textsTogether } from './text-lines.ts';
import type { LineInput, LineSpacing } from './text-lines.ts';
import { mapShape } from '../made-shape.ts';
import type { MadeShape } from '../made-shape.ts';
import { outlinesAt, textAt } from '../curve-outline.ts';
import type { CurveOutline, HalfAxes, RoundRoom, RoundSetter, RoundSide, Sunk } from '../curve-outline.ts';
import { hullOfLines, middleHeight } from './round-middle.ts';

/** What is free between the ends of the two lines, and round the lines in the middle, in heights of the largest small letters that run round. */
const usualEnds = 1.6;
const usualInner = 0.7;

/** Higher letters, as a share of the smaller half axis, do not look as if they ran round (all three our own judgement). */
const tallest = 0.34;

/** Halvings of a size that is sought: to a hundred-thousandth of it. */
const halvings = 17;

/** What lines gain at least where those in the middle leave it (our own judgement, by looking). */
const worthMoving = 1.05;

/** Steps along a line at which the lines in the middle keep clear of it. */
const clearSteps = 24;

/** Two spaces between letters, in em, between which lines grow evenly with it. */
const probes = [0.01, 0.02] as const;

const origin: Point = { x: 0, y: 0 };

const atEdge: Sunk = { top: 0, bottom: 0, aside: 1 };

/** A line stops before an end of its ellipse that turns more sharply than a circle, whose radius is so many heights of its letters (our own judgement). */
const sharpest = 1.2;

/** A line that runs round, set straight; in em. */
interface Straight {
  readonly line: LineInput;
  readonly at: RoundSide;
  readonly em: number;
  /** In em, with its letters spaced out as they are. */
  readonly advance: number;
  readonly xHeight: number;
  /** From its baseline to the ellipse that it runs along inside, and from there to the ellipse that it leaves free. */
  readonly outside: number;
  readonly inside: number;
}

/** The same bent along its ellipse. */
interface SetRound {
  readonly set: SetText;
  readonly line: LineInput;
  readonly mmPerEm: number;
}

export class RoundLines implements RoundSetter {
  readonly #lines: readonly LineInput[];
  readonly #spacing: LineSpacing;
  readonly #most: number;
  /** The small letters of the largest line that runs round, as a share of those of the largest line. */
  readonly #roundShare: number;
  #hull: { readonly mm: number; readonly ring: Ring } | undefined;
  readonly #measures = new Map<LineInput, Measures>();

  constructor(lines: readonly LineInput[], spacing: LineSpacing) {
    this.#lines = lines;
    this.#most = Math.max(...lines.map(({ share }) => share));
    this.#roundShare = Math.max(...lines.map(({ arc, share }) => (arc ? share : 0))) / this.#most;
    this.#spacing = { ...spacing, most: this.#most };
  }

  get sides(): RoundSide[] {
    return this.#lines.flatMap(({ arc }) => arc ?? []);
  }

  /** Whether letters are in mm somewhere, and so not larger with the rest. */
  get changes(): boolean {
    return this.#spacing.gap !== undefined || this.#lines.some(({ text }) => text.letterSpacingMm !== 0);
  }

  /**
   * The largest height in mm of the largest line's small letters, up to `most`, with which all have room; 0 where none does.
   * All are as large as the longest allows, by their shares: lines round one edge look like one ring, and a short one that were
   * larger would be read first.
   */
  largest(room: RoundRoom, most = Infinity, sunk = atEdge): number {
    // Beyond this, the small letters of what runs round would be too high, or those in the middle.
    const highest = Math.min(most, (tallest * Math.min(room.a, room.b)) / this.#roundShare, 2 * room.b);
    const upTo = (low: number, isCentred: boolean): number =>
      this.#hasRoom(room, highest, sunk, isCentred)
        ? highest
        : bisected(low, highest, (mm) => !this.#hasRoom(room, mm, sunk, isCentred));
    const centred = upTo(0, true);
    if (room.edge === undefined && (this.#middle(1).length === 0 || !this.#hasRoom(room, worthMoving * centred, sunk)))
      return centred;
    return upTo(centred, false);
  }

  /** Half axes in the given proportion, as small as they may be round letters of that height. */
  smallest(mm: number, widthToHeight: number): HalfAxes {
    const sized = (b: number): HalfAxes => ({ a: b * widthToHeight, b });
    let high = mm;
    for (let round = 0; round < halvings && !this.#hasRoom(sized(high), mm); round++) high *= 2;
    const low = bisected(high / 2, high, (b) => this.#hasRoom(sized(b), mm));
    return sized(low + (high / 2) * 2 ** -halvings);
  }

  /** With the middle of the ellipse on the origin; `mm`: height of the largest line's small letters. */
  at(room: RoundRoom, mm: number, sunk = atEdge): { readonly solid: MadeShape; readonly bounds: Bounds | undefined } {
    const boxes: Bounds[] = [];
    const made = this.#set(this.#round(mm), room, mm, sunk).map((each) => drawn(each, boxes));
    const middle = this.#middle(mm);
    if (middle.length > 0) {
      const up = this.#middleHeight(room, mm, sunk) ?? 0;
      made.push(mapShape(shapeOfLines(middle, mm, mm), translation(0, up)));
      const { minX, minY, maxX, maxY } = boundsOfLines(middle)!;
      const [w, h] = [((maxX - minX) / 2) * mm, ((maxY - minY) / 2) * mm];
      boxes.push({ minX: -w, minY: up - h, maxX: w, maxY: up + h });
    }
    const corners = boxes.flatMap(({ minX, minY, maxX, maxY }) => [
      { x: minX, y: minY },
      { x: maxX, y: maxY },
    ]);
    return {
      solid: { ...textsTogether(made), arcCentre: { x: 0, y: 0 } },
      bounds: boundsOf([corners]),
    };
  }

  /** What runs round at the top or at the bottom, not yet united. */
  outlines(room: RoundRoom, mm: number, sunk: Sunk, side: RoundSide): Ring[] {
    const round = this.#round(mm).filter(({ at }) => at === side);
    return this.#set(round, room, mm, sunk).flatMap(({ set, line, mmPerEm }) =>
      outlinesAt(drawnLine(line, set), scaling(mmPerEm, mmPerEm, origin)),
    );
  }

  #set(round: readonly Straight[], axes: HalfAxes, mm: number, sunk: Sunk): SetRound[] {
    return round.flatMap((straight): SetRound[] => {
      const { line, em } = straight;
      const mmPerEm = em * mm;
      const layout = straightLine(line.face, line.text, mmPerEm);
      const oval = ovalOf(straight, inside(axes, sunk, straight.at), mm);
      const set = setRound(layout, line.text.letterSpacingMm / mmPerEm, oval);
      return set ? [{ set, line, mmPerEm }] : [];
    });
  }

  #hasRoom(room: RoundRoom, mm: number, sunk = atEdge, isCentred = false): boolean {
    let turn = 0;
    for (const straight of this.#round(mm)) {
      const { advance, at, em } = straight;
      const own = inside(room, sunk, at);
      const high = (straight.outside + straight.inside) * em * mm;
      if (high > tallest * Math.min(own.a, own.b)) return false;
      const ellipse = spacedOval(straight, ovalOf(straight, own, mm));
      if (!ellipse || advance >= ellipse.perimeter) return false;
      if (ellipse.leastRadius(advance / 2) < sharpest * (straight.outside + straight.inside)) return false;
      turn += ellipse.angleAt(advance / 2);
      if (room.edge && !room.edge.holds(pointsRound(straight, ellipse, mm))) return false;
    }
    const { a, b } = inside(room, sunk, sunk.top > sunk.bottom ? 'top' : 'bottom');
    const ends = this.#spacing.gap ?? usualEnds * this.#roundShare * mm;
    if (turn + ends / Math.min(a, b) > Math.PI) return false;
    return this.#middleHeight(room, mm, sunk, isCentred) !== undefined;
  }

  /** How far above the middle of the ellipse the straight lines stand; `undefined` where they have no room. */
  #middleHeight(room: RoundRoom, mm: number, sunk: Sunk, isCentred = false): number | undefined {
    const hull = this.#hullAt(mm);
    if (hull.length === 0) return 0;
    const round = this.#round(mm).map((straight) => {
      const ellipse = spacedOval(straight, ovalOf(straight, inside(room, sunk, straight.at), mm));
      return ellipse ? pointsRound(straight, ellipse, mm) : [];
    });
    return middleHeight(hull, {
      axes: room,
      space: room.middle,
      at: room.edge || isUneven(sunk) ? 'anywhere' : isCentred ? 'centre' : 'centre first',
      round,
      clear: this.#spacing.gap ?? usualInner * this.#roundShare * mm,
    });
  }

  #hullAt(mm: number): Ring {
    if (!this.#hull || (this.changes && this.#hull.mm !== mm)) this.#hull = { mm, ring: hullOfLines(this.#middle(mm)) };
    return this.#hull.ring.map(({ x, y }) => ({ x: x * mm, y: y * mm }));
  }

  #round(mm: number): Straight[] {
    return this.#lines.flatMap((line): Straight[] => {
      const { arc: at, face, text, share } = line;
      if (!at) return [];
      const em = share / this.#most / face.xHeight;
      const measures = this.#measures.get(line) ?? measuresOf(face, text);
      this.#measures.set(line, measures);
      if (!measures) return [];
      const { high, deep } = measures;
      const advance = measures.advance + (measures.stretch * text.letterSpacingMm) / (em * mm);
      const [outside, inside] = at === 'top' ? [high, deep] : [deep, high];
      return [{ line, at, em, advance, xHeight: face.xHeight, outside, inside }];
    });
  }

  #middle(mm: number) {
    const straight = this.#lines.filter(({ arc }) => !arc);
    return straight.length > 0 ? (placedLines(straight, this.#spacing, mm) ?? []) : [];
  }
}

/** Natural size: the small letters of the largest line are 1 mm high, and the circle as small as they allow. */
export function roundOutline(lines: RoundLines, heights: NonNullable<CurveOutline['heights']>): CurveOutline {
  const natural = lines.smallest(1, 1);
  return {
    bounds: lines.at(natural, 1).bounds,
    heights,
    changes: lines.changes,
    round: lines,
    at: (scaleX, scaleY) => {
      const { a, b } = lines.changes ? lines.smallest(scaleY, 1) : { a: natural.a * scaleY, b: natural.b * scaleY };
      return lines.at({ a: (a * scaleX) / scaleY, b }, scaleY).solid;
    },
  };
}

/** Of a straight line, in em: how long it is, by how much it is longer with a space between letters, how high and how deep. */
type Measures =
  | { readonly advance: number; readonly stretch: number; readonly high: number; readonly deep: number }
  | undefined;

function measuresOf(face: LineInput['face'], text: LineInput['text']): Measures {
  const { curves, advance } = straightLine(face, text, Infinity);
  const box = curveBounds(curves);
  if (!box) return undefined;
  // Where tags are to look alike, whatever letters they have.
  const { high, deep } = text.evenly
    ? evenReach(face, text.evenly)
    : { high: Math.max(box.maxY, 0), deep: Math.max(-box.minY, 0) };
  if (text.letterSpacingMm === 0) return { advance, stretch: 0, high, deep };
  const [less, more] = probes.map((em) => straightLine(face, { ...text, letterSpacingMm: em }, 1).advance) as [
    number,
    number,
  ];
  const stretch = (more - less) / (probes[1] - probes[0]);
  // Letters that are spaced out have no ligatures, and so another length.
  return { advance: less - stretch * probes[0], stretch, high, deep };
}

/** Lines of which one goes below a hole leave the middle of what is free to the straight ones, not that of the plate: further in by so much, in mm (our own judgement). */
const unevenMm = 1;

const isUneven = ({ top, bottom }: Sunk): boolean => Math.abs(top - bottom) > unevenMm;

const inside = ({ a, b }: HalfAxes, sunk: Sunk, side: RoundSide): HalfAxes => ({
  a: a - sunk.aside * sunk[side],
  b: b - sunk[side],
});

function ovalOf({ at, em, outside }: Straight, { a, b }: HalfAxes, mm: number) {
  const mmPerEm = em * mm;
  return { at, a: a / mmPerEm - outside, b: b / mmPerEm - outside };
}

/** Points all round a line, in mm: along its foot and its head. */
function pointsRound(
  { at, em, xHeight, outside, inside: deep, advance }: Straight,
  ellipse: Ellipse,
  mm: number,
): Point[] {
  const mmPerEm = em * mm;
  const kept = keptHeight(at, xHeight);
  const along = (out: number): Point[] =>
    Array.from({ length: clearSteps + 1 }, (_, step) => {
      const { point, outwards } = ellipse.placeAt(advance * (step / clearSteps - 0.5), at);
      return { x: (point.x + (out - kept) * outwards.x) * mmPerEm, y: (point.y + (out - kept) * outwards.y) * mmPerEm };
    });
  return [...along(outside), ...along(-deep).toReversed()];
}

function drawn({ set, line, mmPerEm }: SetRound, boxes: Bounds[]): MadeShape {
  const { minX, minY, maxX, maxY } = curveBounds(set.curves)!;
  boxes.push({ minX: minX * mmPerEm, minY: minY * mmPerEm, maxX: maxX * mmPerEm, maxY: maxY * mmPerEm });
  return textAt(drawnLine(line, set), scaling(mmPerEm, mmPerEm, origin));
}

/** The largest value known to lie on the lower side, where what holds above does not hold below. */
function bisected(low: number, high: number, isAbove: (value: number) => boolean): number {
  for (let round = 0; round < halvings; round++) {
    const middle = (low + high) / 2;
    if (isAbove(middle)) high = middle;
    else low = middle;
  }
  return low;
}
