/** The look of one stock: that of its material, with the changes its maker gives. */

import { lookOf } from './looks.ts';
import type { Look } from './looks.ts';
import { blend } from './blend.ts';

/** Thickness drawn for a stock that states none, in mm. */
export const usualThicknessMm = 3;

/** As written in a spec; colours as #rrggbb. */
export interface StockLook {
  readonly color?: string;
  readonly grain?: 'left-right' | 'up-down' | 'none';
  readonly engraving?: 'dark' | 'light';
}

interface StockAppearance {
  readonly material?: string;
  readonly look?: StockLook;
}

/** The changes that a stock makes to the look of its material. */
export function ownLook({ look }: StockAppearance): Partial<Look> {
  const { color, grain, engraving } = look ?? {};
  const face = color?.toLowerCase();
  return {
    ...(face === undefined ? {} : withFace(face)),
    ...(engraving === 'dark' ? { burn: '#2e1c10', burnStrength: 0.82 } : {}),
    ...(engraving === 'light' ? { burn: '#ffffff', burnStrength: 0.85 } : {}),
    ...(grain === 'none' ? { grain: 'transparent' } : {}),
  };
}

/**
 * The edge and the char are darker than the face, and the top lighter, by the same shares as in the usual materials.
 */
function withFace(face: string): Partial<Look> {
  return {
    wood: face,
    woodTop: blend(face, '#ffffff', 0.15),
    edgeFace: blend(face, '#000000', 0.5),
    char: blend(face, '#000000', 0.6),
    lip: blend(face, '#ffffff', 0.55),
    grain: blend(face, '#000000', 0.3),
  };
}

/** The complete look; without grain if the material has none and its maker gives none. */
export function lookOfStock(stock: StockAppearance): Look {
  const usual = lookOf(stock.material);
  const { grain, ...own } = ownLook(stock);
  const { grain: usualGrain, ...plain } = usual;
  const asked = stock.look?.grain;
  const has = asked === undefined ? usualGrain !== undefined : asked !== 'none';
  const lines = stock.look?.color === undefined ? (usualGrain ?? blend(usual.wood, '#000000', 0.3)) : grain;
  return { ...plain, ...own, ...(has && lines !== undefined ? { grain: lines } : {}) };
}
