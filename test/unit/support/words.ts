/** Lettering as regions, for tests that judge shapes as people really cut them. */

import { flatten } from '../../../src/geometry/flatten.ts';
import { normalise } from '../../../src/geometry/clipper.ts';
import { boundsOf } from '../../../src/geometry/measure.ts';
import type { Region } from '../../../src/geometry/types.ts';
import type { FontFace } from '../../../src/text/font-face.ts';
import { layoutText } from '../../../src/text/text-layout.ts';
import { packagedFace } from '../../fonts/faces.ts';

/** A word in a font of a test package, `width` mm wide, all its letters united. */
export async function word(slug: string, text: string, width: number, tolerance = 0.002): Promise<Region> {
  return wordIn(await packagedFace(slug), text, width, tolerance);
}

/** The same in any font. */
export function wordIn(face: FontFace, text: string, width: number, tolerance: number): Region {
  const { curves } = layoutText(face, { text, align: 'left' });
  const bounds = boundsOf(flatten(curves))!;
  const scale = width / (bounds.maxX - bounds.minX);
  const affine = { a: scale, b: 0, c: 0, d: scale, e: 0, f: 0 };
  return normalise(flatten(curves, { affine, tolerance }));
}
