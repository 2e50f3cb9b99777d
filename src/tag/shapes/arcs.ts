/** Arcs as polygons whose corners lie on them. */

import { distance } from '../../geometry/measure.ts';
import { flatteningToleranceMm } from '../../geometry/flatten.ts';
import type { Point, Ring } from '../../geometry/types.ts';

/**
 * Chords per full turn such that none is more than `tolerance` off a circle of this radius: the sagitta of a chord is
 * R·(1 − cos π/n). A multiple of four, so that the extremes lie on the polygon and sizes are exact.
 */
export function chordsFor(radius: number, tolerance = flatteningToleranceMm): number {
  const chords = Math.PI / Math.acos(Math.max(1 - tolerance / radius, -1));
  return Math.max(8, 4 * Math.ceil(chords / 4));
}

/** Points along an ellipse, both ends included; angles in radians, counter-clockwise from the right. */
export function arc(centre: Point, rx: number, ry: number, from: number, to: number, steps: number): Point[] {
  return Array.from({ length: steps + 1 }, (_, index) => {
    const angle = from + ((to - from) * index) / steps;
    return { x: centre.x + rx * Math.cos(angle), y: centre.y + ry * Math.sin(angle) };
  });
}

/** The ring without points that coincide with the one before. */
export function withoutRepeats(ring: Ring): Ring {
  return ring.filter((point, index) => {
    const previous = ring[(index + ring.length - 1) % ring.length]!;
    return distance(point, previous) > 1e-9;
  });
}
