/** A tag as the preview's page draws it. The page imports this, so it holds types only. */

import type { Severity } from '../core/issue-kinds.ts';
import type { StockLook } from '../look/stock-look.ts';
import type { Operation } from '../tag/tag.ts';

/** SVG path data in mm, y down, in the tag's coordinates: closed rings as `M`, `l` and `z`. */
export type PathData = string;

/** x and y in mm, y down. */
export type ScenePoint = readonly [number, number];

/** minX, minY, maxX, maxY in mm, y down. */
export type SceneBounds = readonly [number, number, number, number];

export interface ScenePart {
  /** Stable across recomputations of the same spec, so that the page patches its drawing instead of rebuilding it. */
  readonly id: string;
  /** Shown to the user: "Outer cut", "Hanger hole", "Engraving “words”". */
  readonly label: string;
  readonly operation: Operation;
  readonly data: PathData;
  /** Offset in the spec's text of whatever made it. */
  readonly source: number;
}

/** A shape in the union that forms a piece's body: not a path of the beam, but it can be pointed at. */
export interface SceneShape {
  readonly id: string;
  readonly label: string;
  readonly data: PathData;
  readonly source: number;
  /** Whether it is lettering, which labels must not cover. */
  readonly isLettering?: boolean;
}

export interface SceneHanger {
  readonly id: string;
  readonly kind: 'ring' | 'hole' | 'slot' | 'keyhole';
  /** The highlighted and clickable area: the disc of a ring, else the opening. */
  readonly data: PathData;
  /** Centre of the opening. */
  readonly centre: ScenePoint;
  /** Smaller and larger inner width in mm; equal if the opening is round. */
  readonly size: number;
  readonly length: number;
  readonly source: number;
}

/**
 * The shape that others are fitted into or placed on: visible while one of those is highlighted or either is selected.
 */
export interface SceneArea {
  readonly id: string;
  /** "“name” fits into “panel”". */
  readonly label: string;
  readonly data: PathData;
  /** Where a fitted shape's outline may lie; absent if the shape is placed, not fitted. */
  readonly room?: PathData;
  /** Ids of what it holds. */
  readonly holds: readonly string[];
  readonly source: number;
}

export interface SceneSheet {
  readonly material?: string;
  readonly look?: StockLook;
  /** In mm. */
  readonly thickness?: number;
}

export interface ScenePiece {
  readonly id: string;
  readonly title: string;
  readonly glueTo?: string;
  /** For a piece cut from a different stock than the tag's. */
  readonly sheet?: SceneSheet;
  /** Whether its grain runs up and down rather than from left to right. */
  readonly hasUprightGrain?: true;
  /** Largest first. */
  readonly shapes: readonly SceneShape[];
  /** In cutting order. The inner and outer cuts bound the solid material. */
  readonly parts: readonly ScenePart[];
  readonly hangers: readonly SceneHanger[];
  readonly areas: readonly SceneArea[];
  /** Centre of gravity. */
  readonly balance: ScenePoint;
  readonly bounds: SceneBounds;
  readonly width: number;
  readonly height: number;
  readonly partCount: number;
  readonly holeCount: number;
  readonly source: number;
}

export interface ScenePlace {
  readonly points: readonly ScenePoint[];
  readonly width?: number;
}

export interface ScenePin {
  readonly id: string;
  readonly code: string;
  readonly severity: Severity;
  readonly message: string;
  readonly piece?: string;
  /**
   * Where to show it: one point, or the two ends of a width; if there are several places, the worst. Empty if it has no
   * place on the drawing.
   */
  readonly points: readonly ScenePoint[];
  readonly width?: number;
  /**
   * Tilt in degrees from the intended orientation; `points` are then the point of support and the centre of gravity.
   */
  readonly angle?: number;
  /** The other places of the same problem. */
  readonly others?: readonly ScenePlace[];
  /** In a batch, the row it was found in, if not the one drawn. */
  readonly row?: number;
  /** 1-based line in the spec. */
  readonly line: number;
  readonly source: number;
}

/** A finding that a comment in the spec accepts. */
export interface SceneAccepted {
  readonly id: string;
  readonly code: string;
  readonly message: string;
  readonly reason: string;
  /** 1-based line in the spec. */
  readonly line: number;
  readonly source: number;
}

/** Something that can be moved or resized by hand, tied to one place in the text. */
export interface SceneGrip {
  readonly id: string;
  readonly label: string;
  /** Ids of everything that moves with it: shapes, parts, hangers and areas. */
  readonly parts: readonly string[];
  /** Whether it can be dragged at once; otherwise it must be selected first. */
  readonly free: boolean;
  /** False if the rest of the tag would move along, so that moving it changes nothing. */
  readonly moves: boolean;
  /** Directions in which it can be resized. */
  readonly axes: readonly ('width' | 'height')[];
  /** What sets its size in any other direction, and what to change instead, in words; empty if there is none. */
  readonly sizedBy: string;
  /** Its nudge from its original place, in mm: right, up. */
  readonly nudge: ScenePoint;
}

/** In mm on the drawing, relative to what the text says now. */
export type HandChange =
  | { readonly kind: 'move'; readonly right: number; readonly up: number }
  | { readonly kind: 'size'; readonly axis: 'width' | 'height'; readonly by: number };

/** A shape that is drawn although no part of it would be cut. */
export interface SceneGhost {
  readonly id: string;
  /** Its name and why it is not made: "plate: not used by any piece yet". */
  readonly label: string;
  readonly data: PathData;
  readonly source: number;
}

export interface Scene {
  readonly title: string;
  readonly units: 'mm' | 'in';
  readonly material?: string;
  readonly look?: StockLook;
  /** Sheet thickness in mm. */
  readonly thickness?: number;
  /** CSS hex colour of each operation. */
  readonly colours: Readonly<Record<Operation, string>>;
  readonly pieces: readonly ScenePiece[];
  readonly ghosts: readonly SceneGhost[];
  /** Empty while the text is broken, as no change can be tried on it then. */
  readonly grips: readonly SceneGrip[];
  /** Bounds of everything, with the pieces in place. */
  readonly bounds: SceneBounds;
}
