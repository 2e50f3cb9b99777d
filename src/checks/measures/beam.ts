/** Widths of the line that the beam draws. */

import type { Stock } from '../../spec/model/workshop-model.ts';

/** Finest width that a beam draws, in mm. Rule of thumb, no source. */
export const finestMm = 0.2;

/** Width of an engraved or scored line in mm. */
export function beamWidthOf({ kerf, kerfs }: Stock): number {
  return Math.max(kerfs && kerfs.engrave > 0 ? kerfs.engrave : kerf, finestMm);
}
