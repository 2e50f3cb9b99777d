/** Formats lengths and counts for people. */

import { counted, lengthText, sizeText } from '../../src/core/units.ts';
import type { Units } from '../../src/core/units.ts';
import type { ScenePiece } from '../../src/protocol/scene.ts';

const narrowSpace = '\u202f';

/** A size in both units, the spec's own first: "82.0 × 31.4 mm (3.228 × 1.236 in)". */
export function bothSizes(width: number, height: number, units: Units): string {
  return `${sizeText(width, height, units)} (${sizeText(width, height, units === 'mm' ? 'in' : 'mm')})`;
}

/** Whether both lengths are printed the same. */
export function isSameLength(a: number, b: number, units: Units): boolean {
  return lengthText(a, units) === lengthText(b, units);
}

/** "94.0 → 95.2 mm". */
export function changedText(before: number, after: number, units: Units): string {
  return `${lengthText(before, units).split(' ')[0]!} → ${lengthText(after, units)}`;
}

export function zoomText(scale: number, trueScale: number): string {
  const percent = (scale / trueScale) * 100;
  return `${percent < 10 ? percent.toFixed(1) : percent.toFixed(0)}${narrowSpace}%`;
}

/** "1 part · 3 holes". */
export function partsText({ partCount, holeCount }: Pick<ScenePiece, 'partCount' | 'holeCount'>): string {
  return `${counted(partCount, 'part')} · ${counted(holeCount, 'hole')}`;
}
