/** Moving, turning and scaling. Angles are degrees, clockwise as in CSS transforms. */

import type { Affine, Point, Region } from './types.ts';

export const identity: Affine = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };

export function translation(x: number, y: number): Affine {
  return { ...identity, e: x, f: y };
}

/** Scaling by `x` and `y` that leaves `about` where it is. */
export function scaling(x: number, y: number, about: Point): Affine {
  return { a: x, b: 0, c: 0, d: y, e: about.x * (1 - x), f: about.y * (1 - y) };
}

/** A turn by `degrees` clockwise (y up) round `about`. */
export function rotation(degrees: number, about: Point): Affine {
  const angle = (-degrees * Math.PI) / 180;
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  return {
    a: cos,
    b: sin,
    c: -sin,
    d: cos,
    e: about.x - cos * about.x + sin * about.y,
    f: about.y - sin * about.x - cos * about.y,
  };
}

export function applyTo({ x, y }: Point, m: Affine): Point {
  return { x: m.a * x + m.c * y + m.e, y: m.b * x + m.d * y + m.f };
}

/** The vector mapped without the translation. */
export function applyToVector({ x, y }: Point, { a, b, c, d }: Affine): Point {
  return { x: a * x + c * y, y: b * x + d * y };
}

/** The region mapped. A mirroring map reverses the rings, so that outer rings stay counter-clockwise. */
export function transform(region: Region, m: Affine): Region {
  const mirrored = m.a * m.d - m.b * m.c < 0;
  return region.map((ring) => {
    const mapped = ring.map((point) => applyTo(point, m));
    return mirrored ? mapped.reverse() : mapped;
  });
}

/** The map that undoes `m`, which must not flatten anything. */
export function inverse({ a, b, c, d, e, f }: Affine): Affine {
  const det = a * d - b * c;
  return {
    a: d / det,
    b: -b / det,
    c: -c / det,
    d: a / det,
    e: (c * f - d * e) / det,
    f: (b * e - a * f) / det,
  };
}

/** The map that applies `first` and then `then`. */
export function chain(first: Affine, then: Affine): Affine {
  return {
    a: then.a * first.a + then.c * first.b,
    b: then.b * first.a + then.d * first.b,
    c: then.a * first.c + then.c * first.d,
    d: then.b * first.c + then.d * first.d,
    e: then.a * first.e + then.c * first.f + then.e,
    f: then.b * first.e + then.d * first.f + then.f,
  };
}
