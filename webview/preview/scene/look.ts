/** How a material looks when finished, as classes of the page; the style sheet of looks has their colours. */

import { lookNames, looks, tints } from '../../../src/look/looks.ts';

/** Classes for the page. */
export function lookOf(material: string | undefined): string[] {
  const { look, tint } = lookNames(material);
  return [`look-${look}`, ...(tint === undefined ? [] : [`tint-${tint}`])];
}

export const allLooks: readonly string[] = [
  ...Object.keys(looks).map((look) => `look-${look}`),
  ...Object.keys(tints).map((tint) => `tint-${tint}`),
];

export function showLook(material: string | undefined): void {
  const chosen = lookOf(material);
  for (const name of allLooks) document.body.classList.toggle(name, chosen.includes(name));
}
