/**
 * The fonts that come with Tagwright, all under the SIL Open Font License. Each is taken from a package at build time
 * and copied, with its licence, beside the program; nothing else of the packages is shipped.
 *
 * They are complete files. The subsets made for web pages are smaller, but a name such as "Małgorzata" is split between
 * two of them, and the letters of a script no longer join at the split.
 */

export interface BundledFont {
  readonly family: string;
  /** Package with the files at build time: `node_modules/<package>/`. */
  readonly package: string;
  readonly licence: string;
  /** File name of the licence when shipped beside the fonts. */
  readonly licenceFile: string;
  readonly faces: readonly BundledFace[];
}

export interface BundledFace {
  readonly weight: number;
  readonly italic: boolean;
  /** Path in the package; it is shipped under its last part, `bundledFileName`. */
  readonly file: string;
}

export const bundledFonts: readonly BundledFont[] = [
  // Heavy slab letters for initials and short words, strong enough without thickening.
  font('Alfa Slab One', 'alfa-slab-one', [face(400, '400Regular/AlfaSlabOne_400Regular.ttf')]),
  // A thin pen script: pretty, and weak wherever the pen lifts.
  font('Great Vibes', 'great-vibes', [face(400, '400Regular/GreatVibes_400Regular.ttf')]),
  // A friendly sans whose strokes are strong enough to cut.
  font('Nunito', 'nunito', [
    face(600, '600SemiBold/Nunito_600SemiBold.ttf'),
    face(700, '700Bold/Nunito_700Bold.ttf'),
    face(800, '800ExtraBold/Nunito_800ExtraBold.ttf'),
  ]),
  // A round brush script whose letters join.
  font('Pacifico', 'pacifico', [face(400, '400Regular/Pacifico_400Regular.ttf')]),
];

export function bundledFileName({ file }: BundledFace): string {
  return file.slice(file.lastIndexOf('/') + 1);
}

function font(family: string, slug: string, faces: readonly BundledFace[]): BundledFont {
  return {
    family,
    package: `@expo-google-fonts/${slug}`,
    licence: 'LICENSE_FONT',
    licenceFile: `${slug}-OFL.txt`,
    faces,
  };
}

function face(weight: number, file: string): BundledFace {
  return { weight, italic: false, file };
}
