/** Fills the narrow ends of gaps where two letters meet: the beam does not separate them, and soot fills them. */

import { clippedToBox } from '../../geometry/clip-to-box.ts';
import { difference, intersection, normalise, offset } from '../../geometry/clipper.ts';
import { area, widened } from '../../geometry/measure.ts';
import { partsOf } from '../../geometry/parts.ts';
import type { Bounds, Region } from '../../geometry/types.ts';
import type { StageCache } from '../cache.ts';
import { coarseMm, movedRegion } from './bodies.ts';
import { identityOf, onGrid } from './grown-shape.ts';
import type { GrownShape } from './grown-shape.ts';

/** Gaps up to this width are filled, in mm: nearly twice a usual kerf. */
const wedgeMm = 0.3;

/** Smaller areas are the rounding of a corner, in mm². */
const leastArea = 0.01;

/** The parts of the gaps between two letters that close, at their places. A letter's own notches stay. */
export function wedgesOf(shapes: readonly GrownShape[], cache: StageCache): Region[] {
  return placesOf(shapes.filter(({ isJoint }) => !isJoint)).flatMap((place) => {
    // Anything further off than this cannot close a gap here.
    const near = shapes.filter(({ box }) => meets(box, widened(place, 3 * wedgeMm)));
    const origin = near[0]!.at;
    const shifts = near.map(({ at }) => ({ x: onGrid(at.x - origin.x), y: onGrid(at.y - origin.y) }));
    const box = {
      minX: onGrid(place.minX - origin.x),
      minY: onGrid(place.minY - origin.y),
      maxX: onGrid(place.maxX - origin.x),
      maxY: onGrid(place.maxY - origin.y),
    };
    const inputs = [box, near.map((shape, index) => [identityOf(shape), shifts[index]])];
    const found = cache.letters.get('wedges', inputs, () =>
      wedgesAt(
        near.map((shape, index) => ({ isJoint: shape.isJoint, region: movedRegion(shape.own, shifts[index]!) })),
        widened(box, wedgeMm),
      ),
    );
    return found.value.map((wedge) => movedRegion(wedge, origin));
  });
}

function wedgesAt(shapes: readonly Pick<GrownShape, 'region' | 'isJoint'>[], place: Bounds): Region[] {
  const around = widened(place, 2 * wedgeMm);
  const clipped = shapes.map(({ region, isJoint }) => ({ region: clippedToBox(region, around), isJoint }));
  const near = normalise(clipped.flatMap(({ region }) => [...region]));
  const closed = offset(offset(near, wedgeMm / 2, 'round', coarseMm), -wedgeMm / 2, 'round', coarseMm);
  const filled = clippedToBox(difference(closed, [near]), place);
  return partsOf(normalise(filled)).flatMap((part) => {
    if (area(part) < leastArea) return [];
    const wedge = offset(part, coarseMm, 'miter');
    const touched = clipped.filter(({ region, isJoint }) => !isJoint && intersection(wedge, region).length > 0);
    return touched.length > 1 ? [wedge] : [];
  });
}

/** Separate boxes that together contain all places where the outlines of two letters come that near. */
function placesOf(letters: readonly GrownShape[]): Bounds[] {
  const places: Bounds[] = [];
  letters.forEach((a, index) => {
    for (const b of letters.slice(index + 1)) {
      const shared = overlapOf(widened(a.box, wedgeMm), widened(b.box, wedgeMm));
      if (!shared) continue;
      const edges = edgesIn(b.region, shared);
      for (const edge of edgesIn(a.region, shared)) {
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
