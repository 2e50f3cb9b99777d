/** Blends colours, for files without transparency. */

import { channels } from './channels.ts';

/** Covers `under` with `over` at an opacity from 0 to 1. Colours as #rrggbb. */
export function blend(under: string, over: string, opacity: number): string {
  const [below, above] = [channels(under), channels(over)];
  const mixed = below.map((value, i) => Math.round(value + (above[i]! - value) * opacity));
  return `#${mixed.map((value) => value.toString(16).padStart(2, '0')).join('')}`;
}
