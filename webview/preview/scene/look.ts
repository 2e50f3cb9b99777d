/** Look of a finished material, as CSS classes; the style sheet of looks has their colours. */

import { lookNames, looks, tints } from '../../../src/look/looks.ts';
import type { Look } from '../../../src/look/looks.ts';
import { lookOfStock, usualThicknessMm } from '../../../src/look/stock-look.ts';
import { styleNames } from '../../../src/look/style-names.ts';
import type { Scene, SceneSheet } from '../../../src/protocol/scene.ts';

/** Classes for the page. */
export function lookOf(material: string | undefined): string[] {
  const { look, tint } = lookNames(material);
  return [`look-${look}`, ...(tint === undefined ? [] : [`tint-${tint}`])];
}

export const allLooks: readonly string[] = [
  ...Object.keys(looks).map((look) => `look-${look}`),
  ...Object.keys(tints).map((tint) => `tint-${tint}`),
];

/** A look that the stock states takes precedence over the classes. */
export function showLook({ material, look }: Pick<Scene, 'material' | 'look'>): void {
  const chosen = lookOf(material);
  for (const name of allLooks) document.body.classList.toggle(name, chosen.includes(name));
  const own = look ? lookOfStock({ ...(material === undefined ? {} : { material }), look }) : undefined;
  setLook(document.body, own);
}

/** Gives a piece of another stock that stock's look; `undefined` leaves it like the rest of the tag. */
export function showSheet(element: SVGElement, sheet: SceneSheet | undefined): void {
  setLook(element, sheet && lookOfStock(sheet));
  element.classList.toggle('own-stock', sheet !== undefined);
  element.classList.toggle('look-acrylic', sheet !== undefined && lookNames(sheet.material).look === 'acrylic');
  if (sheet) element.style.setProperty('--thickness', `${sheet.thickness ?? usualThicknessMm}`);
  else element.style.removeProperty('--thickness');
}

function setLook(element: HTMLElement | SVGElement, own: Look | undefined): void {
  for (const [key, name] of Object.entries(styleNames)) {
    const value = own?.[key as keyof Look];
    if (own === undefined) element.style.removeProperty(name);
    else element.style.setProperty(name, String(value ?? 'transparent'));
  }
}
