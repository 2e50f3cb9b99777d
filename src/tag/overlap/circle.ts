/** Maps text on a circle to a straight line and back: a shift along the line is a rotation about the centre. */

import type { Point, Region } from '../../geometry/types.ts';

export interface Bend {
  straight(region: Region): Region;
  bent(region: Region): Region;
}

/** Edges longer than this, in mm, are divided where a line becomes an arc. */
const longestEdgeMm = 0.5;

/** `radius` of the first baseline, in em. Lengths along the line are those on that circle. */
export function onCircle(
  { at, radius }: { readonly at: 'top' | 'bottom'; readonly radius: number },
  mmPerEm: number,
): Bend {
  const outwards = at === 'top' ? 1 : -1;
  const mm = radius * mmPerEm;
  return {
    // At the top the angle runs clockwise from straight above, at the bottom the other way from straight below.
    straight: (region) =>
      mapped(region, ({ x, y }) => {
        const angle = Math.atan2(x, outwards * y);
        return { x: angle * mm, y: outwards * (Math.hypot(x, y) - mm) };
      }),
    bent: (region) =>
      mapped(divided(region), ({ x, y }) => {
        const distance = mm + outwards * y;
        const angle = x / mm;
        return { x: distance * Math.sin(angle), y: outwards * distance * Math.cos(angle) };
      }),
  };
}

function mapped(region: Region, map: (point: Point) => Point): Region {
  return region.map((ring) => ring.map(map));
}

function divided(region: Region): Region {
  return region.map((ring) =>
    ring.flatMap((from, index) => {
      const to = ring[(index + 1) % ring.length]!;
      const count = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / longestEdgeMm));
      return Array.from({ length: count }, (_, k) => ({
        x: from.x + (k / count) * (to.x - from.x),
        y: from.y + (k / count) * (to.y - from.y),
      }));
    }),
  );
}
