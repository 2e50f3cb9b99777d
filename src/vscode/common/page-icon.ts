/** Icons of the buttons on pages. */

/** Drawn with strokes, in a square of 16. */
export function icon(path: string): string {
  return `<svg class="icon" viewBox="0 0 16 16" aria-hidden="true"><path d="${path}"/></svg>`;
}
