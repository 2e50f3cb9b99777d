/** The inside of a region as triangles between closely spaced boundary points. */

export interface Mesh {
  /** Boundary vertices in grid units. */
  readonly xs: Float64Array;
  readonly ys: Float64Array;
  /** See `Triangulation`. */
  readonly starts: Uint32Array;
  readonly twins: Int32Array;
  /** Per triangle: 1 in material. */
  readonly inside: Uint8Array;
  /** Per half-edge: 1 if both sides are material, so that the edge is a chord of the region. */
  readonly isChord: Uint8Array;
  /** The neighbours along the outline; −1 at a vertex where outlines meet, which has more than two. */
  readonly next: Int32Array;
  readonly previous: Int32Array;
  /** The outline that a vertex is on, its distance along it, and the length of each outline (units). */
  readonly ring: Int32Array;
  readonly along: Float64Array;
  readonly ringLengths: readonly number[];
  /** Vertices where outlines meet. */
  readonly meetings: readonly number[];
}

/** The triangle of a half-edge. */
export const triangleOf = (e: number): number => (e / 3) | 0;
