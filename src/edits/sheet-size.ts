/** Sheet sizes to choose from, and the edit that adds one to a spec. */

import type { TextEdit } from '../core/issue.ts';
import { mmPer } from '../core/units.ts';
import type { Units } from '../core/units.ts';
import type { SpecSource } from '../spec/yaml/source.ts';
import { addAboveShapes } from './above-shapes.ts';

/** In the spec's units, the longer side first: sizes that fit small machines, and their halves. Our own list. */
const sizes: Readonly<Record<Units, readonly SheetSize[]>> = {
  mm: [
    { width: 300, height: 200 },
    { width: 400, height: 300 },
    { width: 600, height: 300 },
    { width: 600, height: 400 },
  ],
  in: [
    { width: 12, height: 8 },
    { width: 12, height: 12 },
    { width: 24, height: 12 },
    { width: 24, height: 18 },
  ],
};
const margins: Readonly<Record<Units, string>> = { mm: '5 mm', in: '1/4 in' };
/** In the units it is written in. */
export interface SheetSize {
  readonly width: number;
  readonly height: number;
}

/** The sizes that hold a piece of the given size, in mm, without turning it. */
export function sheetSizesFor(piece: SheetSize, units: Units): readonly SheetSize[] {
  const per = mmPer[units];
  return sizes[units].filter(({ width, height }) => width * per > piece.width && height * per > piece.height);
}

/** Adds a line for the sheet below the keys for the material; `undefined` if the spec is no map or has a `sheet`. */
export function sheetSizeEdit(source: SpecSource, { width, height }: SheetSize, units: Units): TextEdit | undefined {
  const value = `{size: [${width} ${units}, ${height} ${units}], margin: ${margins[units]}}`;
  return addAboveShapes(source, 'sheet', value);
}
