/** The names of what is in a scene. They hang on the spec's own names and order, so that they outlast an edit. */

import type { YamlPath } from '../core/issue.ts';

export const ids = {
  /** The n-th shape of the body. */
  shape: (piece: string, index: number): string => `${piece}/body-${index}`,
  /** The holes in the n-th shape of the body, or those that its shapes leave between them. */
  holes: (piece: string, index: number | 'between'): string => `${piece}/holes-${index}`,
  /** The n-th shape that is cut out. */
  cut: (piece: string, index: number): string => `${piece}/cut-${index}`,
  /** The n-th of the engravings and scores together. */
  mark: (piece: string, index: number): string => `${piece}/mark-${index}`,
  /** The n-th hanger. */
  hanger: (piece: string, index: number): string => `${piece}/hanger-${index}`,
  hangerHole: (piece: string, index: number): string => `${piece}/hanger-hole-${index}`,
  /** What the shape with that id was put into or onto. */
  area: (id: string): string => `${id}/area`,
  ghost: (path: YamlPath): string => `ghost/${path.join('/')}`,
  outer: (piece: string): string => `${piece}/outer`,
};
