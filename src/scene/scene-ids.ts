/** Ids of the elements of a scene. They are built from the spec's own names and order, so that they survive edits. */

import type { YamlPath } from '../core/issue.ts';

export const ids = {
  /** The n-th shape in the body. */
  shape: (piece: string, index: number): string => `${piece}/body-${index}`,
  /** The holes in the n-th shape of the body, or those left between its shapes. */
  holes: (piece: string, index: number | 'between'): string => `${piece}/holes-${index}`,
  /** The n-th cut-out. */
  cut: (piece: string, index: number): string => `${piece}/cut-${index}`,
  /** The n-th mark, counting engravings and scores together. */
  mark: (piece: string, index: number): string => `${piece}/mark-${index}`,
  /** The n-th hanger. */
  hanger: (piece: string, index: number): string => `${piece}/hanger-${index}`,
  hangerHole: (piece: string, index: number): string => `${piece}/hanger-hole-${index}`,
  /** The shape that the one with this id is fitted into or placed on. */
  area: (id: string): string => `${id}/area`,
  ghost: (path: YamlPath): string => `ghost/${path.join('/')}`,
  outer: (piece: string): string => `${piece}/outer`,
};

/** Offset in the spec's text at which a path stands. */
export type SourceOf = (path: YamlPath) => number;
