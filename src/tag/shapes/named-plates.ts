/**
 * Plates with a name of their own, made from a few figures. Each is centred on the origin by its box, which is exactly
 * the size asked for (for a scalloped disc only if a lobe lies at that side), and runs counter-clockwise.
 */

import { flatteningToleranceMm } from '../../geometry/flatten.ts';
import type { Point, Ring } from '../../geometry/types.ts';
import type { NamedPlate } from '../../spec/model/shape-model.ts';
import { arc, chordsFor, withoutRepeats } from './arcs.ts';

const quarter = Math.PI / 2;

export function namedPlate(plate: NamedPlate): Ring {
  switch (plate.kind) {
    case 'oval':
      return oval(plate.width / 2, plate.height / 2, plate.exponent);
    case 'heart':
      return heart(plate.width, plate.height);
    case 'house':
      return house(plate);
    case 'label':
      return label(plate);
    case 'ticket':
      return ticket(plate.width / 2, plate.height / 2, plate.bite);
    case 'scalloped-rectangle':
      return scallopedRectangle(plate);
    case 'scalloped-disc':
      return scallopedDisc(plate.across / 2, plate.lobes);
  }
}

/**
 * |x/a|^e + |y/b|^e = 1. A quarter of it is halved until each chord is near enough to the point of the curve between
 * its ends; x = a·cos(t)^(2/e), y = b·sin(t)^(2/e).
 */
function oval(a: number, b: number, exponent: number): Ring {
  const power = 2 / exponent;
  const at = (t: number): Point => ({
    x: a * Math.max(0, Math.cos(t)) ** power,
    y: b * Math.max(0, Math.sin(t)) ** power,
  });
  // The deviation at the middle parameter of a chord may not be its largest, so the tolerance is halved.
  const near = flatteningToleranceMm / 2;
  const between = (from: number, to: number, depth: number): Point[] => {
    const middle = (from + to) / 2;
    if (depth >= 14 || (depth >= 3 && distanceToChord(at(middle), at(from), at(to)) <= near)) return [];
    return [...between(from, middle, depth + 1), at(middle), ...between(middle, to, depth + 1)];
  };
  const first = [{ x: a, y: 0 }, ...between(0, quarter, 0)];
  const upper = [
    ...first,
    { x: 0, y: b },
    ...first
      .slice(1)
      .reverse()
      .map(({ x, y }) => ({ x: -x, y })),
  ];
  return [
    ...upper,
    { x: -a, y: 0 },
    ...upper
      .slice(1)
      .reverse()
      .map(({ x, y }) => ({ x, y: -y })),
  ];
}

function distanceToChord(point: Point, from: Point, to: Point): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  return Math.abs((point.x - from.x) * dy - (point.y - from.y) * dx) / Math.max(Math.hypot(dx, dy), 1e-12);
}

/** A square of side 1 on its corner with a half disc on each of its upper sides, stretched to the size. */
function heart(width: number, height: number): Ring {
  const centre = Math.SQRT1_2 / 2;
  const [right, top, bottom] = [centre + 0.5, centre + 0.5, -Math.SQRT1_2];
  const [scaleX, scaleY] = [width / (2 * right), height / (top - bottom)];
  // A multiple of four steps over half a turn, so that the outermost points of the disc are corners.
  const steps = chordsFor(Math.max(scaleX, scaleY) / 2);
  const lobe = arc({ x: centre, y: centre }, 0.5, 0.5, -quarter / 2, 1.5 * quarter, steps);
  const mirrored = lobe.map(({ x, y }) => ({ x: -x, y })).reverse();
  const ring = [{ x: 0, y: bottom }, ...lobe, ...mirrored];
  return withoutRepeats(ring.map(({ x, y }) => ({ x: x * scaleX, y: (y - (top + bottom) / 2) * scaleY })));
}

function house({ width, height, roof, eaves }: Extract<NamedPlate, { kind: 'house' }>): Ring {
  const [bottom, under, wall] = [-height / 2, height / 2 - roof, width / 2 - eaves];
  return withoutRepeats([
    { x: -wall, y: bottom },
    { x: wall, y: bottom },
    { x: wall, y: under },
    { x: width / 2, y: under },
    { x: 0, y: height / 2 },
    { x: -width / 2, y: under },
    { x: -wall, y: under },
  ]);
}

function label({ width, height, cut, end }: Extract<NamedPlate, { kind: 'label' }>): Ring {
  const [x, y] = [width / 2, height / 2];
  const corners = [
    { x: 1, y: 1, ends: ['top', 'right'] },
    { x: -1, y: 1, ends: ['top', 'left'] },
    { x: -1, y: -1, ends: ['bottom', 'left'] },
    { x: 1, y: -1, ends: ['bottom', 'right'] },
  ];
  const ring = corners.flatMap((corner, index): Point[] => {
    const upright = { x: corner.x * x, y: corner.y * (y - cut) };
    const level = { x: corner.x * (x - cut), y: corner.y * y };
    if (!corner.ends.includes(end)) return [{ x: corner.x * x, y: corner.y * y }];
    // The first and third corners are reached along an upright side.
    return index % 2 === 0 ? [upright, level] : [level, upright];
  });
  return withoutRepeats(ring);
}

function ticket(x: number, y: number, bite: number): Ring {
  const corners = [
    { x, y },
    { x: -x, y },
    { x: -x, y: -y },
    { x, y: -y },
  ];
  const steps = chordsFor(bite) / 4;
  // Round each corner against the direction of the outline.
  return corners.flatMap((corner, index) =>
    arc(corner, bite, bite, (index + 3) * quarter, (index + 2) * quarter, steps),
  );
}

/** Each lobe is an ellipse as wide and as high as its share of the sides, three quarters of it at the corners. */
function scallopedRectangle(plate: Extract<NamedPlate, { kind: 'scalloped-rectangle' }>): Ring {
  const { width, height, columns, rows } = plate;
  const [rx, ry] = [width / columns / 2, height / rows / 2];
  const steps = chordsFor(Math.max(rx, ry)) / 4;
  const ring: Point[] = [];
  // Side by side from the lower right corner upwards, each with its first corner.
  for (const [index, lobes] of [rows, columns, rows, columns].entries()) {
    const along = { x: Math.cos((index + 1) * quarter), y: Math.sin((index + 1) * quarter) };
    const start = cornerLobe(index, width / 2 - rx, height / 2 - ry);
    const out = index * quarter;
    ring.push(...arc(start, rx, ry, out - 2 * quarter, out + quarter, 3 * steps));
    for (let lobe = 1; lobe < lobes - 1; lobe++) {
      const centre = { x: start.x + along.x * 2 * rx * lobe, y: start.y + along.y * 2 * ry * lobe };
      ring.push(...arc(centre, rx, ry, out - quarter, out + quarter, 2 * steps));
    }
  }
  return withoutRepeats(ring);
}

/** The centre of the lobe at which a side begins: the right one at the bottom, the top one at the right, and so on. */
function cornerLobe(side: number, x: number, y: number): Point {
  return { x: side === 0 || side === 1 ? x : -x, y: side === 1 || side === 2 ? y : -y };
}

/** Half discs on the sides of a regular polygon. */
function scallopedDisc(radius: number, lobes: number): Ring {
  const half = Math.PI / lobes;
  // The apothem and half a side of the polygon add up to the radius.
  const toCorner = radius / (Math.cos(half) + Math.sin(half));
  const lobe = toCorner * Math.sin(half);
  const steps = chordsFor(lobe) / 2;
  const ring = Array.from({ length: lobes }, (_, index) => {
    const out = quarter + index * 2 * half;
    const apothem = toCorner * Math.cos(half);
    const centre = { x: apothem * Math.cos(out), y: apothem * Math.sin(out) };
    return arc(centre, lobe, lobe, out - quarter, out + quarter, steps);
  });
  return withoutRepeats(ring.flat());
}
