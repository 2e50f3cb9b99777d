/**
 * Default minimum widths of material, by the material and, to a lesser degree, by how thin it is. A thick sheet needs
 * no wider web than a thin one; material that splits along its grain, cracks or crumbles does. The guide and the pages
 * of the checks show this table, and a test keeps them in step.
 */

import { wordsOf } from './material-words.ts';

export interface WebDefault {
  /** As a maker calls it. */
  readonly material: string;
  /** Sets of words; a material that contains all words of any set matches. */
  readonly names: readonly (readonly string[])[];
  /** Narrowest web to rely on, in mm. */
  readonly web: number;
  /** Narrowest web that survives cutting and handling if nothing pulls at it, in mm. */
  readonly least: number;
  /** Whether thin sheet of it needs wider webs. */
  readonly isRigid: boolean;
  readonly basis: string;
}

const practice = 'rule of thumb, no source';
const judgement = 'our own judgement';

const row = (
  material: string,
  names: string,
  [web, least]: readonly [number, number],
  basis: string,
  isRigid = true,
): WebDefault => ({
  material,
  names: names === '' ? [] : names.split(' ').map((name) => name.split('+')),
  web,
  least,
  isRigid,
  basis,
});

/** A material that is not given or not in the table. */
export const unnamed = row('anything else', '', [1.5, 0.8], practice);

const plywood = 'plywood, also “birch” alone';
const solidWood = 'solid wood and veneer, across the grain';

/**
 * The first row that matches counts: walnut-veneered MDF is MDF, and cherry red acrylic is acrylic. “Birch” alone most
 * often means plywood. Brand names are not recognised.
 */
export const webDefaults: readonly WebDefault[] = [
  row(plywood, 'ply plywood', [1.5, 0.8], practice),
  row('MDF, HDF, hardboard', 'mdf hdf hardboard fibreboard fiberboard', [1.5, 0.8], judgement),
  row(solidWood, 'solid+birch paper+birch silver+birch yellow+birch birch+veneer', [2, 1], judgement),
  row('bamboo', 'bamboo', [1.5, 0.8], judgement),
  row('acrylic and other brittle plastic', 'acrylic pmma polystyrene styrene mirror glass', [2, 1], judgement),
  row(
    'card, paper',
    'card cardboard cardstock paper paperboard greyboard grayboard pasteboard',
    [1, 0.5],
    judgement,
    false,
  ),
  row('cork', 'cork', [3, 1.5], judgement, false),
  row('felt', 'felt', [3, 1.5], judgement, false),
  row('leather', 'leather leatherette hide suede', [2, 1], judgement, false),
  row(
    solidWood,
    'wood hardwood softwood timber lumber veneer alder ash aspen balsa basswood beech boxwood cedar cherry chestnut elm fir ' +
      'hazel hickory hornbeam larch lime linden mahogany maple oak olive padauk pear pine plum poplar rowan sapele spruce ' +
      'sycamore teak tulipwood walnut willow yew',
    [2, 1],
    judgement,
  ),
  row(plywood, 'birch', [1.5, 0.8], practice),
  unnamed,
];

/** Sheet thinner than this needs wider webs, in mm (our own judgement). */
export const thinSheetMm = 2;

/** Largest factor by which webs in thin sheet are widened (our own judgement). */
export const mostWidening = 1.5;

export function webDefaultOf(material: string | undefined): WebDefault {
  const named = wordsOf(material ?? '');
  return webDefaults.find(({ names }) => names.some((name) => name.every((word) => named.includes(word)))) ?? unnamed;
}

export function isSolidWood(material: string | undefined): boolean {
  return webDefaultOf(material).material === solidWood;
}

/**
 * Default `min_web` in mm. For thin sheet it grows with the square root of how much thinner the sheet is, as the
 * section shrinks with both dimensions.
 */
export function defaultMinWeb(material: string | undefined, thickness: number | undefined): number {
  const { web, isRigid } = webDefaultOf(material);
  if (!isRigid || thickness === undefined || thickness >= thinSheetMm) return web;
  return Math.round(10 * web * Math.min(Math.sqrt(thinSheetMm / thickness), mostWidening)) / 10;
}
