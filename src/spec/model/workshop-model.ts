/** What a tag is cut from, with what, and on what: a workshop's stock, machine, tie, sheet and way of writing files. */

import type { StockLook } from '../../look/stock-look.ts';
import type { Dated } from './measured-values.ts';

export interface Tie {
  readonly kind: 'twine' | 'ribbon' | 'split ring';
  /** Diameter of the twine or of the split ring, or width of the ribbon, in mm. */
  readonly size: number;
  /** Smallest round hole that the doubled tie passes through, in mm, if measured, and the day of the measurement. */
  readonly opening?: number;
  readonly openingOn?: string;
}

/** The material that the tag is cut from; lengths in mm. */
export interface Stock {
  /** Its name under `stocks`; absent if it is written in place. */
  readonly name?: string;
  readonly material?: string;
  readonly thickness?: number;
  /** Width the beam removes when cutting; the greater one if it differs by operation. */
  readonly kerf: number;
  /** Kerfs by operation, if given so. `engrave` is the width of an engraved line. */
  readonly kerfs?: Readonly<Record<'outer' | 'inner' | 'engrave', number>>;
  /** Narrowest width of material to rely on. */
  readonly minWeb: number;
  /** Narrowest width that survives cutting and handling if nothing pulls at it; at most `minWeb`. */
  readonly leastWeb: number;
  /** Default width of the material that a hanger adds or leaves. */
  readonly hangerWeb: number;
  /** Smallest x-height that can be read when engraved, if measured. */
  readonly minXHeight?: number;
  /** In kg/m³, only if the spec gives it; published values are not filled in. */
  readonly density?: number;
  readonly price?: Price;
  readonly measured?: Measured;
  /** The maker's own reminder for the bench. */
  readonly caution?: string;
  readonly look?: StockLook;
  /** Days on which values were measured, by key, in the form year-month-day. */
  readonly measuredOn?: Readonly<Partial<Record<Dated, string>>>;
  /** Whether each value is given rather than a default; absent if there is no stock at all. */
  readonly stated?: { readonly kerf: boolean; readonly minWeb: boolean };
}

/** A neck of the stock that was loaded until it broke. */
export interface Measured {
  /** In N. */
  readonly breaksAt: number;
  /** Width, in mm. */
  readonly neck: number;
}

export interface Price {
  readonly amount: number;
  readonly per: 'sheet' | 'm2' | 'ft2';
  readonly currency?: string;
}

/** Speeds in mm/s, by operation if known; `acceleration` in mm/s², `hatch` in mm. */
export interface Machine {
  /** Its name under `machines`; absent if it is written in place. */
  readonly name?: string;
  readonly cut?: number;
  readonly score?: number;
  readonly engrave?: number;
  readonly travel: number;
  readonly acceleration: number;
  /** The largest sudden change of velocity at a corner, in mm/s. */
  readonly cornerJump: number;
  /** Distance between the lines of an engraved area, in mm. */
  readonly hatch: number;
  readonly passes: Readonly<Record<'cut' | 'score' | 'engrave', number>>;
  /** The settings as the maker writes them. */
  readonly power?: Readonly<Partial<Record<'cut' | 'score' | 'engrave', string>>>;
}

/** As given in the spec; missing values get their defaults when files are written. */
export interface LineStyle {
  /** #RRGGBB. */
  readonly color?: string;
  /** In mm. */
  readonly lineWidth?: number;
  readonly layer?: string;
}

export interface Output {
  /** Whether every engraved entry is on a layer of its own. */
  readonly engraveEach?: boolean;
  /** Whether cuts run half a kerf beside the finished outline. */
  readonly compensate: boolean;
  /** The number of places on an outline that are left uncut, and the width that stays joined at each, in mm. */
  readonly tabs?: { readonly count: number; readonly width: number };
  /** Width of the proof picture, in pixels. */
  readonly pictureWidth: number;
  readonly styles: Readonly<Partial<Record<'engrave' | 'score' | 'cut-inner' | 'cut-outer', LineStyle>>>;
}

/** The sheets that tags are cut from, in mm. */
export interface Sheet {
  readonly width: number;
  readonly height: number;
  /** Left free along every edge. */
  readonly margin: number;
  /** Material left between two pieces. */
  readonly gap: number;
  readonly turn: 'never' | 'half' | 'quarter';
  /** Number of copies of each tag. */
  readonly copies: number;
}
