/**
 * The face of a family nearest to the one asked for, by the rules of CSS Fonts 4, section 5.2 (width, style, weight).
 */

export interface FontStyle {
  /** A single weight, or the range of a variable font. */
  readonly weight: number | { readonly min: number; readonly max: number };
  readonly italic: boolean;
  /** From 1, the narrowest, to 9; absent means 5, normal, which is always the width asked for. */
  readonly width?: number;
}

export function nearestStyle<T extends FontStyle>(
  faces: readonly T[],
  wanted: { readonly weight: number; readonly italic: boolean },
): T | undefined {
  const offNormal = (face: FontStyle): number => Math.abs((face.width ?? 5) - 5);
  const width = faces.reduce((least, face) => Math.min(least, offNormal(face)), Infinity);
  const normal = faces.filter((face) => offNormal(face) === width);
  const slanted = normal.filter((face) => face.italic === wanted.italic);
  const candidates = slanted.length > 0 ? slanted : normal;
  let best: T | undefined;
  for (const face of candidates) {
    if (!best || weightRank(face, wanted.weight) < weightRank(best, wanted.weight)) best = face;
  }
  return best;
}

/** The nearest weight to `wanted` that a face can take. */
export function weightWithin({ weight }: FontStyle, wanted: number): number {
  return typeof weight === 'number' ? weight : Math.min(Math.max(wanted, weight.min), weight.max);
}

/**
 * Rank of a face; lower is nearer. From 400 to 500: up to 500 first, then lighter, then heavier. Below 400: lighter,
 * then heavier. Above 500: heavier, then lighter. Within each of these the nearest weight wins; the step of 1000 keeps
 * them apart.
 */
function weightRank(face: FontStyle, wanted: number): number {
  const weight = weightWithin(face, wanted);
  const distance = Math.abs(weight - wanted);
  if (distance === 0) return 0;
  const lighter = weight < wanted;
  if (wanted >= 400 && wanted <= 500) {
    if (!lighter && weight <= 500) return distance;
    return distance + (lighter ? 1000 : 2000);
  }
  return distance + (lighter === wanted < 400 ? 0 : 1000);
}
