/**
 * Birch plywood by its thickness: characteristic strengths in tension, which 95 of 100 sheets reach, from the Handbook
 * of Finnish Plywood (Finnish Forest Industries Federation, 2002, ISBN 952-9506-63-5; 2007, ISBN 952-9506-66-X). That
 * both editions exist and what they cover was seen; the figures are from memory.
 */

import type { Strength, Strengths } from './material.ts';

const source = 'Handbook of Finnish Plywood (2002)';

/** Nominal thickness (mm), tension along and across the grain of the faces (MPa). */
const rows = [
  [4, 45.8, 29.2],
  [6.5, 42.2, 32.8],
  [9, 40.8, 34.2],
  [12, 40, 35],
  [15, 39.5, 35.5],
  [18, 39.2, 35.8],
  [21, 39, 36],
] as const;

/** Panel shear, the same for every thickness (MPa). */
const panelShear = 9.5;

/**
 * Thinnest sheet, in mm, that the 4 mm row is used for: plywood of three equal plies is made from about 2.5 mm on, with
 * the same share of layers in each direction. Our own judgement.
 */
const thinnest = 2.5;

const characteristic = (value: number): Strength => ({ value, share: 1, source, known: 'from memory' });

/** The weaker of the two rows that a thickness lies between; `undefined` outside the table. */
export function birchPlywood(thicknessMm: number): Strengths | undefined {
  const last = rows.at(-1)!;
  if (thicknessMm < thinnest || thicknessMm > last[0]) return undefined;
  const below = rows.findLast(([nominal]) => nominal <= thicknessMm) ?? rows[0];
  const above = rows.find(([nominal]) => nominal >= thicknessMm) ?? last;
  return {
    along: characteristic(Math.min(below[1], above[1])),
    across: characteristic(Math.min(below[2], above[2])),
    shear: characteristic(panelShear),
  };
}
