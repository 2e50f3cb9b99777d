/**
 * Messages between the extension host and the preview's page. The page imports this file and nothing else from `src/`,
 * so it holds types and plain constants only.
 */

import type { Severity } from '../core/issue-kinds.ts';
import type { Picture } from '../language/hover/picture.ts';
import type { StockLook } from '../look/stock-look.ts';
import type { Operation } from '../tag/tag.ts';

export type { Operation, Severity };

/** View settings of a file, restored when it is opened again. */
export interface RememberedView {
  readonly arrangement: string;
  readonly hiddenLayers: readonly string[];
  readonly hiddenPieces: readonly string[];
  /** `auto`: opens when there are problems and closes when there are none. */
  readonly dock: string;
}

/** One tag of a batch, as the strip shows it. */
export interface BatchTag {
  /** Absent if nothing could be made. */
  readonly picture?: Picture;
  /** In mm, over everything glued together with the first piece. */
  readonly width?: number;
  readonly height?: number;
  readonly problems: number;
  /** Severity of its gravest problem. */
  readonly severity?: Severity;
  /** Whether it is much taller than the other tags. */
  readonly isTall: boolean;
}

/** Exports that the page offers. */
export const exportKinds = ['svg', 'formats', 'sheets', 'pack'] as const;
export type ExportKind = (typeof exportKinds)[number];

/** SVG path data in mm, y down, in the tag's coordinates: closed rings as `M`, `l` and `z`. */
export type PathData = string;

/** x and y in mm, y down. */
export type ScenePoint = readonly [number, number];

/** minX, minY, maxX, maxY in mm, y down. */
export type SceneBounds = readonly [number, number, number, number];

export interface ScenePart {
  /** Stable across recomputations of the same spec, so that the page patches its drawing instead of rebuilding it. */
  readonly id: string;
  /** Shown to the user: "Outer cut", "Hanger hole", "Engraving 2". */
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

/** The present drawing and its problems. */
export interface SceneMessage {
  readonly type: 'scene';
  /** URI of the spec. */
  readonly source: string;
  readonly version: number;
  readonly fileName: string;
  /** Labels of the batch's tags, and the row of this one. */
  readonly batch?: { readonly labels: readonly string[]; readonly row: number };
  /** Absent if no version of the spec has been drawable so far. */
  readonly scene?: Scene;
  /** True if `scene` is from an earlier version because this one cannot be drawn. */
  readonly stale: boolean;
  /** A change by hand that is only being tried: the text is still unchanged. */
  readonly trying?: { readonly grip: string; readonly change: HandChange };
  readonly pins: readonly ScenePin[];
  /** Problems that the spec accepts, each with its reason. */
  readonly accepted: readonly SceneAccepted[];
}

/** Sent when the cursor moves: highlights the pieces, parts and hangers that the text around it makes. */
export interface HighlightMessage {
  readonly type: 'highlight';
  readonly source: string;
  readonly ids: readonly string[];
  /** True if the view may move to show them: the cursor was moved, not the text typed. */
  readonly follow: boolean;
}

/** Estimated load of a piece's hanger; always shown with its caution. */
export interface PieceLoad {
  readonly piece: string;
  readonly headline: string;
  readonly lines: readonly string[];
  readonly caution: string;
  /** The part of the caution that must be seen before anything is made. */
  readonly rule: string;
}

/** The narrowest wall of material in a piece. */
export interface SceneWall {
  readonly piece: string;
  readonly points: readonly [ScenePoint, ScenePoint];
  readonly width: number;
}

/** Path of the middle of the beam: half a kerf outside the finished outline, or inside the openings. */
export interface SceneCutPath {
  readonly piece: string;
  /** Kerf, in mm. */
  readonly kerf: number;
  readonly data: PathData;
}

/** Follows the scene of the same version once there is time to compute it. */
export interface MeasuresMessage {
  readonly type: 'measures';
  readonly source: string;
  readonly version: number;
  readonly loads: readonly PieceLoad[];
  /** One for each piece that has a narrow wall. */
  readonly walls: readonly SceneWall[];
  /** Empty unless the page asked for them. */
  readonly cutPaths: readonly SceneCutPath[];
}

/**
 * What the job takes (time, material, cost), fact by fact. Sent after a pause in typing, because planning the cuts
 * takes long.
 */
export interface EstimateMessage {
  readonly type: 'takes';
  readonly source: string;
  readonly version: number;
  readonly facts: readonly { readonly name: string; readonly value: string }[];
}

/** A short entry for every tag of the batch. Sent once all have been computed. */
export interface BatchMessage {
  readonly type: 'batch';
  readonly source: string;
  readonly version: number;
  /** Index is the row. */
  readonly tags: readonly BatchTag[];
}

/** Titles of the fixes for a pin's problem; the answer to `ask-fixes`. */
export interface FixesMessage {
  readonly type: 'fixes';
  readonly source: string;
  readonly version: number;
  readonly pin: string;
  readonly titles: readonly string[];
}

/** A piece as a fix would leave it. */
export interface OutcomePiece {
  readonly id: string;
  readonly title: string;
  readonly glueTo?: string;
  /** All cut paths: the material, by the even-odd rule. */
  readonly solid: PathData;
  readonly marks: PathData;
  readonly bounds: SceneBounds;
}

/** The tag as a fix would leave it; the answer to `show-fix`. */
export interface OutcomeMessage {
  readonly type: 'outcome';
  readonly source: string;
  readonly version: number;
  readonly pin: string;
  readonly index: number;
  readonly pieces: readonly OutcomePiece[];
}

/** Device pixels per mm of this screen; absent if it has not been measured. */
export interface ScreenMessage {
  readonly type: 'screen';
  readonly source: string;
  readonly devicePixelsPerMm?: number;
}

/** The spec is gone: closed without having been saved, or deleted. If it comes back, a scene follows. */
export interface GoneMessage {
  readonly type: 'gone';
  readonly source: string;
  readonly fileName: string;
  /** File name of another open spec that this preview could show instead. */
  readonly other?: string;
}

export type ToPage =
  | SceneMessage
  | HighlightMessage
  | MeasuresMessage
  | EstimateMessage
  | BatchMessage
  | FixesMessage
  | ScreenMessage
  | GoneMessage
  | OutcomeMessage;

/** A change by hand to the scene of this version. */
export interface ChangeByHand {
  readonly source: string;
  readonly version: number;
  readonly grip: string;
  readonly change: HandChange;
}

/** A pin in the scene of this version. */
export interface PinOfVersion {
  readonly source: string;
  readonly version: number;
  readonly pin: string;
}

export type ToHost =
  /** The page is ready to receive; sent again if it was hidden and recreated. */
  | { readonly type: 'ready' }
  /** Show this offset of the spec; `focus` also moves keyboard focus to the editor. */
  | { readonly type: 'reveal'; readonly source: string; readonly offset: number; readonly focus: boolean }
  | { readonly type: 'export'; readonly source: string; readonly what: ExportKind }
  /** The user has read this caution, so it can be collapsed. */
  | { readonly type: 'read-caution'; readonly source: string; readonly caution: string }
  /** Draw this tag of the batch. */
  | { readonly type: 'show-row'; readonly source: string; readonly row: number }
  /** Whether beam paths are shown and therefore worth computing. */
  | { readonly type: 'want-cut-paths'; readonly source: string; readonly wanted: boolean }
  | ({ readonly type: 'ask-fixes' } & PinOfVersion)
  /** `index`: among the titles sent. */
  | ({ readonly type: 'make-fix'; readonly index: number } & PinOfVersion)
  /** Send the outcome of this fix without applying it. */
  | ({ readonly type: 'show-fix'; readonly index: number } & PinOfVersion)
  /** Show the outcome of this change; only the latest needs an answer. */
  | ({ readonly type: 'try-change' } & ChangeByHand)
  /** Write the change into the text as one undoable edit. */
  | ({ readonly type: 'make-change' } & ChangeByHand)
  /** View settings of the file, to be remembered. */
  | { readonly type: 'keep'; readonly source: string; readonly kept: RememberedView }
  /** The screen was measured; without a value, the measurement is discarded. */
  | { readonly type: 'screen'; readonly source: string; readonly devicePixelsPerMm?: number }
  /** Whether this preview switches to whichever spec is being edited. */
  | { readonly type: 'follow'; readonly source: string; readonly follows: boolean }
  /** The spec is gone: show the other one that was offered. */
  | { readonly type: 'show-other'; readonly source: string }
  /** Cancel the change being tried and show the text as it is. */
  | { readonly type: 'drop-change'; readonly source: string }
  /** Undo or redo in the text, as if its editor had the focus. */
  | { readonly type: 'undo' | 'redo'; readonly source: string };
