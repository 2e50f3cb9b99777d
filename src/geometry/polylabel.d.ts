/** Types for the parts of polylabel that are used; the package ships none. */
declare module 'polylabel' {
  /** The pole of inaccessibility, to within `precision`, of a polygon given as rings of [x, y], the outer one first. */
  export default function polylabel(
    polygon: readonly (readonly (readonly [number, number])[])[],
    precision?: number,
  ): number[];
}
