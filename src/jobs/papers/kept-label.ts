/** The label of a leftover worth keeping on the map: as large as it has room for, on up to three lines. */

import { difference } from '../../geometry/clipper.ts';
import { area, boxRing } from '../../geometry/measure.ts';
import { poleOf } from '../../geometry/pole.ts';
import type { Bounds, Region } from '../../geometry/types.ts';
import { captionWidth } from '../../export/page/page.ts';
import type { FontFace } from '../../text/font-face.ts';

export interface KeptLabel {
  readonly lines: readonly string[];
  /** Of its font, in mm. */
  readonly size: number;
  /** Of all lines; a line stands in its middle. */
  readonly box: Bounds;
}

/** In mm, the largest first. */
const sizes = [3, 2.5, 2.1, 1.8] as const;
/** Room all round, in mm. */
const roomMm = 1.2;
/** From one line to the next, in em. */
export const leadEm = 1.25;

/** `region`: on paper, in mm. `undefined` if it is empty. */
export function keptLabel(region: Region, id: number, face: FontFace): KeptLabel | undefined {
  const middle = poleOf(region, 0.5);
  if (!middle) return undefined;
  const ways = [[`keep: offcut ${id}`], ['keep:', `offcut ${id}`], ['keep:', 'offcut', String(id)]];
  const labels = sizes.flatMap((size) =>
    ways.map((lines): KeptLabel => {
      const half = Math.max(...lines.map((line) => captionWidth(face, line))) * (size / 2);
      const high = ((lines.length - 1) * leadEm + 1) * (size / 2);
      const box = { minX: middle.x - half, maxX: middle.x + half, minY: middle.y - high, maxY: middle.y + high };
      return { lines, size, box };
    }),
  );
  return labels.find(({ box }) => hasRoom(box, region)) ?? labels.at(-1);
}

function hasRoom({ minX, minY, maxX, maxY }: Bounds, region: Region): boolean {
  const wanted = { minX: minX - roomMm, minY: minY - roomMm, maxX: maxX + roomMm, maxY: maxY + roomMm };
  return area(difference([boxRing(wanted)], [region])) < 0.01;
}
