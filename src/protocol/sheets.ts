/** What the page of sheets and its host say to each other. Lengths in mm; y runs down from the upper left corner of a sheet. */

import type { Units } from '../core/units.ts';
import type { PathData } from './preview.ts';

/** How a piece is drawn, once for all of its copies, in coordinates of its own. */
export interface SheetShape {
  readonly id: string;
  readonly solid: PathData;
  readonly engraved: PathData;
  readonly scored: PathData;
  /** Where a number hides nothing, and how tall it may be. */
  readonly number: readonly [x: number, y: number, size: number];
  /** As #rrggbb. */
  readonly wood: string;
  readonly burn: string;
  readonly rim: string;
}

export type SheetBox = readonly [minX: number, minY: number, maxX: number, maxY: number];

export interface PieceOnSheet {
  /** The same as long as the piece is the same, wherever it lies. */
  readonly id: string;
  readonly shape: string;
  /** On the map of the sheets. */
  readonly number: number;
  readonly name: string;
  /** Empty where nobody has ordered it. */
  readonly order: string;
  readonly rush: boolean;
  /** Its tag has an error. */
  readonly faulty: boolean;
  /** It lies where the text says. */
  readonly fixed: boolean;
  /** In degrees, against the clock. */
  readonly turned: number;
  /** How far its cut reaches beyond its box. */
  readonly beyond: number;
  /** From the shape to the sheet, as in SVG. */
  readonly matrix: readonly [number, number, number, number, number, number];
  /** Round the finished outline. */
  readonly box: SheetBox;
}

export interface SheetOnPage {
  readonly id: string;
  readonly name: string;
  /** What it is a sheet of: pieces go from one to another of the same. */
  readonly stock: string;
  readonly width: number;
  readonly height: number;
  /** Kept free along its edges. */
  readonly margin: number;
  readonly outline: PathData;
  /** Of its area, from 0 to 1. */
  readonly filled: number;
  readonly pieces: readonly PieceOnSheet[];
}

/** Something that keeps tags from being cut. */
export interface SheetProblem {
  /** Tags of the batch that have it; none where there is only one tag. */
  readonly labels: readonly string[];
  readonly message: string;
  readonly line: number;
  readonly offset: number;
  readonly row: number;
}

export interface SheetsScene {
  readonly title: string;
  readonly units: Units;
  /** Whether pieces may be pinned, moved and turned by hand. */
  readonly pins: boolean;
  /** How long a layout is looked for, times the usual; absent where that is not for the text to say. */
  readonly effort?: number;
  /** Material between two pieces on the sheets of each stock, and the most that there is sense in. */
  readonly gaps: readonly { readonly stock: string; readonly gap: number; readonly most: number }[];
  readonly sheets: readonly SheetOnPage[];
  readonly facts: readonly { readonly name: string; readonly value: string }[];
  readonly problems: readonly SheetProblem[];
  /** What stands above them. */
  readonly warning: string;
}

export type LayoutState = 'improving' | 'stopped' | 'done';

export type ToSheetsPage =
  | { readonly type: 'waiting' }
  | { readonly type: 'nothing'; readonly why: string }
  /** The spec does not say how large its sheets are: sizes to choose from, in its units. */
  | {
      readonly type: 'sizes';
      readonly sizes: readonly { readonly width: number; readonly height: number }[];
      readonly units: Units;
    }
  /** What is shown is being laid out again. */
  | { readonly type: 'busy' }
  /** `shapes`: those that have not been sent yet. `state`: whether it may yet become better, or was stopped before. */
  | {
      readonly type: 'sheets';
      readonly scene: SheetsScene;
      readonly shapes: readonly SheetShape[];
      readonly state: LayoutState;
    }
  /** A layout that was kept to be compared with; without one there is none any more. */
  | { readonly type: 'kept'; readonly scene?: SheetsScene; readonly shapes: readonly SheetShape[] }
  /** What the editor's cursor stands in. */
  | { readonly type: 'light'; readonly pieces: readonly string[] };

/** Where the lower left corner of a piece's box is to lie, from that of the sheet, and how it is turned. */
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
  /** A problem: where in the text it is, and of which row of a batch. */
  | { readonly type: 'show'; readonly offset: number; readonly row: number }
  /** A piece: where it comes from. `focus`: the keyboard goes there too. */
  | { readonly type: 'reveal'; readonly piece: string; readonly focus: boolean }
  | { readonly type: 'pin'; readonly places: readonly PinnedPlace[] }
  | { readonly type: 'unpin'; readonly pieces: readonly string[] }
  | { readonly type: 'undo'; readonly step: 'undo' | 'redo' }
  /** The layout that is looked for: as good as it is now, or looked for again to the end. */
  | { readonly type: 'stop' }
  | { readonly type: 'again' }
  /** What is shown, to be compared with; to be forgotten; its text to be put back. */
  | { readonly type: 'keep' }
  | { readonly type: 'forget' }
  | { readonly type: 'restore' }
  /** Times the usual. */
  | { readonly type: 'effort'; readonly effort: number }
  | { readonly type: 'gap'; readonly stock: string; readonly gap: number }
  /** Sheets so large, in the units of the spec. */
  | { readonly type: 'size'; readonly width: number; readonly height: number };

/** What is about the text that the sheets are of, whichever that is. */
export type AskedOfText = Exclude<
  FromSheetsPage,
  { readonly type: 'ready' | 'reveal' | 'undo' | 'stop' | 'keep' | 'forget' | 'restore' }
>;
