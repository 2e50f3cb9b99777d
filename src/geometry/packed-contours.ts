/** Contours as plain numbers: some hundred sheets of them wait for their files. */

import type { Contour, Segment } from './contour.ts';
import type { Point } from './types.ts';

/** A kind is known by its number here. */
const kinds = ['line', 'arc', 'cubic'] as const;

/** Contours that are made whenever they are asked for, each time anew, and the same to the last digit. */
export function keptPackedContours(contours: readonly Contour[]): { readonly contours: readonly Contour[] } {
  const numbers = Float64Array.from(contours.flatMap(numbersOf));
  return {
    get contours() {
      return contoursFrom(numbers);
    },
  };
}

function numbersOf({ start, segments, closed }: Contour): number[] {
  return [Number(closed), segments.length, start.x, start.y, ...segments.flatMap(numbersOfSegment)];
}

function numbersOfSegment(segment: Segment): number[] {
  const { type, to } = segment;
  const kind = kinds.indexOf(type);
  switch (type) {
    case 'line':
      return [kind, to.x, to.y];
    case 'arc':
      return [kind, to.x, to.y, segment.centre.x, segment.centre.y, segment.sweep];
    case 'cubic':
      return [kind, to.x, to.y, segment.c1.x, segment.c1.y, segment.c2.x, segment.c2.y];
  }
}

function contoursFrom(numbers: Float64Array): Contour[] {
  let at = 0;
  const next = (): number => numbers[at++]!;
  const point = (): Point => ({ x: next(), y: next() });
  const segment = (): Segment => {
    const type = kinds[next()]!;
    const to = point();
    switch (type) {
      case 'line':
        return { type, to };
      case 'arc':
        return { type, to, centre: point(), sweep: next() };
      case 'cubic':
        return { type, to, c1: point(), c2: point() };
    }
  };
  const contours: Contour[] = [];
  while (at < numbers.length) {
    const closed = next() === 1;
    const length = next();
    contours.push({ start: point(), segments: Array.from({ length }, segment), closed });
  }
  return contours;
}
