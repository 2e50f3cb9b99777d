/** The fonts that weights are set by, twice: a script, a slab, a sans, a serif, a rounded and a light one each. */

import type { FontFace } from '../../src/text/font-face.ts';
import { bundledFace, packagedFace } from '../fonts/faces.ts';

export interface CalibrationFace {
  readonly name: string;
  readonly kind: 'script' | 'slab' | 'sans' | 'serif' | 'rounded' | 'light';
  /** Kept back when the weights were set for the first time; by now they are set by all, each font tried without itself. */
  readonly heldOut: boolean;
  readonly open: () => Promise<FontFace>;
}

/** Never used for the weights, nor looked at while the figures were chosen: what a font that nobody thought of comes to. */
export const unseenFaces: readonly CalibrationFace[] = [
  { name: 'Kaushan Script', kind: 'script', heldOut: true, open: () => packagedFace('kaushan-script') },
  { name: 'Zilla Slab 600', kind: 'slab', heldOut: true, open: () => packagedFace('zilla-slab', 'latin', 600) },
];

export const calibrationFaces: readonly CalibrationFace[] = [
  { name: 'Pacifico', kind: 'script', heldOut: false, open: () => bundledFace('Pacifico') },
  { name: 'Alfa Slab One', kind: 'slab', heldOut: false, open: () => bundledFace('Alfa Slab One') },
  { name: 'Roboto 400', kind: 'sans', heldOut: false, open: () => packagedFace('roboto') },
  { name: 'Source Serif 4 400', kind: 'serif', heldOut: false, open: () => packagedFace('source-serif-4') },
  { name: 'Nunito 800', kind: 'rounded', heldOut: false, open: () => bundledFace('Nunito', 800) },
  { name: 'Josefin Sans 300', kind: 'light', heldOut: false, open: () => packagedFace('josefin-sans', 'latin', 300) },
  { name: 'Lobster', kind: 'script', heldOut: true, open: () => packagedFace('lobster') },
  { name: 'Roboto Slab 600', kind: 'slab', heldOut: true, open: () => packagedFace('roboto-slab', 'latin', 600) },
  { name: 'Source Sans 3 600', kind: 'sans', heldOut: true, open: () => packagedFace('source-sans-3', 'latin', 600) },
  {
    name: 'Frank Ruhl Libre 500',
    kind: 'serif',
    heldOut: true,
    open: () => packagedFace('frank-ruhl-libre', 'latin', 500),
  },
  { name: 'Quicksand 700', kind: 'rounded', heldOut: true, open: () => packagedFace('quicksand', 'latin', 700) },
  { name: 'Quicksand 300', kind: 'light', heldOut: true, open: () => packagedFace('quicksand', 'latin', 300) },
];
