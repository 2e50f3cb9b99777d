/**
 * What the extension host and the preview's page say to each other. The page imports this file and nothing else of `src/`;
 * it holds types and plain constants only.
 */

import type { Severity } from '../core/issue-kinds.ts';
import type { Picture } from '../language/hover/picture.ts';
import type { StockLook } from '../look/stock-look.ts';
import type { Operation } from '../tag/tag.ts';

export type { Operation, Severity };

/** How a file was looked at last. */
export interface RememberedView {
  readonly arrangement: string;
  readonly hiddenLayers: readonly string[];
  readonly hiddenPieces: readonly string[];
  /** `auto`: it opens on problems and closes without. */
  readonly dock: string;
}

/** What a strip shows of one tag of a batch. */
export interface BatchTag {
  /** Absent where nothing could be made. */
  readonly picture?: Picture;
  /** In mm, of what is glued together with the first piece. */
  readonly width?: number;
  readonly height?: number;
  readonly problems: number;
  /** The gravest. */
  readonly severity?: Severity;
  /** Against the others. */
  readonly isTall: boolean;
}

/** What files can be made from the page. */
export const exportKinds = ['svg', 'formats', 'sheets', 'pack'] as const;
export type ExportKind = (typeof exportKinds)[number];

/** SVG path data in mm with y down, already in place on the tag: closed rings as `M`, `l` and `z`. */
export type PathData = string;

/** x and y in mm, y down. */
export type ScenePoint = readonly [number, number];

/** minX, minY, maxX, maxY in mm, y down. */
export type SceneBounds = readonly [number, number, number, number];

export interface ScenePart {
  /** Stable across recomputations of the same spec, so that the page patches instead of redrawing. */
  readonly id: string;
  /** What a person calls it: "Outer cut", "Hanger hole", "Engraving 2". */
  readonly label: string;
  readonly operation: Operation;
  readonly data: PathData;
  /** Offset in the spec's text that asked for it. */
  readonly source: number;
}

/** A shape that a piece's body is united from: not a path of the beam, but something to point at. */
export interface SceneShape {
  readonly id: string;
  readonly label: string;
  readonly data: PathData;
  readonly source: number;
  /** It is made of words: nothing may be written over it. */
  readonly isLettering?: boolean;
}

export interface SceneHanger {
  readonly id: string;
  readonly kind: 'ring' | 'hole' | 'slot' | 'keyhole';
  /** What lights up and can be clicked: the disc of a ring, else the opening. */
  readonly data: PathData;
  /** Centre of the opening. */
  readonly centre: ScenePoint;
  /** Smaller and larger inner width in mm; equal where the opening is round. */
  readonly size: number;
  readonly length: number;
  readonly source: number;
}

/** What a shape was put into or onto: seen while that shape is lit, or while one of the two is taken hold of. */
export interface SceneArea {
  readonly id: string;
  /** "“name” fits into “panel”". */
  readonly label: string;
  readonly data: PathData;
  /** What the shape's outline may fill, where it is fitted. */
  readonly room?: PathData;
  /** Ids of what is in it. */
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
  /** Of a piece that is cut from another stock than the tag's own. */
  readonly sheet?: SceneSheet;
  /** Largest first. */
  readonly shapes: readonly SceneShape[];
  /** In cutting order. What is cut, inner and outer, bounds the solid material. */
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
  /** Where it is seen: one point, or the two ends of a width; of several places, the worst. Empty: it has none on the drawing. */
  readonly points: readonly ScenePoint[];
  readonly width?: number;
  /** In degrees: how far off the points, of what holds the tag and of its balance, hang. */
  readonly angle?: number;
  /** The other places of the same problem. */
  readonly others?: readonly ScenePlace[];
  /** Of a batch, the row it was found in, where that is another than the one drawn. */
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

/** What can be moved by hand, as one place in the text. */
export interface SceneGrip {
  readonly id: string;
  readonly label: string;
  /** Ids of what moves: shapes, parts, hangers and areas. */
  readonly parts: readonly string[];
  /** True where dragging it moves it; else it must be chosen first. */
  readonly free: boolean;
  /** False where all the rest of the tag goes along with it: moving it would change nothing. */
  readonly moves: boolean;
  /** In which directions its size can be changed. */
  readonly axes: readonly ('width' | 'height')[];
  /** How far it has been moved by hand from its own place, in mm: right, up. */
  readonly nudge: ScenePoint;
}

/** In mm, of the text as it is. */
export type HandChange =
  | { readonly kind: 'move'; readonly right: number; readonly up: number }
  | { readonly kind: 'size'; readonly axis: 'width' | 'height'; readonly by: number };

/** A shape that is drawn although nothing of it would be cut. */
export interface SceneGhost {
  readonly id: string;
  /** What it is, and why it is not made: "plate: not used by any piece yet". */
  readonly label: string;
  readonly data: PathData;
  readonly source: number;
}

export interface Scene {
  readonly title: string;
  readonly units: 'mm' | 'in';
  readonly material?: string;
  /** What its maker says of how it looks. */
  readonly look?: StockLook;
  /** Of the sheet, in mm. */
  readonly thickness?: number;
  /** A CSS hex colour for each operation. */
  readonly colours: Readonly<Record<Operation, string>>;
  readonly pieces: readonly ScenePiece[];
  readonly ghosts: readonly SceneGhost[];
  /** None while the text is broken: there is nothing then that a change could be tried on. */
  readonly grips: readonly SceneGrip[];
  /** Of everything in place. */
  readonly bounds: SceneBounds;
}

/** The drawing as it now stands, and what is wrong with it. */
export interface SceneMessage {
  readonly type: 'scene';
  /** The spec's uri. */
  readonly source: string;
  readonly version: number;
  readonly fileName: string;
  /** What the tags of a batch go by, and which of them this is. */
  readonly batch?: { readonly labels: readonly string[]; readonly row: number };
  /** Absent when the spec has never been good enough to draw. */
  readonly scene?: Scene;
  /** True when `scene` is of an earlier version, because this one cannot be drawn. */
  readonly stale: boolean;
  /** The change by hand that is only being tried: the text is still as it was. */
  readonly trying?: { readonly grip: string; readonly change: HandChange };
  readonly pins: readonly ScenePin[];
  /** What the spec says is no matter, and why. */
  readonly accepted: readonly SceneAccepted[];
}

/** The cursor in the editor stands in the text that makes these pieces, parts and hangers: light them up. */
export interface HighlightMessage {
  readonly type: 'highlight';
  readonly source: string;
  readonly ids: readonly string[];
  /** True when the view may move to show them: the cursor was moved, not the text typed. */
  readonly follow: boolean;
}

/** What the hanger of a piece bears: an estimate, to be shown with its caution. */
export interface PieceLoad {
  readonly piece: string;
  readonly headline: string;
  readonly lines: readonly string[];
  readonly caution: string;
  /** What of it must be seen before anything is made. */
  readonly rule: string;
}

/** Where a piece has the least material between two edges. */
export interface SceneWall {
  readonly piece: string;
  readonly points: readonly [ScenePoint, ScenePoint];
  readonly width: number;
}

/** Where the middle of the beam runs when a piece is cut: half a kerf outside the finished outline, or inside its openings. */
export interface SceneCutPath {
  readonly piece: string;
  /** Width that the beam takes, in mm. */
  readonly kerf: number;
  readonly data: PathData;
}

/** Follows a scene once there is time to work it out; of the scene of the same version. */
export interface MeasuresMessage {
  readonly type: 'measures';
  readonly source: string;
  readonly version: number;
  readonly loads: readonly PieceLoad[];
  /** One for each piece that has such a place. */
  readonly walls: readonly SceneWall[];
  /** None unless they are wanted. */
  readonly cutPaths: readonly SceneCutPath[];
}

/** What all of it takes, fact by fact. Follows once the text has rested: planning the cuts is long work. */
export interface TakesMessage {
  readonly type: 'takes';
  readonly source: string;
  readonly version: number;
  readonly facts: readonly { readonly name: string; readonly value: string }[];
}

/** Every tag of the batch in short. Follows once all have been computed. */
export interface BatchMessage {
  readonly type: 'batch';
  readonly source: string;
  readonly version: number;
  /** By row. */
  readonly tags: readonly BatchTag[];
}

/** What may be done about the problem of a pin, in words; the answer to `ask-fixes`. */
export interface FixesMessage {
  readonly type: 'fixes';
  readonly source: string;
  readonly version: number;
  readonly pin: string;
  readonly titles: readonly string[];
}

/** A piece as a fix would make it. */
export interface OutcomePiece {
  readonly id: string;
  readonly title: string;
  readonly glueTo?: string;
  /** All that is cut: by the even-odd rule, the material. */
  readonly solid: PathData;
  readonly marks: PathData;
  readonly bounds: SceneBounds;
}

/** What the tag would be with a fix; the answer to `show-fix`. */
export interface OutcomeMessage {
  readonly type: 'outcome';
  readonly source: string;
  readonly version: number;
  readonly pin: string;
  readonly index: number;
  readonly pieces: readonly OutcomePiece[];
}

/** How many device pixels a millimetre of this screen has; absent where nobody has measured it. */
export interface ScreenMessage {
  readonly type: 'screen';
  readonly source: string;
  readonly devicePixelsPerMm?: number;
}

/** The spec is gone: closed without having been saved, or deleted. A scene follows if it ever comes back. */
export interface GoneMessage {
  readonly type: 'gone';
  readonly source: string;
  readonly fileName: string;
  /** Another spec that is open, which this preview may show instead: its file name. */
  readonly other?: string;
}

export type ToPage =
  | SceneMessage
  | HighlightMessage
  | MeasuresMessage
  | TakesMessage
  | BatchMessage
  | FixesMessage
  | ScreenMessage
  | GoneMessage
  | OutcomeMessage;

/** A change by hand of what the scene of this version has. */
export interface ChangeByHand {
  readonly source: string;
  readonly version: number;
  readonly grip: string;
  readonly change: HandChange;
}

/** A pin of the scene of this version. */
export interface PinOfVersion {
  readonly source: string;
  readonly version: number;
  readonly pin: string;
}

export type ToHost =
  /** The page can receive; also after it was hidden and made anew. */
  | { readonly type: 'ready' }
  /** Show this offset of the spec; `focus` moves the keyboard to the editor as well. */
  | { readonly type: 'reveal'; readonly source: string; readonly offset: number; readonly focus: boolean }
  | { readonly type: 'export'; readonly source: string; readonly what: ExportKind }
  /** Someone has read this caution: it need not stand in the open any more. */
  | { readonly type: 'read-caution'; readonly source: string; readonly caution: string }
  /** Draw this tag of the batch. */
  | { readonly type: 'show-row'; readonly source: string; readonly row: number }
  /** Whether the paths of the beam are shown, and so worth working out. */
  | { readonly type: 'want-cut-paths'; readonly source: string; readonly wanted: boolean }
  | ({ readonly type: 'ask-fixes' } & PinOfVersion)
  /** `index`: of the titles that were told. */
  | ({ readonly type: 'make-fix'; readonly index: number } & PinOfVersion)
  /** Tell what it would come to: it has not been chosen yet. */
  | ({ readonly type: 'show-fix'; readonly index: number } & PinOfVersion)
  /** Show what it would be; the newest is answered, those before it may be left out. */
  | ({ readonly type: 'try-change' } & ChangeByHand)
  /** Write it into the text, as one step that can be undone. */
  | ({ readonly type: 'make-change' } & ChangeByHand)
  /** How the file is looked at, to be kept for the next time. */
  | { readonly type: 'keep'; readonly source: string; readonly kept: RememberedView }
  /** The screen was measured, or is to be as if it had not been. */
  | { readonly type: 'screen'; readonly source: string; readonly devicePixelsPerMm?: number }
  /** Whether this preview goes along to whichever spec is being edited. */
  | { readonly type: 'follow'; readonly source: string; readonly follows: boolean }
  /** The spec is gone: show the other one that was named. */
  | { readonly type: 'show-other'; readonly source: string }
  /** Nothing is tried any more: show the text as it is. */
  | { readonly type: 'drop-change'; readonly source: string }
  /** The text, as if the keyboard were in its editor. */
  | { readonly type: 'undo' | 'redo'; readonly source: string };
