/** How far one step of the hand goes, and what a change is called. Pure. */

import type { HandChange } from '../../../src/protocol/preview.ts';
import { lengthText } from '../../../src/core/units.ts';
import type { Units } from '../../../src/core/units.ts';

interface Steps {
  /** What a pointer's moves are rounded to, and an arrow key moves by, in mm. */
  readonly fine: number;
  /** With Shift. */
  readonly coarse: number;
}

/** In inches the steps are round in inches. */
const steps: Readonly<Record<Units, Steps>> = {
  mm: { fine: 0.1, coarse: 1 },
  in: { fine: 0.005 * 25.4, coarse: 0.05 * 25.4 },
};

export function stepOf(units: Units, coarse: boolean): number {
  return coarse ? steps[units].coarse : steps[units].fine;
}

export function roundedToStep(mm: number, units: Units): number {
  const { fine } = steps[units];
  return tidy(Math.round(mm / fine) * fine);
}

/** To 0.001 mm, and never −0. */
export function tidy(mm: number): number {
  return Math.round(mm * 1000) / 1000 + 0;
}

export function isNothing(change: HandChange): boolean {
  return change.kind === 'size' ? change.by === 0 : change.right === 0 && change.up === 0;
}

/** Both together, of which the first may be absent or of another kind: then the second alone. */
export function added(first: HandChange | undefined, second: HandChange): HandChange {
  if (first?.kind === 'move' && second.kind === 'move') {
    return { kind: 'move', right: tidy(first.right + second.right), up: tidy(first.up + second.up) };
  }
  if (first?.kind === 'size' && second.kind === 'size' && first.axis === second.axis) {
    return { ...second, by: tidy(first.by + second.by) };
  }
  return second;
}

/** "right 3.2 mm, up 1.0 mm"; "width 94.0 mm (+ 2.0 mm)", where it is known to what size it leads. */
export function changeText(change: HandChange, units: Units, result?: number): string {
  if (change.kind === 'size') {
    const by = `${change.by < 0 ? '−' : '+'} ${lengthText(Math.abs(change.by), units)}`;
    return `${change.axis} ${result === undefined ? by : `${lengthText(result, units)} (${by})`}`;
  }
  const words = [
    [change.right, 'right', 'left'],
    [change.up, 'up', 'down'],
  ] as const;
  const told = words.filter(([mm]) => mm !== 0);
  if (told.length === 0) return 'where it was';
  return told.map(([mm, grows, falls]) => `${mm > 0 ? grows : falls} ${lengthText(Math.abs(mm), units)}`).join(', ');
}
