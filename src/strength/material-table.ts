/** The materials that tags are cut from. Every figure names its source, and whether that was seen. */

import { wordsOf } from '../spec/model/material-words.ts';
import type { SourcedValue, Material, Strength, Strengths } from './material.ts';
import { birchPlywood } from './plywood-table.ts';

/** A material and the words that name it: all words of any set in `must`, and any of `may`, in any order. */
export interface MaterialEntry {
  readonly must: readonly (readonly string[])[];
  readonly may: readonly string[];
  readonly material: Material;
}

const entry = (must: readonly string[], may: string, material: Material): MaterialEntry => ({
  must: must.map(wordsOf),
  may: wordsOf(may),
  material,
});

const seen = (value: number, source: string): SourcedValue => ({ value, source, known: 'seen' });
const recalled = (value: number, source: string): SourcedValue => ({ value, source, known: 'from memory' });
const judged = (value: number, source: string): SourcedValue => ({ value, source, known: 'our own judgement' });
const reached = (figure: SourcedValue, share = 1): Strength => ({ ...figure, share });

/** Strengths of a sheet that is equally strong in both directions. */
function evenly(tension: Strength, shear = half(tension)): Strengths {
  return { along: tension, across: tension, shear };
}

/** Shear strength where none is published: without grain, at least half of the tension (Tresca's criterion). */
function half(tension: Strength): Strength {
  return { ...tension, value: tension.value / 2, source: `${tension.source}, half of the tension` };
}

/** Five pieces in a hundred lie further than this many standard deviations below the mean (normal distribution). */
const fifthPercentile = 1.645;
const reachedBy95 = (variation: number): number => 1 - fifthPercentile * variation;

/**
 * The share of the published mean that 95 of 100 pieces of clear wood reach. Coefficients of variation by the Wood Handbook,
 * table 5-6 (from memory): 16 % for the modulus of rupture, 14 % for shear along the grain. Its 25 % belongs to tension *along*
 * the grain and to impact bending; for tension *across* it the table has no row. There the widest of its strengths is taken,
 * the 28 % of compression across the grain: our own judgement.
 */
export const woodScatter = {
  bending: reachedBy95(0.16),
  shear: reachedBy95(0.14),
  tensionAcross: reachedBy95(0.28),
} as const;

const woodTable = 'Wood Handbook FPL-GTR-190 (2010), table 5-3a';

/**
 * Share of the strength of wood that is left under a load of ten years: 18.3 + 108.4·t^−0.0464 % with t in s (the
 * “Madison curve”, Wood 1951, as given in Forests 12(9):1148, 2021, seen).
 */
export function loadDuration(seconds: number): number {
  return Math.min(1, (18.3 + 108.4 * seconds ** -0.0464) / 100);
}
export const tenYearsSeconds = 10 * 365.25 * 24 * 3600;

const woodLasting = {
  is: 'share',
  ...seen(loadDuration(tenYearsSeconds), 'the “Madison curve” (Wood 1951)'),
} as const;

/**
 * Factors on the stress beside a hole. Wood is stiff along its grain, which concentrates the stress beside a hole
 * pulled that way: 2.16 times the bearing stress in the stiffest laminate of Crews, Hong and Raju (NASA TP-1862, 1981,
 * abstract seen) where a sheet without grain has 0.87. Pulled across, it is less than without grain; no credit is taken
 * for that.
 */
const woodHole = {
  along: seen(2.16 / 0.87, 'NASA TP-1862 (1981)'),
  across: judged(1, 'no more than without grain'),
} as const;

/**
 * Means of clear, straight-grained wood at 12 % moisture (seen). Density follows from its specific gravity G as 1000 ·
 * G · 1.12 kg/m³. Few figures are published for wood in tension along the grain; its modulus of rupture is a low
 * estimate of it (Wood Handbook, chapter 5, seen). Shear is along the grain, where wood is weaker, so it serves for
 * both directions.
 */
const wood = (
  name: string,
  [gravity, bending, shear, tensionAcross]: readonly [number, number, number, number?],
  must: readonly string[],
  may = '',
): MaterialEntry => {
  const strengths: Strengths = {
    along: reached(seen(bending, woodTable), woodScatter.bending),
    shear: reached(seen(shear, woodTable), woodScatter.shear),
    ...(tensionAcross === undefined
      ? {}
      : { across: reached(seen(tensionAcross, woodTable), woodScatter.tensionAcross) }),
  };
  return entry(must, `${may} american wood hardwood timber lumber`, {
    name,
    kind: 'wood',
    density: seen(Math.round(1000 * gravity * 1.12), woodTable),
    strengths: () => strengths,
    holeGrain: woodHole,
    lasting: woodLasting,
  });
};

/**
 * “Maple”, “oak” and “poplar” alone are taken as the one kind in the table; `name` says which. “Birch” alone is not in
 * the list: two birches are, with different figures, and it most often means plywood.
 */
const woods: readonly MaterialEntry[] = [
  wood('American basswood', [0.37, 60, 6.8, 2.4], ['basswood']),
  wood('paper birch', [0.55, 85, 8.3], ['paper birch']),
  wood('yellow birch', [0.62, 114, 13, 6.3], ['yellow birch']),
  wood('sugar maple', [0.63, 109, 16.1], ['maple'], 'sugar hard rock'),
  wood('black walnut', [0.55, 101, 9.4, 4.8], ['walnut'], 'black eastern'),
  wood('black cherry', [0.5, 85, 11.7, 3.9], ['cherry'], 'black'),
  wood('yellow-poplar', [0.42, 70, 8.2, 3.7], ['poplar', 'tulipwood'], 'yellow tulip'),
  wood('white oak', [0.68, 105, 13.8, 5.5], ['oak'], 'white'),
];

const eurocode = 'EN 1995-1-1, table 3.1, permanent load indoors';

/**
 * Cross-laid veneers shear easily, which concentrates the stress beside a hole: (1 + √(2·(√(E₁/E₂) − ν) + E₁/G))/3
 * times that of a sheet without grain (Lekhnitskii, Anisotropic Plates, for an empty hole, from memory). Pulled along
 * the grain of the faces E₁ is 11.2, E₂ 6.3 and G 0.65 GPa, ν 0.06 (birch plywood of three plies, from memory), pulled
 * across it the other way round.
 */
const lekhnitskii = 'Lekhnitskii, Anisotropic Plates';
const plywoodHole = { along: recalled(1.8, lekhnitskii), across: recalled(1.45, lekhnitskii) } as const;

const panelStandard = 'EN 12369-1';

const plies = (trees: readonly string[]): string[] => trees.flatMap((tree) => [`${tree} plywood`, `${tree} ply`]);
const plyWords = 'baltic finnish laser grade interior exterior';

const panels: readonly MaterialEntry[] = [
  entry(plies(['birch']), plyWords, {
    name: 'birch plywood',
    kind: 'plywood',
    density: seen(660, "a manufacturer's data sheet for 4 mm of three plies"),
    strengths: birchPlywood,
    holeGrain: plywoodHole,
    lasting: { is: 'share', ...recalled(0.6, eurocode) },
  }),
  entry(plies(['poplar']), plyWords, {
    name: 'poplar plywood',
    kind: 'plywood',
    density: seen(500, "the middle of a seller's 450 to 550"),
  }),
  entry(plies(['basswood', 'lime', 'linden']), plyWords, {
    name: 'basswood plywood',
    kind: 'plywood',
    density: seen(500, 'a table of densities: linden 500, plywood as its veneer'),
  }),
  entry(['bamboo'], 'plywood ply laminated wood', {
    name: 'bamboo',
    kind: 'plywood',
    density: judged(700, 'within the 650 to 850 of a guide to bamboo plywood'),
  }),
  entry(['mdf', 'medium density fibreboard', 'medium density fiberboard'], 'laser grade', {
    name: 'MDF',
    kind: 'fibreboard',
    density: seen(750, 'a materials data base, after the Wood Handbook (1999)'),
    // The data base gives 18 MPa as typical, which makes 13 plausible as the value that 95 of 100 reach.
    strengths: (thicknessMm) =>
      thicknessMm > 12
        ? undefined
        : evenly(reached(recalled(13, panelStandard)), reached(recalled(6.5, panelStandard))),
    lasting: { is: 'share', ...recalled(0.2, eurocode) },
  }),
  entry(['hdf', 'high density fibreboard', 'high density fiberboard'], 'laser grade', {
    name: 'HDF',
    kind: 'fibreboard',
    density: seen(880, "a manufacturer's data sheet for 2 to 3.6 mm"),
  }),
  entry(['tempered hardboard'], '', hardboard('tempered hardboard', 3000)),
  entry(['hardboard'], 'standard service', hardboard('hardboard', 1500)),
];

/** The least mean tension of a sheet of a class of ANSI A135.4 (psi); hardboard alone is taken as the weakest sold. */
function hardboard(name: string, psi: number): Material {
  const source = 'ANSI A135.4, by its class, as a mill quotes it';
  // Variation of pieces about the mean of their sheet: 15 %, our own judgement.
  const tension = reached(seen(Math.round(psi * 0.0689476) / 10, source), reachedBy95(0.15));
  return {
    name,
    kind: 'fibreboard',
    density: recalled(900, panelStandard),
    strengths: () => evenly(tension),
    lasting: { is: 'share', ...recalled(0.3, eurocode) },
  };
}

const acrylicWords =
  'acrylic pmma transparent translucent opaque frosted matt matte gloss glossy satin tinted coloured colored fluorescent ' +
  'neon black white grey gray red orange yellow green blue pink purple plastic';

/**
 * Short loads: minima that the Unified Facilities Guide Specification for acrylic glazing requires (table 3-1, seen);
 * extruded sheet has 69 MPa as a typical value (a distributor's table, seen), so the minimum is taken for both.
 */
const glazing = 'UFGS for acrylic glazing, table 3-1, minima';
const acrylic = (name: string, limit: SourcedValue): Material => ({
  name,
  kind: 'plastic',
  density: seen(1190, glazing),
  strengths: () => evenly(reached(seen(62, glazing)), reached(seen(55, glazing))),
  lasting: { is: 'limit', ...limit },
});

/** Design limits against crazing under continuous load: 1500 and 750 psi. */
const crazing = 'a distributor’s design page, limit against crazing';
const castLimit = seen(10.3, crazing);
const extrudedLimit = seen(5.2, crazing);

const plastics: readonly MaterialEntry[] = [
  entry(['cast acrylic', 'cast pmma'], `cast ${acrylicWords}`, acrylic('cast acrylic', castLimit)),
  entry(['extruded acrylic', 'extruded pmma'], `extruded ${acrylicWords}`, acrylic('extruded acrylic', extrudedLimit)),
  entry(['acrylic', 'pmma'], acrylicWords, {
    ...acrylic('acrylic', extrudedLimit),
    assumed: 'Taken as extruded acrylic: cast bears twice as much when left hanging, but the name does not say “cast”.',
  }),
];

const others: readonly MaterialEntry[] = [
  entry(['leather'], 'vegetable veg tanned tan real genuine full top grain cow cowhide natural brown black', {
    name: 'leather',
    kind: 'leather',
    density: seen(700, "the middle of a tannery's 600 to 800"),
    strengths: () =>
      evenly(reached(seen(8, 'the least of the 8 to 25 MPa that a dictionary of leather gives for cow'))),
  }),
  entry(['greyboard', 'grayboard', 'grey board', 'gray board'], 'card cardboard', {
    name: 'greyboard',
    kind: 'other',
    density: seen(645, "a packer's table: 1290 g/m² at 2 mm"),
  }),
  entry(['card', 'cardstock', 'card stock'], 'white black cream kraft coloured colored', {
    name: 'card',
    kind: 'other',
    density: judged(750, 'between greyboard and office paper'),
  }),
  entry(['cork'], 'agglomerated natural', {
    name: 'cork',
    kind: 'other',
    density: judged(250, 'between the 115 of insulation and the 400 of flooring'),
  }),
  entry(['wool felt'], 'pure merino pressed craft', {
    name: 'wool felt',
    kind: 'other',
    density: seen(180, 'SAE J314, grades F-10 to F-13, as a mill quotes it'),
  }),
];

/** The first entry that matches a name counts. */
export const entries: readonly MaterialEntry[] = [...woods, ...panels, ...plastics, ...others];
