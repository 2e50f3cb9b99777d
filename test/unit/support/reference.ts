/** Unions and offsets by libraries that are no part of the engine: jsts (Java's JTS, GEOS' ancestor) and Clipper2. */

import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import type Geometry from 'jsts/org/locationtech/jts/geom/Geometry.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import BufferOp from 'jsts/org/locationtech/jts/operation/buffer/BufferOp.js';
import DistanceOp from 'jsts/org/locationtech/jts/operation/distance/DistanceOp.js';
import IsValidOp from 'jsts/org/locationtech/jts/operation/valid/IsValidOp.js';
import OverlayOp from 'jsts/org/locationtech/jts/operation/overlay/OverlayOp.js';
import { arcToleranceMm } from '../../../src/geometry/clipper.ts';
import { ringArea } from '../../../src/geometry/measure.ts';
import type { Line, Region, Ring } from '../../../src/geometry/types.ts';
import { area, offset } from './clipper2.ts';

const factory = new GeometryFactory();

/** mm² of the union by jsts. Each region: outer rings counter-clockwise, holes clockwise, rings that do not cross. */
export function unionAreaByJts(regions: readonly Region[]): number {
  const whole = regions.map(toGeometry).reduce((sum, each) => OverlayOp.union(sum, each) as Geometry);
  return whole.getArea();
}

/** mm² that two regions share, by jsts. */
export function intersectionAreaByJts(a: Region, b: Region): number {
  return (OverlayOp.intersection(toGeometry(a), toGeometry(b)) as Geometry).getArea();
}

/** mm² of a region that is outside another, by jsts. */
export function differenceAreaByJts(a: Region, b: Region): number {
  return (OverlayOp.difference(toGeometry(a), toGeometry(b)) as Geometry).getArea();
}

/** mm of the outlines of `lines` that run more than `deep` mm inside a region, by jsts. */
export function lengthInsideByJts(lines: Region, region: Region, deep: number): number {
  const inside = BufferOp.bufferOp(toGeometry(region), -deep, 32) as Geometry;
  const along = (ring: Ring): number => {
    const line = factory.createLineString(coordinatesOf(ring)) as Geometry;
    return (OverlayOp.intersection(line, inside) as Geometry).getLength();
  };
  return lines.reduce((sum, ring) => sum + along(ring), 0);
}

/** mm of lines inside a region, or outside it, by jsts. */
export function clippedLengthByJts(lines: readonly Line[], region: Region, side: 'inside' | 'outside'): number {
  const whole = toGeometry(region);
  const clipped = (line: Line) => {
    const all = toLineString(line);
    return (side === 'inside' ? OverlayOp.intersection(all, whole) : OverlayOp.difference(all, whole)) as Geometry;
  };
  return lines.reduce((sum, line) => sum + clipped(line).getLength(), 0);
}

/** mm² of the band as far as `by` mm from lines, with round ends, by jsts. */
export function bandAreaByJts(lines: readonly Line[], by: number): number {
  const bands = lines.map((line) => BufferOp.bufferOp(toLineString(line), by, 64) as Geometry);
  return bands.reduce((sum, each) => OverlayOp.union(sum, each) as Geometry).getArea();
}

function toLineString(line: Line): Geometry {
  return factory.createLineString(line.map(({ x, y }) => new Coordinate(x, y))) as Geometry;
}

/** The least distance in mm between two regions, by jsts; 0 where they overlap or one lies in the other. */
export function distanceByJts(a: Region, b: Region): number {
  return DistanceOp.distance(toGeometry(a), toGeometry(b)) as number;
}

function toGeometry(region: Region): Geometry {
  const polygons = (sign: number): Geometry[] =>
    region.filter((ring) => Math.sign(ringArea(ring)) === sign).map((ring) => toPolygon(ring));
  const outer = polygons(1).reduce((sum, each) => OverlayOp.union(sum, each) as Geometry);
  return polygons(-1).reduce((rest, hole) => OverlayOp.difference(rest, hole) as Geometry, outer);
}

function toPolygon(ring: Ring): Geometry {
  return factory.createPolygon(factory.createLinearRing(coordinatesOf(ring))) as Geometry;
}

function coordinatesOf(ring: Ring): Coordinate[] {
  return [...ring, ring[0]!].map(({ x, y }) => new Coordinate(x, y));
}

/** mm² of a region offset by a disc, by Clipper2 with the arc tolerance that the engine states. */
export function offsetAreaByClipper2(region: Region, delta: number): number {
  return Math.abs(area(offset(region, delta, arcToleranceMm)));
}

/** Whether jsts finds the outline valid: it neither crosses nor touches itself. */
export function isSimpleByJts(ring: Ring): boolean {
  return new IsValidOp(toPolygon(ring)).isValid();
}
