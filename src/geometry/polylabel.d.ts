/** What is used of the package polylabel, which has no types of its own. */
declare module 'polylabel' {
  /** The pole of inaccessibility, to within `precision`, of a polygon given as rings of [x, y], the outer one first. */
  export default function polylabel(
    polygon: readonly (readonly (readonly [number, number])[])[],
    precision?: number,
  ): number[];
}
