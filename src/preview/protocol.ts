/**
 * What the extension host and the preview's page say to each other. The page imports this file and nothing else of `src/`;
 * it holds types and plain constants only.
 */

import type { Severity } from '../issue.ts';
import type { Operation } from '../tag/tag.ts';

/** SVG path data in mm with y down, already in place on the tag. */
export type PathData = string;

export interface ScenePart {
  /** Stable across recomputations of the same spec, so that the page patches instead of redrawing. */
  readonly id: string;
  readonly operation: Operation;
  readonly data: PathData;
  /** Offset in the spec's text that asked for it. */
  readonly source: number;
}

export interface ScenePiece {
  readonly id: string;
  readonly title: string;
  readonly glueTo?: string;
  /** The whole finished outline with its holes, filled by the even-odd rule: the solid material. */
  readonly solid: PathData;
  /** In cutting order. */
  readonly parts: readonly ScenePart[];
  /** minX, minY, maxX, maxY in mm, y down. */
  readonly bounds: readonly [number, number, number, number];
  readonly width: number;
  readonly height: number;
  readonly partCount: number;
  readonly holeCount: number;
  readonly source: number;
}

export interface ScenePin {
  readonly id: string;
  readonly code: string;
  readonly severity: Severity;
  readonly message: string;
  readonly piece?: string;
  /** Where it is seen, mm, y down. One point, or the two ends of a width. Empty: it has no place on the drawing. */
  readonly points: readonly (readonly [number, number])[];
  readonly width?: number;
  /** 1-based line in the spec. */
  readonly line: number;
  readonly source: number;
}

export interface Scene {
  readonly title: string;
  readonly units: 'mm' | 'in';
  readonly material?: string;
  readonly pieces: readonly ScenePiece[];
  /** minX, minY, maxX, maxY of everything in place, mm, y down. */
  readonly bounds: readonly [number, number, number, number];
}

export type ToPage =
  | {
      readonly type: 'scene';
      /** The spec's uri. */
      readonly source: string;
      readonly version: number;
      readonly fileName: string;
      /** The drawing; absent when the spec has never been good enough to draw. */
      readonly scene?: Scene;
      /** True when `scene` is of an earlier version, because this one cannot be drawn. */
      readonly stale: boolean;
      readonly pins: readonly ScenePin[];
    }
  /** The cursor in the editor stands in the text of this offset range; light up what it made. */
  | { readonly type: 'highlight'; readonly source: string; readonly start: number; readonly end: number };

export type ToHost =
  | { readonly type: 'ready' }
  | { readonly type: 'reveal'; readonly source: string; readonly offset: number }
  | { readonly type: 'export'; readonly source: string };
