/** Messages between the sheets page and its host. Lengths in mm; y runs down from the upper left corner of a sheet. */

import type { Units } from '../core/units.ts';
import type { PathData } from './scene.ts';

/** Drawing of a piece, shared by all of its copies, in coordinates of its own. */
export interface SheetShape {
  readonly id: string;
  readonly solid: PathData;
  readonly engraved: PathData;
  readonly scored: PathData;
  /** As #rrggbb. */
  readonly wood: string;
  readonly burn: string;
  readonly rim: string;
}

export type SheetBox = readonly [minX: number, minY: number, maxX: number, maxY: number];

export interface PieceOnSheet {
  /** Stays the same as long as the piece does, wherever it lies. */
  readonly id: string;
  readonly shape: string;
  /** Its number on the map of the sheets. */
  readonly number: number;
  /** That number as it is written on the piece, where it hides least: its ground on the sheet, and the height of its font. */
  readonly sign: { readonly text: string; readonly box: SheetBox; readonly size: number };
  readonly name: string;
  /** Empty if it belongs to no order. */
  readonly order: string;
  readonly rush: boolean;
  /** Whether its tag has an error. */
  readonly faulty: boolean;
  /** Whether the text fixes its place. */
  readonly fixed: boolean;
  /** In degrees, counter-clockwise. */
  readonly turned: number;
  /** Distance by which its cut reaches beyond its box. */
  readonly beyond: number;
  /** Transform from the shape to the sheet, as in SVG. */
  readonly matrix: readonly [number, number, number, number, number, number];
  /** Bounds of the finished outline. */
  readonly box: SheetBox;
}

export interface SheetOnPage {
  readonly id: string;
  readonly name: string;
  /** Stock of the sheet: pieces move only between sheets of the same stock. */
  readonly stock: string;
  readonly width: number;
  readonly height: number;
  /** Width kept free along the edges. */
  readonly margin: number;
  readonly outline: PathData;
  /** Share of its area in use, from 0 to 1. */
  readonly filled: number;
  readonly pieces: readonly PieceOnSheet[];
}

/** A problem that keeps tags from being cut. */
export interface SheetProblem {
  /** Tags of the batch that have it; empty if there is only one tag. */
  readonly labels: readonly string[];
  readonly message: string;
  /** The file it is in, as the text names it; absent if it is in the text itself. */
  readonly file?: string;
  readonly line: number;
  readonly offset: number;
  readonly row: number;
}

/** A figure of a layout, in the unit that it is shown in. */
export interface LayoutFigure {
  readonly name: string;
  readonly value: number;
  /** Empty for what is counted. */
  readonly unit: string;
  readonly digits: number;
}

export interface SheetsScene {
  readonly title: string;
  readonly units: Units;
  /** Whether pieces can be pinned, moved and turned by hand. */
  readonly pins: boolean;
  /** Search effort for the layout, as a multiple of the usual; absent if the text cannot set it. */
  readonly effort?: number;
  /** Gap between pieces on the sheets of each stock, and the largest sensible gap. */
  readonly gaps: readonly { readonly stock: string; readonly gap: number; readonly most: number }[];
  readonly sheets: readonly SheetOnPage[];
  readonly facts: readonly { readonly name: string; readonly value: string }[];
  /** By which two layouts are compared; empty, as the facts, as long as the layout is looked for. */
  readonly figures: readonly LayoutFigure[];
  readonly problems: readonly SheetProblem[];
  /** Text above the sheets. */
  readonly warning: string;
}

export type LayoutState = 'improving' | 'stopped' | 'done';

export type ToSheetsPage =
  | { readonly type: 'waiting' }
  | { readonly type: 'nothing'; readonly why: string }
  /** The spec gives no sheet size: offers sizes to choose from, in its units. */
  | {
      readonly type: 'sizes';
      readonly sizes: readonly { readonly width: number; readonly height: number }[];
      readonly units: Units;
    }
  /** A new layout is being computed for what is shown. */
  | { readonly type: 'busy' }
  /** `shapes`: those not sent before. `state`: whether the layout may still improve, was stopped early or is final. */
  | {
      readonly type: 'sheets';
      readonly scene: SheetsScene;
      readonly shapes: readonly SheetShape[];
      readonly state: LayoutState;
    }
  /** A layout kept for comparison; without a scene, none is kept. */
  | { readonly type: 'kept'; readonly scene?: SheetsScene; readonly shapes: readonly SheetShape[] }
  /** The pieces at the editor's cursor. */
  | { readonly type: 'light'; readonly pieces: readonly string[] };

/** Target of a piece's box: its lower left corner, from that of the sheet, and its rotation. */
export interface PinnedPlace {
  readonly piece: string;
  readonly sheet: string;
  readonly x: number;
  readonly y: number;
  readonly turned: number;
}

export type FromSheetsPage =
  | { readonly type: 'ready' }
  | { readonly type: 'export' }
  /** Show a problem: its file, if it is in another than the text, its offset there and its row of the batch. */
  | { readonly type: 'show'; readonly file?: string; readonly offset: number; readonly row: number }
  /** Show where a piece comes from; `focus` moves the keyboard there too. */
  | { readonly type: 'reveal'; readonly piece: string; readonly focus: boolean }
  | { readonly type: 'pin'; readonly places: readonly PinnedPlace[] }
  | { readonly type: 'unpin'; readonly pieces: readonly string[] }
  | { readonly type: 'undo'; readonly step: 'undo' | 'redo' }
  /** Stop the search at the best layout so far, or restart it and let it finish. */
  | { readonly type: 'stop' }
  | { readonly type: 'again' }
  /** Keep the layout shown for comparison, or forget the kept one. */
  | { readonly type: 'keep' }
  | { readonly type: 'forget' }
  | { readonly type: 'restore' }
  /** As a multiple of the usual. */
  | { readonly type: 'effort'; readonly effort: number }
  | { readonly type: 'gap'; readonly stock: string; readonly gap: number }
  /** Sheet size, in the units of the spec. */
  | { readonly type: 'size'; readonly width: number; readonly height: number };

/** Messages about the text behind the sheets, whichever it is. */
export type AskedOfText = Exclude<
  FromSheetsPage,
  { readonly type: 'ready' | 'reveal' | 'undo' | 'stop' | 'keep' | 'forget' | 'restore' }
>;
