/**
 * Millimetres, inches and counts as people read them. The engine computes in mm throughout; only what is shown is in
 * the spec's unit.
 */

export type Units = 'mm' | 'in';

/** Exact by definition (the international yard and pound agreement, 1959). */
export const mmPerInch = 25.4;

/** Millimetres in one of each unit. */
export const mmPer: Readonly<Record<Units, number>> = { mm: 1, in: mmPerInch };

/** Decimals, in mm and in inches. */
export type Digits = readonly [mm: number, inches: number];

/** To a hundredth of a millimetre or a thousandth of an inch, the precision promised for sizes. */
export const fine: Digits = [2, 3];
/** For what is as fine as a beam. */
export const finest: Digits = [3, 4];

/** A number without trailing zeros, and never “-0”, since negative zero is written as 0. */
export function trimmed(value: number, digits: number): string {
  return String(Number(value.toFixed(digits)));
}

/**
 * A finished size: `82.0 mm`, to a tenth, or `1.125 in`, `2.5 in`, to a thousandth and no further than it goes, since
 * makers count in sixteenths.
 */
export function lengthText(mm: number, units: Units): string {
  return `${figureOf(mm, units)} ${units}`;
}

/** A measured width, with all its decimals as in messages: `0.92 mm`, `0.060 in`. */
export function measuredText(mm: number, units: Units): string {
  return `${(mm / mmPer[units]).toFixed(decimals(units, fine))} ${units}`;
}

/** `82 mm`, `3.228 in`: without trailing zeros. */
export function shortLength(mm: number, units: Units, digits: Digits = fine): string {
  return `${shortFigure(mm, units, digits)} ${units}`;
}

/**
 * The roundest figure in inches near a length, of those that makers use: whole, half, quarter, eighth or sixteenth
 * inches, below a tenth of an inch hundredths, then thousandths. “Near” is within 6 %, our own judgement: 3 mm are 1/8 in.
 */
export function roundInches(mm: number): number {
  const inches = mm / mmPerInch;
  const isNear = (figure: number): boolean => Math.abs(figure - inches) <= 0.06 * Math.abs(inches);
  const binary = Math.abs(inches) < 0.1 ? [] : [1, 2, 4, 8, 16];
  for (const parts of [...binary, 100, 1000]) {
    const figure = Math.round(inches * parts) / parts;
    if (isNear(figure)) return figure;
  }
  return Number(inches.toFixed(4));
}

/** `82.0 × 31.4 mm`. */
export function sizeText(width: number, height: number, units: Units): string {
  return `${figureOf(width, units)} × ${lengthText(height, units)}`;
}

/** `600 × 300 mm`, without trailing zeros. */
export function shortSize(width: number, height: number, units: Units, digits: Digits = fine): string {
  return `${shortFigure(width, units, digits)} × ${shortLength(height, units, digits)}`;
}

/** `12 × 8 in`, of figures that are in the spec's unit already. */
export function writtenSize(width: number, height: number, units: Units): string {
  return `${width} × ${height} ${units}`;
}

/** `25.7 cm²` or `3.99 in²`. */
export function areaText(mm2: number, units: Units): string {
  return units === 'mm' ? `${trimmed(mm2 / 100, 1)} cm²` : `${trimmed(mm2 / mmPerInch ** 2, 2)} in²`;
}

function figureOf(mm: number, units: Units): string {
  return units === 'mm' ? mm.toFixed(1) : shortFigure(mm, units, fine);
}

/** `82`, `3.228`: for a column whose head has the unit. */
export function shortFigure(mm: number, units: Units, digits: Digits = fine): string {
  return trimmed(mm / mmPer[units], decimals(units, digits));
}

const decimals = (units: Units, [ofMm, ofInches]: Digits): number => (units === 'mm' ? ofMm : ofInches);

/** “1 part”, “6 parts”. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}
