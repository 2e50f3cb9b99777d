/** Parts that a half turn leaves as they are lie upright: whoever unloads the sheet reads them at once. */

import type { Turn } from './orientation.ts';
import type { PlacedPart } from './partial-layout.ts';
import type { NestPart } from './shapes.ts';

/**
 * Turns upright every part whose outline is the same upside down. `quarters`: turn of the sheet that was filled.
 */
export function upright(laid: readonly PlacedPart[], parts: readonly NestPart[], quarters: 0 | 1): PlacedPart[] {
  return laid.map((each) => {
    const shape = parts[each.part]!.shape!;
    if ((each.orientation.turn - quarters + 4) % 4 < 2 || !shape.isAlikeUpsideDown) return each;
    return { ...each, orientation: shape.orientation(((each.orientation.turn + 2) % 4) as Turn) };
  });
}
