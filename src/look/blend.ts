/** Colours laid over one another, for papers that know no transparency. */

import { channels } from './channels.ts';

/** `over` covers the share `opacity` of what is under it. Colours as #rrggbb. */
export function blend(under: string, over: string, opacity: number): string {
  const [below, above] = [channels(under), channels(over)];
  const mixed = below.map((value, i) => Math.round(value + (above[i]! - value) * opacity));
  return `#${mixed.map((value) => value.toString(16).padStart(2, '0')).join('')}`;
}
