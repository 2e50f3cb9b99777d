/**
 * The fonts that come with Tagwright, all under the SIL Open Font License. Each is taken from a package at build time and
 * copied, with its licence, beside the program; nothing else of the packages is shipped.
 */

export interface BundledFont {
  readonly family: string;
  /** Where the files and the licence are at build time: `node_modules/<package>/files/<file>`, `node_modules/<package>/<licence>`. */
  readonly package: string;
  readonly licence: string;
  /** What the licence is called once it lies beside the fonts. */
  readonly licenceFile: string;
  readonly faces: readonly BundledFace[];
}

export interface BundledFace {
  readonly weight: number;
  readonly italic: boolean;
  /** Subsets of one face; a letter is taken from the first that has it. */
  readonly files: readonly string[];
}

export const bundledFonts: readonly BundledFont[] = [
  // Heavy slab letters: initials and short words that hold without any thickening.
  font('Alfa Slab One', 'alfa-slab-one', [400]),
  // A thin pen script: pretty, and weak wherever the pen lifts.
  font('Great Vibes', 'great-vibes', [400]),
  font('Nunito', 'nunito', [600, 800]),
  // A round brush script whose letters join.
  font('Pacifico', 'pacifico', [400]),
];

function font(family: string, slug: string, weights: readonly number[]): BundledFont {
  return {
    family,
    package: `@fontsource/${slug}`,
    licence: 'LICENSE',
    licenceFile: `${slug}-OFL.txt`,
    faces: weights.map((weight) => ({
      weight,
      italic: false,
      files: ['latin', 'latin-ext'].map((subset) => `${slug}-${subset}-${weight}-normal.woff`),
    })),
  };
}
