/** Generates the preview's style sheet of material looks. */

import { looks, tints } from '../look/looks.ts';
import type { Look } from '../look/looks.ts';
import { styleNames } from '../look/style-names.ts';

export function lookStyles(): string {
  return [
    '/* Generated from src/look/looks.ts. */',
    ruleOf(':root', looks.light),
    ...Object.entries(looks).map(([name, look]) => ruleOf(`.look-${name}`, { grain: 'transparent', ...look })),
    ...Object.entries(tints).map(([name, tint]) => ruleOf(`.tint-${name}`, tint)),
    '',
  ].join('\n');
}

function ruleOf(selector: string, look: Partial<Look>): string {
  const lines = Object.entries(look).map(([key, value]) => `  ${styleNames[key as keyof Look]}: ${value};`);
  return `${selector} {\n${lines.join('\n')}\n}`;
}
