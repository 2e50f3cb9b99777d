/** Four scripts and two bold faces. */

import type { FontFace } from '../../src/text/font-face.ts';
import { bundledFace, packagedFace } from '../fonts/faces.ts';

export interface NameFace {
  readonly name: string;
  readonly open: () => Promise<FontFace>;
}

export const nameFaces: readonly NameFace[] = [
  { name: 'Pacifico', open: () => bundledFace('Pacifico') },
  { name: 'Great Vibes', open: () => bundledFace('Great Vibes') },
  { name: 'Dancing Script 700', open: () => packagedFace('dancing-script', 'latin', 700) },
  { name: 'Lobster', open: () => packagedFace('lobster') },
  { name: 'Alfa Slab One', open: () => bundledFace('Alfa Slab One') },
  { name: 'Nunito 800', open: () => bundledFace('Nunito', 800) },
];
