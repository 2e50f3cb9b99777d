/** Lines that enclose nothing: the strokes that a beam burns along them, and the curves they stand for. */

import { distance } from './measure.ts';
import { offset } from './clipper.ts';
import { endOf } from './contour.ts';
import type { Contour, Segment } from './contour.ts';
import { fitContours } from './fit-contours.ts';
import type { Line, Point, Region, Ring } from './types.ts';

/** Points nearer to each other than this, in mm, are one. */
const samePointMm = 0.002;

/** Width of the stroke that the beam burns along a line, in mm: the finest it draws (rule of thumb, no source). */
export const strokeMm = 0.2;

/** The area burnt along the lines, `width` mm wide with round ends. */
export function strokesAlong(lines: readonly Line[], width: number): Region {
  return offset(lines.flatMap(alongAndBack), width / 2);
}

/**
 * The lines as contours of arcs, curves and straight segments, closed if the ends meet; those too short are left out.
 */
export function fitLines(lines: readonly Line[]): Contour[] {
  return lines.flatMap((line) => fitLine(line) ?? []);
}

function fitLine(line: Line): Contour | undefined {
  const [first, last] = [line[0], line.at(-1)];
  if (!first || !last || line.length < 2) return undefined;
  const parts = betweenRevisits(line);
  if (parts.length === 1 && isClosed(line)) return fitContours([line.slice(0, -1)])[0];
  return { start: first, segments: parts.flatMap(fitSimple), closed: isClosed(line) };
}

/**
 * The line divided wherever it returns to a point, as an e does that closes its eye, so that no part touches itself
 * except at its ends.
 */
function betweenRevisits(line: Line): Line[] {
  const key = ({ x, y }: Point): string => `${Math.round(x / samePointMm)} ${Math.round(y / samePointMm)}`;
  const visits = new Map<string, number>();
  for (const point of line) visits.set(key(point), (visits.get(key(point)) ?? 0) + 1);
  const parts: Point[][] = [[line[0]!]];
  for (const [index, point] of line.entries()) {
    if (index === 0) continue;
    const part = parts.at(-1)!;
    part.push(point);
    const isEnd = index === line.length - 1;
    if (!isEnd && visits.get(key(point))! > 1) parts.push([point]);
  }
  // A part that returns to its own start is a loop on the way, not a closed line, so it is halved.
  return parts.length === 1 ? parts : parts.flatMap((part) => (isClosed(part) ? splitInHalves(part) : [part]));
}

function splitInHalves(line: Line): Line[] {
  const middle = line.length >> 1;
  return [line.slice(0, middle + 1), line.slice(middle)];
}

/** The segments of a line that returns to no point, from its first point to its last. */
function fitSimple(line: Line): readonly Segment[] {
  const [first, last] = [line[0]!, line.at(-1)!];
  const straight = line.slice(1).map((to): Segment => ({ type: 'line', to }));
  if (straight.length === 1) return straight;
  // Doubled back on itself, the line is a ring whose sharpest corners are its ends, which the fit keeps.
  const [there = []] = alongAndBack(line);
  const [ring] = fitContours([[...there.slice(1), first]]);
  const doubled = ring ? [...ring.segments, ...ring.segments] : [];
  const ends = ring ? [ring.start, ...doubled.map(({ to }) => to)] : [];
  const from = ends.findIndex((point) => isSame(point, first));
  const to = ends.findIndex((point, index) => index > from && isSame(point, last));
  return from >= 0 && to >= 0 ? doubled.slice(from, to) : straight;
}

/** The contour in the opposite direction. */
export function reversed(contour: Contour): Contour {
  const { start, segments, closed } = contour;
  const starts = [start, ...segments.map(({ to }) => to)];
  const back = segments.map((segment, index): Segment => {
    const to = starts[index]!;
    switch (segment.type) {
      case 'line':
        return { type: 'line', to };
      case 'arc':
        return { type: 'arc', to, centre: segment.centre, sweep: -segment.sweep };
      case 'cubic':
        return { type: 'cubic', to, c1: segment.c2, c2: segment.c1 };
    }
  });
  return { start: endOf(contour), segments: back.reverse(), closed };
}

/**
 * A ring without area that follows the line there and back, and grows as a line does; two points get a third between.
 */
function alongAndBack(line: Line): Ring[] {
  if (isClosed(line)) return closedRings(line);
  if (line.length < 2) return [];
  const [a, b] = line as [Line[number], Line[number]];
  const points = line.length > 2 ? line : [a, { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }, b];
  return [[...points, ...points.slice(1, -1).reverse()]];
}

/** The ring in both directions, so that the area inside does not count. */
function closedRings(line: Line): Ring[] {
  return [[...line.slice(0, -1), ...line.toReversed().slice(0, -1)]];
}

function isClosed(line: Line): boolean {
  return line.length > 3 && isSame(line[0]!, line.at(-1)!);
}

function isSame(a: Line[number], b: Line[number]): boolean {
  return distance(a, b) <= samePointMm;
}
