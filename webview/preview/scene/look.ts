/** How a material looks when finished, as classes of the page; the style sheet of looks has their colours. */

import { lookNames, looks, tints } from '../../../src/look/looks.ts';
import type { Look } from '../../../src/look/looks.ts';
import { lookOfStock } from '../../../src/look/stock-look.ts';
import { styleNames } from '../../../src/look/style-names.ts';
import type { Scene } from '../../../src/protocol/preview.ts';

/** Classes for the page. */
export function lookOf(material: string | undefined): string[] {
  const { look, tint } = lookNames(material);
  return [`look-${look}`, ...(tint === undefined ? [] : [`tint-${tint}`])];
}

export const allLooks: readonly string[] = [
  ...Object.keys(looks).map((look) => `look-${look}`),
  ...Object.keys(tints).map((tint) => `tint-${tint}`),
];

/** What a maker says of the stock's look counts before the classes. */
export function showLook({ material, look }: Pick<Scene, 'material' | 'look'>): void {
  const chosen = lookOf(material);
  for (const name of allLooks) document.body.classList.toggle(name, chosen.includes(name));
  const own = look ? lookOfStock({ ...(material === undefined ? {} : { material }), look }) : undefined;
  for (const [key, name] of Object.entries(styleNames)) {
    const value = own?.[key as keyof Look];
    if (own === undefined) document.body.style.removeProperty(name);
    else document.body.style.setProperty(name, String(value ?? 'transparent'));
  }
}
