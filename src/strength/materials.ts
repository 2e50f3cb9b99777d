/**
 * What is published of the materials tags are cut from. A property that is not published is absent, never 0.
 *
 * Wood: USDA Forest Products Laboratory, Wood Handbook FPL-GTR-190 (2010), table 5-3a: averages of clear, straight-grained
 * wood at 12 % moisture. Density follows from its specific gravity G as 1000 · G · 1.12 kg/m³. Acrylic: the minima that the
 * Unified Facilities Guide Specification for acrylic glazing demands (table 3-1). Birch plywood: a manufacturer's data sheet
 * for 4 mm of three plies, which gives a density and no strength.
 */

import { wordsOf } from '../spec/material-words.ts';

/** Strengths in MPa, density in kg/m³. */
export interface Material {
  readonly name: string;
  readonly kind: 'wood' | 'plastic' | 'plywood';
  readonly density?: number;
  /** Modulus of rupture in bending; for wood, of a piece whose grain runs along it. */
  readonly bending?: number;
  /** In tension, the same in every direction. */
  readonly tension?: number;
  /** Wood in tension across the grain. */
  readonly tensionAcross?: number;
  /** For wood, along the grain. */
  readonly shear?: number;
  readonly source: string;
}

/** A material and the words it is known by: all of `must`, and any of `may`, in any order. */
interface Entry {
  readonly must: readonly (readonly string[])[];
  readonly may: readonly string[];
  readonly material: Material;
}

const wood = (
  name: string,
  [gravity, bending, shear, tensionAcross]: readonly [number, number, number, number?],
  must: readonly string[],
  may = '',
): Entry => ({
  must: must.map(wordsOf),
  may: [...wordsOf(may), 'american', 'wood', 'hardwood', 'timber', 'lumber'],
  material: {
    name,
    kind: 'wood',
    density: Math.round(1000 * gravity * 1.12),
    bending,
    shear,
    ...(tensionAcross === undefined ? {} : { tensionAcross }),
    source: 'Wood Handbook FPL-GTR-190, table 5-3a',
  },
});

/**
 * "Maple", "oak" and "poplar" alone are taken as the one kind the table above has of them; `name` says so. "Birch" alone is
 * not in the list: two birches are, with different figures, and it most often means plywood.
 */
const entries: readonly Entry[] = [
  wood('American basswood', [0.37, 60, 6.8, 2.4], ['basswood']),
  wood('paper birch', [0.55, 85, 8.3], ['paper birch']),
  wood('yellow birch', [0.62, 114, 13, 6.3], ['yellow birch']),
  wood('sugar maple', [0.63, 109, 16.1], ['maple'], 'sugar hard rock'),
  wood('black walnut', [0.55, 101, 9.4, 4.8], ['walnut'], 'black eastern'),
  wood('black cherry', [0.5, 85, 11.7, 3.9], ['cherry'], 'black'),
  wood('yellow-poplar', [0.42, 70, 8.2, 3.7], ['poplar', 'tulipwood'], 'yellow tulip'),
  wood('white oak', [0.68, 105, 13.8, 5.5], ['oak'], 'white'),
  {
    must: [
      ['birch', 'plywood'],
      ['birch', 'ply'],
    ],
    may: ['baltic', 'finnish', 'laser', 'grade', 'interior', 'exterior'],
    material: { name: 'birch plywood', kind: 'plywood', density: 660, source: "a manufacturer's data sheet" },
  },
  {
    must: [['acrylic'], ['pmma']],
    may: wordsOf(
      'acrylic pmma cast extruded transparent translucent opaque frosted matt matte gloss glossy satin tinted coloured ' +
        'colored fluorescent neon black white grey gray red orange yellow green blue pink purple plastic',
    ),
    material: {
      name: 'acrylic',
      kind: 'plastic',
      density: 1190,
      bending: 97,
      tension: 62,
      shear: 55,
      source: 'UFGS for acrylic glazing, table 3-1, minima',
    },
  },
];

/** Of the materials of which something is known here. */
export const materialNames: readonly string[] = entries.map(({ material }) => material.name);

/** What may be said of any stock without making it another material. */
const harmless = new Set(
  wordsOf(
    'a an the of in from solid clear natural untreated unfinished bare planed sanded smooth oiled waxed thin thick sheet ' +
      'sheets board boards panel panels offcut offcuts scrap piece pieces strip strips mm inch',
  ),
);

/**
 * The material a person names, as in "walnut", "Black walnut, 3 mm" or "cast acrylic sheet". Every word must be accounted
 * for: "walnut veneered plywood", "red oak" and "walnut-stained MDF" are something else than walnut and oak, and an unknown
 * word may make it so. `undefined` where nothing is known for certain.
 */
export function materialOf(name: string): Material | undefined {
  const words = wordsOf(name).filter((word) => !harmless.has(word) && !/^\d+(mm|in)?$/.test(word));
  return entries.find(({ must, may }) =>
    must.some(
      (needed) =>
        needed.every((word) => words.includes(word)) &&
        words.every((word) => needed.includes(word) || may.includes(word)),
    ),
  )?.material;
}
