/** How much of a sweep is tried: a part of it in `npm test`, and all of it where TAGWRIGHT_SWEEPS is `whole`. */

export const isWhole = process.env['TAGWRIGHT_SWEEPS'] === 'whole';

/** Every so-manyth, from the first on. */
export function oneIn<T>(share: number, all: readonly T[]): readonly T[] {
  return isWhole ? all : all.filter((_, index) => index % share === 0);
}

/** How many cases are made up. */
export const cases = (some: number, whole: number): number => (isWhole ? whole : some);
