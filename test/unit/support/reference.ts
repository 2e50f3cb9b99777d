/** Unions and offsets by libraries that are no part of the engine: jsts (Java's JTS, GEOS' ancestor) and clipper2-ts. */

import { Clipper, EndType, JoinType } from 'clipper2-ts';
import type { Path64 } from 'clipper2-ts';
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import type Geometry from 'jsts/org/locationtech/jts/geom/Geometry.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import DistanceOp from 'jsts/org/locationtech/jts/operation/distance/DistanceOp.js';
import IsValidOp from 'jsts/org/locationtech/jts/operation/valid/IsValidOp.js';
import OverlayOp from 'jsts/org/locationtech/jts/operation/overlay/OverlayOp.js';
import { arcToleranceMm } from '../../../src/geometry/clipper.ts';
import { ringArea } from '../../../src/geometry/measure.ts';
import type { Region, Ring } from '../../../src/geometry/types.ts';

const factory = new GeometryFactory();
const unitsPerMm = 100_000;

/** mm² of the union by jsts. Each region: outer rings counter-clockwise, holes clockwise, rings that do not cross. */
export function unionAreaByJts(regions: readonly Region[]): number {
  const whole = regions.map(toGeometry).reduce((sum, each) => OverlayOp.union(sum, each) as Geometry);
  return whole.getArea();
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
  const coordinates = [...ring, ring[0]!].map(({ x, y }) => new Coordinate(x, y));
  return factory.createPolygon(factory.createLinearRing(coordinates)) as Geometry;
}

/** mm² of a region offset by a disc, by clipper2-ts with the arc tolerance that the engine states. */
export function offsetAreaByClipper2(region: Region, delta: number): number {
  const paths = region.map((ring): Path64 =>
    ring.map(({ x, y }) => ({ x: Math.round(x * unitsPerMm), y: Math.round(y * unitsPerMm) })),
  );
  const arcTolerance = arcToleranceMm * unitsPerMm;
  const grown = Clipper.inflatePaths(paths, delta * unitsPerMm, JoinType.Round, EndType.Polygon, 2, arcTolerance);
  return Math.abs(Clipper.areaPaths(grown)) / unitsPerMm ** 2;
}

/** Whether jsts finds the outline valid: it neither crosses nor touches itself. */
export function isSimpleByJts(ring: Ring): boolean {
  return new IsValidOp(toPolygon(ring)).isValid();
}
