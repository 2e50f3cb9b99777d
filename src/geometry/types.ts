/**
 * The plain values that all parts of the engine exchange. Lengths are millimetres, x runs to the right and y runs up.
 */

/** A position, or a vector, in mm. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A closed polygon; the last point joins the first and is not repeated. */
export type Ring = readonly Point[];

/**
 * A flat area of material. Outer rings run counter-clockwise, holes clockwise, and no two rings cross, so that area,
 * containment and "which side is material" need no further look-up. Regions come from `clipper.ts`; rings built by hand
 * must go through `normalise` first.
 */
export type Region = readonly Ring[];

/** A side of a part, as it is drawn. */
export type Side = 'top' | 'bottom' | 'left' | 'right';

/** An axis-parallel box. An empty region has no bounds (`undefined`) rather than an inverted box. */
export interface Bounds {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** The affine map (x, y) → (a·x + c·y + e, b·x + d·y + f), with the letters of SVG's `matrix(a b c d e f)`. */
export interface Affine {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

/** A sequence of points; closed if the first and the last are the same. */
export type Line = readonly Point[];
