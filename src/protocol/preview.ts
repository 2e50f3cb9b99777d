/**
 * Messages between the extension host and the preview's page. The page imports this file, so it holds types and plain
 * constants only.
 */

import type { Severity } from '../core/issue-kinds.ts';
import type { Picture } from '../language/hover/picture.ts';
import type { Operation } from '../tag/tag.ts';
import type { PathData, ScenePoint, SceneBounds, ScenePin, SceneAccepted, HandChange, Scene } from './scene.ts';

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
  /** Whether its words are hard to read: told in so many words, as most tags of a batch may be a little thin. */
  readonly isHardToRead: boolean;
  /** Whether it is much taller than the other tags. */
  readonly isTall: boolean;
}

/** Exports that the page offers. */
export const exportKinds = ['svg', 'formats', 'sheets', 'pack', 'job'] as const;
export type ExportKind = (typeof exportKinds)[number];

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
  /** How many other tags of the batch are still being checked: their problems are not among the pins yet. */
  readonly toCheck?: number;
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
  /** Of the fixes; `make-fix` counts the acceptance as the one after them. */
  readonly titles: readonly string[];
  /** Title of accepting the problem, where it may be accepted. */
  readonly accept?: string;
  /** Why no change is offered that would help most tags of a batch. */
  readonly inTheWay?: string;
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

/** A list at the top of the window lies over the page, whose drawing keeps below it: its rows, or 0 without a list. */
export interface CoveredMessage {
  readonly type: 'covered';
  readonly source: string;
  readonly rows: number;
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
  | CoveredMessage
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
