/** Lettering whose size `fit` chose: what of the size asked for is left, and what bridges leave of letters. */

import { oncePer } from '../../core/once-per.ts';
import { samePath } from '../../core/values.ts';
import { intersection } from '../../geometry/clipper.ts';
import { area } from '../../geometry/measure.ts';
import type { Region } from '../../geometry/types.ts';
import type { Area, Piece } from '../../tag/tag.ts';
import type { Letter, Lettering } from '../../tag/lettering/letters.ts';

/** The area that lettering was fitted into, by itself or as a line of several; `undefined` if its size is its own. */
export function fittedInto({ path }: Lettering, { marks, sources }: Piece): Area | undefined {
  const found = [...marks, ...sources].find(
    ({ area: into, lettering = [] }) => into?.room && lettering.some((each) => samePath(each.path, path)),
  );
  return found?.area;
}

/** The letter that bridges take most of, and the share that they take. */
export interface Bridged {
  readonly letter: Letter;
  readonly share: number;
  /** The share that they take of each letter. */
  readonly shares: readonly number[];
}

/** Of letters cut through a piece; `undefined` if bridges cross none. */
export function mostBridged(lettering: Lettering, { sources }: Piece): Bridged | undefined {
  const source = sources.find((each) => each.use === 'cut' && each.lettering?.includes(lettering));
  if (!source?.shape.modifiers.bridges || lettering.grow < 0) return undefined;
  return bridgedMost(lettering)(source.region);
}

const bridgedMost = oncePer(({ letters }: Lettering) =>
  oncePer((cut: Region): Bridged | undefined => {
    const shares = letters.map(({ region }) => 1 - area(intersection(region, cut)) / area(region));
    const share = Math.max(0, ...shares);
    return share > 0 ? { letter: letters[shares.indexOf(share)]!, share, shares } : undefined;
  }),
);
