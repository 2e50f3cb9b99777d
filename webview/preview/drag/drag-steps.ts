/** Step sizes of changes by hand, and descriptions of changes. Pure. */

import type { HandChange } from '../../../src/protocol/scene.ts';
import { lengthText } from '../../../src/core/units.ts';
import type { Units } from '../../../src/core/units.ts';

interface Steps {
  /** Rounding of pointer moves, and the step of an arrow key, in mm. */
  readonly fine: number;
  /** Step with Shift, in mm. */
  readonly coarse: number;
}

/** With inches, the steps are round numbers of inches. */
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

/** Rounds to 0.001 mm, without −0. */
export function tidy(mm: number): number {
  return Math.round(mm * 1000) / 1000 + 0;
}

export function isNothing(change: HandChange): boolean {
  return change.kind === 'size' ? change.by === 0 : change.right === 0 && change.up === 0;
}

/** The sum of two changes; just the second if the first is absent or of another kind. */
export function added(first: HandChange | undefined, second: HandChange): HandChange {
  if (first?.kind === 'move' && second.kind === 'move') {
    return { kind: 'move', right: tidy(first.right + second.right), up: tidy(first.up + second.up) };
  }
  if (first?.kind === 'size' && second.kind === 'size' && first.axis === second.axis) {
    return { ...second, by: tidy(first.by + second.by) };
  }
  return second;
}

/** "right 3.2 mm, up 1.0 mm"; "width 94.0 mm (+ 2.0 mm)" if the resulting size is known. */
export function changeText(change: HandChange, units: Units, result?: number): string {
  if (change.kind === 'size') {
    const by = `${change.by < 0 ? '−' : '+'} ${lengthText(Math.abs(change.by), units)}`;
    return `${change.axis} ${result === undefined ? by : `${lengthText(result, units)} (${by})`}`;
  }
  const words = [
    [change.right, 'right', 'left'],
    [change.up, 'up', 'down'],
  ] as const;
  const moved = words.filter(([mm]) => mm !== 0);
  if (moved.length === 0) return 'where it was';
  return moved.map(([mm, grows, falls]) => `${mm > 0 ? grows : falls} ${lengthText(Math.abs(mm), units)}`).join(', ');
}
