/** The largest overlap of letters in a text with `overlap`. */

import type { TextGenerator } from '../../spec/model/shape-model.ts';

/** The overlap for `overlap: auto`, in widths of a joint: 0.6 mm for 1.5 mm joins most faces (our own judgement). */
const usualLap = 0.4;

/** In mm; `undefined` for letters that keep their places. `web` is the least width of a joint. */
export function lapMm({ overlap }: TextGenerator, web: number): number | undefined {
  return overlap === 'auto' ? usualLap * web : overlap;
}
