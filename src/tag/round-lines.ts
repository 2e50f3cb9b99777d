/** Lines of lettering over the top and along the bottom of an ellipse, and straight ones in the middle. */

import { normalise, unionOfWhole } from '../geometry/clipper.ts';
import { curveBounds, flatten } from '../geometry/curves.ts';
import { boundsOf } from '../geometry/measure.ts';
import type { Bounds } from '../geometry/types.ts';
import { spacedOval } from '../text/arc.ts';
import type { TextLayout } from '../text/layout.ts';
import { inkOf, setRound, straightLine } from './lettering.ts';
import type { SetText } from './lettering.ts';
import { boundsOfLines, placedLines, solidOf } from './lines.ts';
import type { LineInput, LineSpacing } from './lines.ts';
import type { MadeShape } from './made-shape.ts';
import { letteringAt } from './outline.ts';
import type { CurveOutline, HalfAxes, RoundSetter } from './outline.ts';

/** What is free between the ends of the two lines, and round the lines in the middle, in heights of the largest small letters. */
const usualEnds = 1.6;
const usualInner = 0.7;

/** Higher letters, as a share of the smaller half axis, do not look as if they ran round (all three our own judgement). */
const tallest = 0.34;

/** Halvings of a size that is sought. */
const halvings = 30;

/** A line that runs round, set straight; in em. */
interface Straight {
  readonly line: LineInput;
  readonly at: 'top' | 'bottom';
  readonly em: number;
  readonly layout: TextLayout;
  /** From its baseline to the ellipse that it runs along inside, and from there to the ellipse that it leaves free. */
  readonly outside: number;
  readonly inside: number;
}

export class RoundLines implements RoundSetter {
  readonly #lines: readonly LineInput[];
  readonly #spacing: LineSpacing;
  readonly #most: number;

  constructor(lines: readonly LineInput[], spacing: LineSpacing) {
    this.#lines = lines;
    this.#most = Math.max(...lines.map(({ share }) => share));
    this.#spacing = { ...spacing, most: this.#most };
  }

  /** Whether letters are in mm somewhere, and so not larger with the rest. */
  get changes(): boolean {
    return this.#spacing.gap !== undefined || this.#lines.some(({ text }) => text.letterSpacingMm !== 0);
  }

  /** The largest height in mm of the largest line's small letters, up to `most`, with which all have room; 0 where none does. */
  largest(axes: HalfAxes, most = Infinity): number {
    // Beyond this, the small letters alone would be too high.
    const highest = Math.min(most, tallest * Math.min(axes.a, axes.b));
    return this.#hasRoom(axes, highest) ? highest : bisected(0, highest, (mm) => !this.#hasRoom(axes, mm));
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
  at(axes: HalfAxes, mm: number): { readonly solid: MadeShape; readonly bounds: Bounds | undefined } {
    const boxes: Bounds[] = [];
    const made = this.#round(mm).flatMap((straight): MadeShape[] => {
      const { line, layout, em } = straight;
      const set = setRound(layout, line.text.letterSpacingMm / (em * mm), ovalOf(straight, axes, mm));
      return set ? [drawn(set, line, em * mm, boxes)] : [];
    });
    const middle = this.#middle(mm);
    if (middle.length > 0) {
      made.push(solidOf(middle, mm, mm, false));
      const { minX, minY, maxX, maxY } = boundsOfLines(middle)!;
      const [w, h] = [((maxX - minX) / 2) * mm, ((maxY - minY) / 2) * mm];
      boxes.push({ minX: -w, minY: -h, maxX: w, maxY: h });
    }
    const corners = boxes.flatMap(({ minX, minY, maxX, maxY }) => [
      { x: minX, y: minY },
      { x: maxX, y: maxY },
    ]);
    return {
      solid: {
        region: unionOfWhole(made.map(({ region }) => region)),
        lettering: made.flatMap(({ lettering = [] }) => lettering),
        arcCentre: { x: 0, y: 0 },
      },
      bounds: boundsOf([corners]),
    };
  }

  #hasRoom(axes: HalfAxes, mm: number): boolean {
    const { a, b } = axes;
    const { gap } = this.#spacing;
    const round = this.#round(mm);
    let turn = 0;
    let depth = 0;
    for (const straight of round) {
      const { layout, em, outside, inside } = straight;
      const ellipse = spacedOval(layout, ovalOf(straight, axes, mm));
      if (!ellipse || layout.advance >= ellipse.perimeter) return false;
      if ((outside + inside) * em * mm > tallest * Math.min(a, b)) return false;
      turn += ellipse.angleAt(layout.advance / 2);
      depth = Math.max(depth, (outside + inside) * em * mm);
    }
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
      const layout = straightLine(face, text, em * mm);
      const box = curveBounds(layout.curves);
      if (!box) return [];
      // Where tags are to look alike, whatever letters they have.
      const { minY, maxY } = this.#spacing.evenly ? inkOf(face, 'pdH') : box;
      const [high, deep] = [Math.max(maxY, 0), Math.max(-minY, 0)];
      return [
        { line, at, em, layout, ...(at === 'top' ? { outside: high, inside: deep } : { outside: deep, inside: high }) },
      ];
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

function ovalOf({ at, em, outside }: Straight, { a, b }: HalfAxes, mm: number) {
  const mmPerEm = em * mm;
  return { at, a: a / mmPerEm - outside, b: b / mmPerEm - outside };
}

function drawn(set: SetText, { face, path }: LineInput, mmPerEm: number, boxes: Bounds[]): MadeShape {
  const affine = { a: mmPerEm, b: 0, c: 0, d: mmPerEm, e: 0, f: 0 };
  const { minX, minY, maxX, maxY } = curveBounds(set.curves)!;
  boxes.push({ minX: minX * mmPerEm, minY: minY * mmPerEm, maxX: maxX * mmPerEm, maxY: maxY * mmPerEm });
  return {
    region: normalise(flatten(set.curves, { affine })),
    lettering: [letteringAt({ letters: set.letters, xHeight: face.xHeight, path }, affine)],
  };
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
