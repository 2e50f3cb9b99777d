/** Finds the material that a person names. */

import { wordsOf } from '../spec/model/material-words.ts';
import type { Material } from './material.ts';
import { entries } from './material-table.ts';

/** Names of the materials with known properties. */
export const materialNames: readonly string[] = entries.map(({ material }) => material.name);

/** Words that may describe any stock without making it a different material. */
const harmless = new Set(
  wordsOf(
    'a an the of in from solid clear natural untreated unfinished bare planed sanded smooth oiled waxed thin thick sheet ' +
      'sheets board boards panel panels offcut offcuts scrap piece pieces strip strips mm inch',
  ),
);

/**
 * The material meant by a name such as “walnut”, “Black walnut, 3 mm” or “cast acrylic sheet”. Every word must be
 * accounted for: “walnut veneered plywood”, “red oak” and “walnut-stained MDF” are different from walnut and oak, and
 * an unknown word may change the meaning. `undefined` if it is not certain.
 */
export function materialOf(name: string): Material | undefined {
  const named = wordsOf(name).filter((word) => !/^\d+(mm|in)?$/.test(word));
  return entries.find(({ must, may }) =>
    must.some(
      (needed) =>
        needed.every((word) => named.includes(word)) &&
        named.every((word) => needed.includes(word) || may.includes(word) || harmless.has(word)),
    ),
  )?.material;
}
