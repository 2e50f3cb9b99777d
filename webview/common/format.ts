/** Lengths and counts as people read them. */

import type { ScenePiece } from '../../src/protocol/preview.ts';

export type Units = 'mm' | 'in';

const mmPerInch = 25.4;
const narrowSpace = '\u202f';

/** A size in both systems, the spec's own first: "82.0 × 31.4 mm (3.23 × 1.24 in)". */
export function sizeText(width: number, height: number, units: Units): string {
  const mm = `${width.toFixed(1)} × ${height.toFixed(1)} mm`;
  const inches = `${(width / mmPerInch).toFixed(2)} × ${(height / mmPerInch).toFixed(2)} in`;
  return units === 'mm' ? `${mm} (${inches})` : `${inches} (${mm})`;
}

/** A dimension, to a tenth of a millimetre or a hundredth of an inch. */
export function lengthText(mm: number, units: Units): string {
  return units === 'mm' ? `${mm.toFixed(1)} mm` : `${(mm / mmPerInch).toFixed(2)} in`;
}

/** Whether both are written alike. */
export function isSameLength(a: number, b: number, units: Units): boolean {
  return lengthText(a, units) === lengthText(b, units);
}

/** "94.0 → 95.2 mm". */
export function changedText(before: number, after: number, units: Units): string {
  return `${lengthText(before, units).split(' ')[0]!} → ${lengthText(after, units)}`;
}

/** Two dimensions of one thing: "11.0 × 3.0 mm". */
export function crossText(length: number, width: number, units: Units): string {
  return units === 'mm'
    ? `${length.toFixed(1)} × ${lengthText(width, units)}`
    : `${(length / mmPerInch).toFixed(2)} × ${lengthText(width, units)}`;
}

/** A width that is in question, with a digit more. */
export function fineText(mm: number, units: Units): string {
  return units === 'mm' ? `${mm.toFixed(2)} mm` : `${(mm / mmPerInch).toFixed(3)} in`;
}

export function zoomText(scale: number, trueScale: number): string {
  const percent = (scale / trueScale) * 100;
  return `${percent < 10 ? percent.toFixed(1) : percent.toFixed(0)}${narrowSpace}%`;
}

/** "1 part", "3 holes". */
export function countText(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** "1 part · 3 holes". */
export function partsText({ partCount, holeCount }: Pick<ScenePiece, 'partCount' | 'holeCount'>): string {
  return `${countText(partCount, 'part')} · ${countText(holeCount, 'hole')}`;
}
