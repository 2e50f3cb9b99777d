/** Shapes made from figures alone. All but `points` are centred on the origin. */

import { normalise } from '../../geometry/clipper.ts';
import type { Point, Region, Ring } from '../../geometry/types.ts';
import type { Generator, NamedPlate } from '../../spec/model/shape-model.ts';
import { arc, chordsFor, withoutRepeats } from './arcs.ts';
import { namedPlate } from './named-plates.ts';

type PlateShape = Extract<Generator, { kind: 'rectangle' | 'ellipse' | 'regular' | 'points' | 'arrow' }>;

export function makePlate(plate: PlateShape | NamedPlate): Region {
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
    default:
      return [namedPlate(plate)];
  }
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
  return withoutRepeats(ring);
}

/** A polygon with one corner at the top, as a sign or a star is drawn. */
function regularPolygon(sides: number, radius: number): Ring {
  return arc({ x: 0, y: 0 }, radius, radius, Math.PI / 2, (5 * Math.PI) / 2, sides).slice(0, sides);
}

/** An arrow with its tip to the right, centred on the origin by its box. */
function arrow({ length, width, head, tipDegrees, tail, notch }: Extract<PlateShape, { kind: 'arrow' }>): Ring {
  const tip = length / 2;
  const shoulder = tip - head / 2 / Math.tan((tipDegrees * Math.PI) / 360);
  const end = -length / 2;
  const half = width / 2;
  const upper: Point[] = [{ x: shoulder, y: head / 2 }];
  if (head > width) upper.push({ x: shoulder, y: half });
  if (tail === 'forked') upper.push({ x: end + notch, y: half }, { x: end, y: head / 2 });
  else upper.push({ x: tail === 'pointed' ? end + notch : end, y: half });
  const middle: Point[] = tail === 'straight' ? [] : [{ x: tail === 'pointed' ? end : end + notch, y: 0 }];
  const lower = upper.map(({ x, y }) => ({ x, y: -y })).reverse();
  return [{ x: tip, y: 0 }, ...upper, ...middle, ...lower];
}
