/** Forces as people write them: `42 N`, `42`, and the weight of what hangs: `4.3 kg`, `950 g`, `9 lb`, `12 oz`. */

import { clip } from '../../core/length.ts';

/** Standard gravity (exact: 3rd General Conference on Weights and Measures, 1901) and the pound (exact: 1959), in N. */
const gravity = 9.80665;
const pound = 0.45359237 * gravity;
const newtonsPer = { N: 1, kN: 1000, kg: gravity, g: gravity / 1000, lb: pound, oz: pound / 16 } as const;

/** Nothing cut for a tag bears more, in N; a larger figure is a typing mistake. */
const most = 10_000;

const pattern = /^(\d+(?:\.\d+)?|\.\d+)\s*(N|kN|kg|g|lb|oz)?$/;

export type ForceResult = { readonly newtons: number } | { readonly problem: string };

/** The force in N, or a sentence that says what is wrong with it. A bare number is in N. */
export function parseForce(written: number | string): ForceResult {
  const match = pattern.exec(String(written).trim());
  const quotedText = `“${clip(String(written))}”`;
  if (!match)
    return { problem: `${quotedText} is not a pull. Write newtons, such as 42 N, or what hung on it, such as 4.3 kg.` };
  const [, figure, unit = 'N'] = match;
  const newtons = Number(figure) * newtonsPer[unit as keyof typeof newtonsPer];
  if (newtons === 0) return { problem: `${quotedText} means that nothing pulled. Write the pull at which it broke.` };
  return newtons > most ? { problem: `${quotedText} is more than a ton of pull; check the unit.` } : { newtons };
}
