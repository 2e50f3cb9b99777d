/** Millimetres, inches and counts as people read them. All that the engine reckons with is mm; only what is shown has the unit of the spec. */

export type Units = 'mm' | 'in';

/** Exact by definition (the international yard and pound agreement, 1959). */
export const mmPerInch = 25.4;

/** Millimetres in one of each. */
export const mmPer: Readonly<Record<Units, number>> = { mm: 1, in: mmPerInch };

/** Digits after the point, in mm and in inches. */
export type Digits = readonly [mm: number, inches: number];

/** To a tenth of a millimetre or a hundredth of an inch: enough to know a thing by. */
export const plain: Digits = [1, 2];
/** To a hundredth of a millimetre or a thousandth of an inch, as fine as sizes are promised. */
export const fine: Digits = [2, 3];
/** Of what is as fine as a beam. */
export const finest: Digits = [3, 4];

/** A number without zeros at its end, and without a sign where it is nothing. */
export function trimmed(value: number, digits: number): string {
  return String(Number(value.toFixed(digits)) + 0);
}

/** `82.0 mm` or `3.23 in`: as many digits as asked for, so that figures in a column or in motion keep their width. */
export function lengthText(mm: number, units: Units, digits: Digits = plain): string {
  return `${figureOf(mm, units, digits)} ${units}`;
}

/** `82 mm`, `3.23 in`: no more digits than it has. */
export function shortLength(mm: number, units: Units, digits: Digits = fine): string {
  return `${trimmed(mm / mmPer[units], digits[units === 'mm' ? 0 : 1])} ${units}`;
}

/** `82.0 × 31.4 mm`. */
export function sizeText(width: number, height: number, units: Units, digits: Digits = plain): string {
  return `${figureOf(width, units, digits)} × ${lengthText(height, units, digits)}`;
}

/** `600 × 300 mm`, with no more digits than they have. */
export function shortSize(width: number, height: number, units: Units, digits: Digits = fine): string {
  return `${shortLength(width, units, digits).replace(/ \w+$/, '')} × ${shortLength(height, units, digits)}`;
}

/** `12 × 8 in`: of what is in the spec's units already. */
export function writtenSize(width: number, height: number, units: Units): string {
  return `${width} × ${height} ${units}`;
}

/** `25.7 cm²` or `3.99 in²`. */
export function areaText(mm2: number, units: Units): string {
  return units === 'mm' ? `${trimmed(mm2 / 100, 1)} cm²` : `${trimmed(mm2 / mmPerInch ** 2, 2)} in²`;
}

function figureOf(mm: number, units: Units, [ofMm, ofInches]: Digits): string {
  return (mm / mmPer[units]).toFixed(units === 'mm' ? ofMm : ofInches);
}

/** “1 part”, “6 parts”. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}
