/** Copies of a shape in rows, round a circle, or along an outline. */

import { chain, rotation, translation } from '../../geometry/affine.ts';
import { offset } from '../../geometry/clipper.ts';
import { boundsOf, boxCentre, distance, ringArea } from '../../geometry/measure.ts';
import type { Point, Region, Ring } from '../../geometry/types.ts';
import { walkRing } from '../../geometry/walk-ring.ts';
import type { RingStep } from '../../geometry/walk-ring.ts';
import { mm } from '../../core/figures.ts';
import type { RepeatGenerator, RoundSpacing } from '../../spec/model/shape-model.ts';
import { mostCopies } from '../../spec/read/read-repeat.ts';
import { mapShape } from '../made-shape.ts';
import type { MadeShape } from '../made-shape.ts';
import { circle } from './plates.ts';

/** Most points in all copies: more would take longer to unite than a keystroke may. */
const mostPoints = 300_000;

/**
 * Distance to either side over which the direction of a line is measured, in mm: curves are made of chords, and at a
 * corner the direction is halfway.
 */
const asideMm = 0.5;

/** Rounding tolerance for copies that fill a line to its end, as a share of their spacing. */
const roundingShare = 1e-3;

export type Copies = { readonly made: readonly MadeShape[] } | { readonly problem: string };

/** `outline` is the one the copies follow, if they follow one. Empty if either has no area. */
export function copiesOf(made: MadeShape, along: RepeatGenerator['along'], outline: Region = []): Copies {
  const bounds = boundsOf(made.region);
  if (!bounds) return { made: [] };
  const middle = boxCentre(bounds);
  if (along.kind === 'rows') {
    const { columns, rows, across, down } = along;
    const places = Array.from({ length: columns * rows }, (_, index) => {
      const [column, row] = [index % columns, Math.floor(index / columns)];
      return translation(column * across.x + row * down.x, column * across.y + row * down.y);
    });
    return copiesAt(made, places);
  }
  const lines = along.kind === 'circle' ? [circle(middle, along.diameter / 2)] : insetLines(outline, along.inset);
  const places: CopyPlace[] = [];
  for (const line of lines) {
    const found = placesRound(line, along);
    if ('problem' in found) return found;
    places.push(...found.places);
  }
  return copiesAt(
    made,
    places.map(({ point, degrees }) =>
      chain(rotation(along.upright ? 0 : degrees, middle), translation(point.x - middle.x, point.y - middle.y)),
    ),
  );
}

function copiesAt(made: MadeShape, places: readonly ReturnType<typeof translation>[]): Copies {
  const points = made.region.reduce((sum, ring) => sum + ring.length, 0);
  if (places.length > mostCopies)
    return { problem: `These would be ${places.length} copies; at most ${mostCopies} are made.` };
  if (places.length * points > mostPoints)
    return { problem: `${places.length} copies of so detailed a shape are too many; use fewer, or a plainer shape.` };
  return { made: places.map((place) => mapShape(made, place)) };
}

function insetLines(outline: Region, inset: number): Region {
  const outers = outline.filter((ring) => ringArea(ring) > 0);
  return offset(outers, -inset, 'miter').filter((ring) => ringArea(ring) > 0);
}

interface CopyPlace {
  readonly point: Point;
  /** Clockwise from how it was drawn, so that its top points outwards. */
  readonly degrees: number;
}

function placesRound(ring: Ring, { count, spacing }: RoundSpacing): { places: CopyPlace[] } | { problem: string } {
  // Outer rings run counter-clockwise, and copies follow clockwise, as on a clock.
  const line = ring.toReversed();
  const total = ringLength(line);
  const fitting = Math.max(1, Math.round(total / (spacing ?? total)));
  const number = count ?? fitting;
  if (number > mostCopies) return { problem: `These would be ${number} copies; at most ${mostCopies} are made.` };
  if (count !== undefined && spacing !== undefined && count * spacing > total + roundingShare * spacing)
    return {
      problem: `${count} copies, ${mm(spacing)} apart, take ${mm(count * spacing, 1)}; once round is only ${mm(total, 1)}.`,
    };
  const step = count !== undefined && spacing !== undefined ? spacing : total / number;
  // With both figures given, the copies spread to both sides of the top.
  const from = alongAtTop(line) - (count !== undefined && spacing !== undefined ? ((number - 1) / 2) * step : 0);
  const places = Array.from({ length: number }, (_, index): CopyPlace => {
    const along = from + index * step;
    const [before, { point }, after] = [-asideMm, 0, asideMm].map((aside) => pointAt(line, along + aside)) as [
      RingStep,
      RingStep,
      RingStep,
    ];
    // When walking clockwise, outwards is to the left.
    const [x, y] = [after.point.x - before.point.x, after.point.y - before.point.y];
    return { point, degrees: (Math.atan2(-y, x) * 180) / Math.PI };
  });
  return { places };
}

function pointAt(line: Ring, along: number): RingStep {
  return walkRing(line, 1, along, along + 0.5)[0]!;
}

function ringLength(line: Ring): number {
  return line.reduce((sum, { x, y }, index) => {
    const next = line[(index + 1) % line.length]!;
    return sum + Math.hypot(next.x - x, next.y - y);
  }, 0);
}

/** Distance along a line to its highest point above the middle of its box. */
function alongAtTop(line: Ring): number {
  const { x } = boxCentre(boundsOf([line])!);
  let best = { y: -Infinity, along: 0 };
  let along = 0;
  line.forEach((from, index) => {
    const to = line[(index + 1) % line.length]!;
    const length = distance(to, from);
    if (from.x <= x !== to.x <= x || from.x === x) {
      const share = to.x === from.x ? 0 : (x - from.x) / (to.x - from.x);
      const y = from.y + share * (to.y - from.y);
      if (y > best.y) best = { y, along: along + share * length };
    }
    along += length;
  });
  return best.along;
}
