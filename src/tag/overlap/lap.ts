/** How deep letters may lap where a text has `overlap`. */

import type { TextGenerator } from '../../spec/model.ts';

/** The lap of `overlap: auto`, in widths of a joint: 0.6 mm of 1.5 mm, by which most faces join (our own judgement). */
const usualLap = 0.4;

/** In mm; `undefined` for letters that keep their places. `web`: the least width of a joint. */
export function lapMm({ overlap }: TextGenerator, web: number): number | undefined {
  return overlap === 'auto' ? usualLap * web : overlap;
}
