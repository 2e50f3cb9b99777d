/** Lines of lettering over the top and along the bottom of an ellipse, and straight ones in the middle. */

import { curveBounds } from '../../geometry/curves.ts';
import { boundsOf } from '../../geometry/measure.ts';
import type { Bounds, Region } from '../../geometry/types.ts';
import { spacedOval } from '../../text/arc.ts';
import { evenReach } from './letter-band.ts';
import { setRound, straightLine } from './lettering.ts';
import type { SetText } from './lettering.ts';
import { boundsOfLines, drawnLine, placedLines, shapeOfLines, textsTogether } from './text-lines.ts';
import type { LineInput, LineSpacing } from './text-lines.ts';
import type { MadeShape } from '../made-shape.ts';
import { textAt } from '../curve-outline.ts';
import type { CurveOutline, HalfAxes, RoundSetter, RoundSide, Sunk } from '../curve-outline.ts';

/** What is free between the ends of the two lines, and round the lines in the middle, in heights of the largest small letters. */
const usualEnds = 1.6;
const usualInner = 0.7;

/** Higher letters, as a share of the smaller half axis, do not look as if they ran round (all three our own judgement). */
const tallest = 0.34;

/** Halvings of a size that is sought: to a hundred-thousandth of it. */
const halvings = 17;

/** Two spaces between letters, in em, between which lines grow evenly with it. */
const probes = [0.01, 0.02] as const;

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

export class RoundLines implements RoundSetter {
  readonly #lines: readonly LineInput[];
  readonly #spacing: LineSpacing;
  readonly #most: number;
  readonly #measures = new Map<LineInput, Measures>();

  constructor(lines: readonly LineInput[], spacing: LineSpacing) {
    this.#lines = lines;
    this.#most = Math.max(...lines.map(({ share }) => share));
    this.#spacing = { ...spacing, most: this.#most };
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
  largest(axes: HalfAxes, most = Infinity, sunk = atEdge): number {
    // Beyond this, the small letters alone would be too high.
    const highest = Math.min(most, tallest * Math.min(axes.a, axes.b));
    return this.#hasRoom(axes, highest, sunk) ? highest : bisected(0, highest, (mm) => !this.#hasRoom(axes, mm, sunk));
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
  at(axes: HalfAxes, mm: number, sunk = atEdge): { readonly solid: MadeShape; readonly bounds: Bounds | undefined } {
    const boxes: Bounds[] = [];
    const made = this.#made(this.#round(mm), axes, mm, sunk, boxes);
    const middle = this.#middle(mm);
    if (middle.length > 0) {
      made.push(shapeOfLines(middle, mm, mm));
      const { minX, minY, maxX, maxY } = boundsOfLines(middle)!;
      const [w, h] = [((maxX - minX) / 2) * mm, ((maxY - minY) / 2) * mm];
      boxes.push({ minX: -w, minY: -h, maxX: w, maxY: h });
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
  outlines(axes: HalfAxes, mm: number, sunk: Sunk, side: RoundSide): Region {
    const round = this.#round(mm).filter(({ at }) => at === side);
    return this.#made(round, axes, mm, sunk, []).flatMap(({ region }) => region);
  }

  #made(round: readonly Straight[], axes: HalfAxes, mm: number, sunk: Sunk, boxes: Bounds[]): MadeShape[] {
    return round.flatMap((straight): MadeShape[] => {
      const { line, em } = straight;
      const layout = straightLine(line.face, line.text, em * mm);
      const set = setRound(
        layout,
        line.text.letterSpacingMm / (em * mm),
        ovalOf(straight, inside(axes, sunk, straight.at), mm),
      );
      return set ? [drawn(set, line, em * mm, boxes)] : [];
    });
  }

  #hasRoom(axes: HalfAxes, mm: number, sunk = atEdge): boolean {
    const { gap } = this.#spacing;
    const round = this.#round(mm);
    let turn = 0;
    let depth = 0;
    for (const straight of round) {
      const { advance, at, em } = straight;
      const own = inside(axes, sunk, at);
      const high = (straight.outside + straight.inside) * em * mm;
      if (high > tallest * Math.min(own.a, own.b)) return false;
      const ellipse = spacedOval(straight, ovalOf(straight, own, mm));
      if (!ellipse || advance >= ellipse.perimeter) return false;
      if (ellipse.leastRadius(advance / 2) < sharpest * (straight.outside + straight.inside)) return false;
      turn += ellipse.angleAt(advance / 2);
      depth = Math.max(depth, high);
    }
    const { a, b } = inside(axes, sunk, sunk.top > sunk.bottom ? 'top' : 'bottom');
    const ends = gap ?? usualEnds * mm;
    if (turn + ends / Math.min(a, b) > Math.PI) return false;
    const middle = boundsOfLines(this.#middle(mm));
    if (!middle) return true;
    const free = depth + (gap ?? usualInner * mm);
    if (free >= Math.min(a, b)) return false;
    const [w, h] = [((middle.maxX - middle.minX) / 2) * mm, ((middle.maxY - middle.minY) / 2) * mm];
    return (w / (a - free)) ** 2 + (h / (b - free)) ** 2 <= 1;
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

const inside = ({ a, b }: HalfAxes, sunk: Sunk, side: RoundSide): HalfAxes => ({
  a: a - sunk.aside * sunk[side],
  b: b - sunk[side],
});

function ovalOf({ at, em, outside }: Straight, { a, b }: HalfAxes, mm: number) {
  const mmPerEm = em * mm;
  return { at, a: a / mmPerEm - outside, b: b / mmPerEm - outside };
}

function drawn(set: SetText, line: LineInput, mmPerEm: number, boxes: Bounds[]): MadeShape {
  const affine = { a: mmPerEm, b: 0, c: 0, d: mmPerEm, e: 0, f: 0 };
  const { minX, minY, maxX, maxY } = curveBounds(set.curves)!;
  boxes.push({ minX: minX * mmPerEm, minY: minY * mmPerEm, maxX: maxX * mmPerEm, maxY: maxY * mmPerEm });
  return textAt(drawnLine(line, set), affine);
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
