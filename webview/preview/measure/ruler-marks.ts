/** Marks of a ruler, and which of them have a number. Pure. */

import { mmPer } from '../../../src/core/units.ts';
import type { Units } from '../../../src/core/units.ts';

export interface RulerMark {
  /** In mm from the ruler's zero. */
  readonly at: number;
  /** Marks with a number are longest. */
  readonly rank: 'figure' | 'half' | 'fine';
  readonly text: string;
}

/** Steps between numbers, in units; each is divided into ten, five or four, so that marks fall on round numbers too. */
const figureSteps: readonly (readonly [step: number, parts: number])[] = [
  [0.05, 5],
  [0.1, 10],
  [0.2, 4],
  [0.5, 5],
  [1, 10],
  [2, 4],
  [5, 5],
  [10, 10],
  [20, 4],
  [50, 5],
  [100, 10],
  [200, 4],
  [500, 5],
  [1000, 10],
];
const leastFigurePx = 44;
const leastMarkPx = 4;
/** Limit on marks; no stage is wide enough for more. */
const mostMarks = 2000;

/** Marks from one place to another, in mm from the zero. `scale`: pixels per mm. */
export function rulerMarks(from: number, to: number, scale: number, units: Units): RulerMark[] {
  const px = scale * mmPer[units];
  const [step, finest] = figureSteps.find(([each]) => each * px >= leastFigurePx) ?? figureSteps.at(-1)!;
  const parts = (step * px) / finest >= leastMarkPx ? finest : finest === 5 ? 5 : 2;
  const mark = step / parts;
  const first = Math.ceil(from / mmPer[units] / mark - 1e-9);
  const last = Math.min(Math.floor(to / mmPer[units] / mark + 1e-9), first + mostMarks);
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  const marks: RulerMark[] = [];
  for (let nth = first; nth <= last; nth++) {
    const at = nth * mark * mmPer[units] + 0;
    const isFigure = nth % parts === 0;
    const isHalf = !isFigure && parts % 2 === 0 && nth % (parts / 2) === 0;
    const text = isFigure ? (nth * mark).toFixed(decimals).replace(/^-0(\.0*)?$/, '0') : '';
    marks.push({ at, rank: isFigure ? 'figure' : isHalf ? 'half' : 'fine', text });
  }
  return marks;
}
