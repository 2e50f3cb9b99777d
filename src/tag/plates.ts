/** Shapes made from figures alone. All but `points` are centred on the origin. */

import { flatteningToleranceMm } from '../geometry/curves.ts';
import { normalise } from '../geometry/clipper.ts';
import type { Point, Region, Ring } from '../geometry/types.ts';
import type { Generator } from '../spec/model.ts';

type Plate = Extract<Generator, { kind: 'rectangle' | 'ellipse' | 'regular' | 'points' | 'arrow' }>;

export function makePlate(plate: Plate): Region {
  switch (plate.kind) {
    case 'rectangle':
      return [roundedRectangle(plate.width, plate.height, plate.radius)];
    case 'ellipse':
      return [ellipse(plate.width / 2, plate.height / 2)];
    case 'regular':
      return [regularPolygon(plate.sides, plate.across / 2)];
    case 'points':
      return normalise([plate.points]);
    case 'arrow':
      return [arrow(plate)];
  }
}

/**
 * Chords per full turn so that none strays more than `tolerance` from a circle of this radius: the sagitta of a chord is
 * R·(1 − cos π/n). A multiple of four, so that the extremes lie on the polygon and sizes are exact.
 */
export function chordsFor(radius: number, tolerance = flatteningToleranceMm): number {
  const chords = Math.PI / Math.acos(Math.max(1 - tolerance / radius, -1));
  return Math.max(8, 4 * Math.ceil(chords / 4));
}

function arc(centre: Point, rx: number, ry: number, from: number, to: number, steps: number): Point[] {
  return Array.from({ length: steps + 1 }, (_, index) => {
    const angle = from + ((to - from) * index) / steps;
    return { x: centre.x + rx * Math.cos(angle), y: centre.y + ry * Math.sin(angle) };
  });
}

export function ellipse(rx: number, ry: number, centre: Point = { x: 0, y: 0 }): Ring {
  const chords = chordsFor(Math.max(rx, ry));
  return arc(centre, rx, ry, 0, 2 * Math.PI, chords).slice(0, chords);
}

export function circle(centre: Point, radius: number): Ring {
  return ellipse(radius, radius, centre);
}

export function roundedRectangle(width: number, height: number, radius: number): Ring {
  const x = width / 2 - radius;
  const y = height / 2 - radius;
  const corners = [
    { x, y },
    { x: -x, y },
    { x: -x, y: -y },
    { x, y: -y },
  ];
  if (radius === 0) return corners;
  const steps = chordsFor(radius) / 4;
  const quarter = Math.PI / 2;
  const ring = corners.flatMap((corner, index) =>
    arc(corner, radius, radius, index * quarter, (index + 1) * quarter, steps),
  );
  // Where a side is all corner, the end of one arc is the start of the next.
  return ring.filter((point, index) => {
    const previous = ring[(index + ring.length - 1) % ring.length]!;
    return Math.hypot(point.x - previous.x, point.y - previous.y) > 1e-9;
  });
}

/** One corner at the top, as a sign or a star is drawn. */
function regularPolygon(sides: number, radius: number): Ring {
  return arc({ x: 0, y: 0 }, radius, radius, Math.PI / 2, (5 * Math.PI) / 2, sides).slice(0, sides);
}

/** Tip to the right, centred on the origin by its box. */
function arrow({ length, width, head, tipDegrees, tail, notch }: Extract<Plate, { kind: 'arrow' }>): Ring {
  const tip = length / 2;
  const shoulder = tip - head / 2 / Math.tan((tipDegrees * Math.PI) / 360);
  const end = -length / 2;
  const half = width / 2;
  const upper: Point[] = [{ x: shoulder, y: head / 2 }];
  if (head > width) upper.push({ x: shoulder, y: half });
  upper.push({ x: tail === 'pointed' ? end + notch : end, y: half });
  const middle: Point[] = tail === 'straight' ? [] : [{ x: tail === 'notched' ? end + notch : end, y: 0 }];
  const lower = upper.map(({ x, y }) => ({ x, y: -y })).reverse();
  return [{ x: tip, y: 0 }, ...upper, ...middle, ...lower];
}
