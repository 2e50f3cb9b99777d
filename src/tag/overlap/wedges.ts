/** Fills the narrow ends of gaps where two letters meet: the beam does not separate them, and soot fills them. */

import { clippedToBox } from '../../geometry/clip-to-box.ts';
import { difference, intersection, normalise, offset } from '../../geometry/clipper.ts';
import { area, boundsOf, widened } from '../../geometry/measure.ts';
import { partsOf } from '../../geometry/parts.ts';
import type { Bounds, Region } from '../../geometry/types.ts';
import { coarseMm } from './bodies.ts';

/** Gaps up to this width are filled, in mm: nearly twice a usual kerf. */
const wedgeMm = 0.3;

/** Smaller areas are the rounding of a corner, in mm². */
const leastArea = 0.01;

/** The parts of `whole` that close between two of `letters`, all as grown. A letter's own notches stay. */
export function wedgesOf(whole: Region, letters: readonly Region[]): Region[] {
  const boxes = letters.map((letter) => boundsOf(letter));
  return placesOf(letters).flatMap((each) => {
    const place = widened(each, wedgeMm);
    // Anything further off than this cannot close a gap here.
    const near = normalise(clippedToBox(whole, widened(place, 2 * wedgeMm)));
    const closed = offset(offset(near, wedgeMm / 2, 'round', coarseMm), -wedgeMm / 2, 'round', coarseMm);
    const filled = clippedToBox(difference(closed, [near]), place);
    return partsOf(normalise(filled)).flatMap((part) => {
      if (area(part) < leastArea) return [];
      const wedge = offset(part, coarseMm, 'miter');
      const box = boundsOf(wedge);
      const touched = letters.filter((letter, index) => {
        const other = boxes[index];
        return box && other && meets(box, other) && intersection(wedge, letter).length > 0;
      });
      return touched.length > 1 ? [wedge] : [];
    });
  });
}

/** Separate boxes that together contain all places where the outlines of two letters come that near. */
function placesOf(letters: readonly Region[]): Bounds[] {
  const boxes = letters.map((letter) => boundsOf(letter));
  const places: Bounds[] = [];
  boxes.forEach((a, index) => {
    for (const [other, b] of boxes.slice(index + 1).entries()) {
      const shared = a && b && overlapOf(widened(a, wedgeMm), widened(b, wedgeMm));
      if (!shared) continue;
      const edges = edgesIn(letters[index + 1 + other]!, shared);
      for (const edge of edgesIn(letters[index]!, shared)) {
        for (const facing of edges) {
          const place = overlapOf(edge, facing);
          if (place) addPlace(places, place);
        }
      }
    }
  });
  return places;
}

function addPlace(places: Bounds[], place: Bounds): void {
  let whole = place;
  for (let index = 0; index < places.length; index++) {
    const other = places[index]!;
    if (!meets(other, whole)) continue;
    whole = joinedBounds(other, whole);
    // The larger box may now meet boxes already passed.
    places.splice(index, 1);
    index = -1;
  }
  places.push(whole);
}

/** Boxes of the edges that reach into a box, each with half of the gap round it. */
function edgesIn(region: Region, box: Bounds): Bounds[] {
  return region.flatMap((ring) => {
    const found: Bounds[] = [];
    let from = ring[ring.length - 1]!;
    for (const to of ring) {
      const edge = {
        minX: Math.min(from.x, to.x),
        minY: Math.min(from.y, to.y),
        maxX: Math.max(from.x, to.x),
        maxY: Math.max(from.y, to.y),
      };
      from = to;
      if (meets(edge, box)) found.push(widened(edge, wedgeMm / 2));
    }
    return found;
  });
}

function overlapOf(a: Bounds, b: Bounds): Bounds | undefined {
  if (!meets(a, b)) return undefined;
  return {
    minX: Math.max(a.minX, b.minX),
    minY: Math.max(a.minY, b.minY),
    maxX: Math.min(a.maxX, b.maxX),
    maxY: Math.min(a.maxY, b.maxY),
  };
}

function joinedBounds(a: Bounds, b: Bounds): Bounds {
  return {
    minX: Math.min(a.minX, b.minX),
    minY: Math.min(a.minY, b.minY),
    maxX: Math.max(a.maxX, b.maxX),
    maxY: Math.max(a.maxY, b.maxY),
  };
}

function meets(a: Bounds, b: Bounds): boolean {
  return a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;
}
