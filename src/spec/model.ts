/** A spec that has been understood: lengths in mm, names resolved, nothing missing. */

import type { Corners } from '../geometry/clipper.ts';
import type { Point } from '../geometry/types.ts';
import type { YamlPath } from '../core/issue.ts';
import type { Units } from '../core/units.ts';
import type { StockLook } from '../look/stock-look.ts';
import type { Dated } from './measured-values.ts';
import type { ShapeOrName } from './types.generated.ts';

export type Side = 'top' | 'bottom' | 'left' | 'right';
export type Anchor = 'center' | Side | 'top-left' | 'top-right' | 'bottom-left' | 'bottom-right';
/** Outside the target, on that side of it. */
export type Beside = 'above' | 'below' | 'left of' | 'right of';
export type CentreRule = 'box' | 'mass' | 'eye' | 'x-height';

export interface Tie {
  readonly kind: 'twine' | 'ribbon';
  /** Diameter of the twine or width of the ribbon, in mm. */
  readonly size: number;
  /** Smallest round hole that it goes through doubled, in mm, where it was measured, and on which day. */
  readonly opening?: number;
  readonly openingOn?: string;
}

/** What the tag is cut from; lengths in mm. */
export interface Stock {
  /** The name it has under `stocks`; absent where it is written in place. */
  readonly name?: string;
  readonly material?: string;
  readonly thickness?: number;
  /** Width the beam removes in cutting; the greater one where it differs by operation. */
  readonly kerf: number;
  /** Where it is given by operation. `engrave`: the width of an engraved line. */
  readonly kerfs?: Readonly<Record<'outer' | 'inner' | 'engrave', number>>;
  /** Narrowest width of material that you rely on. */
  readonly minWeb: number;
  /** Narrowest width that survives cutting and handling where nothing pulls at it; at most `minWeb`. */
  readonly leastWeb: number;
  /** Width of what a hanger adds or leaves, where the spec does not say. */
  readonly hangerWeb: number;
  /** Smallest height of small letters that is read when engraved, where it was measured. */
  readonly minXHeight?: number;
  /** In kg/m³, as given; not what is published. */
  readonly density?: number;
  readonly price?: Price;
  readonly measured?: Measured;
  /** What the bench should be reminded of, in the maker's words. */
  readonly caution?: string;
  readonly look?: StockLook;
  /** Days on which values were measured, by their keys, as year-month-day. */
  readonly measuredOn?: Readonly<Partial<Record<Dated, string>>>;
  /** What is given rather than taken from a default; absent where there is no stock at all. */
  readonly says?: { readonly kerf: boolean; readonly minWeb: boolean };
}

/** A neck of the stock that was pulled until it broke. */
export interface Measured {
  /** In N. */
  readonly breaksAt: number;
  /** How wide it was, in mm. */
  readonly neck: number;
}

export interface Price {
  readonly amount: number;
  readonly per: 'sheet' | 'm2' | 'ft2';
  readonly currency?: string;
}

/** Speeds in mm/s, by operation where they are known; `acceleration` in mm/s², `hatch` in mm. */
export interface Machine {
  /** The name it has under `machines`; absent where it is written in place. */
  readonly name?: string;
  readonly cut?: number;
  readonly score?: number;
  readonly engrave?: number;
  readonly travel: number;
  readonly acceleration: number;
  /** The largest sudden change of velocity at a corner, in mm/s. */
  readonly cornerJump: number;
  /** Distance between the lines of an engraved area. */
  readonly hatch: number;
  readonly passes: Readonly<Record<'cut' | 'score' | 'engrave', number>>;
  /** As it is set by hand. */
  readonly power?: Readonly<Partial<Record<'cut' | 'score' | 'engrave', string>>>;
}

/** As given; what is left out takes its default where files are written. */
export interface LineStyle {
  /** #RRGGBB. */
  readonly color?: string;
  /** In mm. */
  readonly lineWidth?: number;
  readonly layer?: string;
}

export interface Output {
  /** Whether every entry that is engraved is on a layer of its own. */
  readonly engraveEach?: boolean;
  /** Whether cuts run half a kerf beside the finished outline. */
  readonly compensate: boolean;
  /** How many places of an outline are left uncut, and how much of it stays joined at each, in mm. */
  readonly tabs?: { readonly count: number; readonly width: number };
  /** Of the proof picture, in pixels. */
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
  /** How many of each tag are laid out. */
  readonly copies: number;
}

/** A shape, or only one member of it where it is a stack. */
export interface Target {
  readonly shape: Shape;
  readonly part?: string;
}

/** The circle a text stands on: by its radius in mm, or by the degrees that the text takes of it. */
export type TextArc = { readonly at: 'top' | 'bottom' } & ({ readonly radius: number } | { readonly sweep: number });

/** Lettering of single strokes, for lines that are followed once. */
export interface StrokesGenerator {
  readonly kind: 'strokes';
  readonly text: string;
  readonly size?: TextGenerator['size'];
  /** From line to line, in em. */
  readonly lineHeight?: number;
  readonly align: 'left' | 'center' | 'right';
}

export interface TextGenerator {
  readonly kind: 'text';
  readonly text: string;
  readonly font: string;
  /** Where letters are taken from that `font` lacks, in this order. */
  readonly fallbacks?: readonly string[];
  readonly weight: number;
  /** Whether the spec says so; otherwise the weight is only what is usual. */
  readonly weightAsked: boolean;
  readonly italic: boolean;
  /** Asked for by the em, or by the finished height of its capitals or small letters. */
  readonly size?: { readonly of: 'em' | 'capitals' | 'small letters'; readonly mm: number };
  readonly arc?: TextArc;
  readonly letterSpacingMm: number;
  /** How deep letters may lap in mm, where they slide together. */
  readonly overlap?: number;
  readonly lineHeight?: number;
  readonly align: 'left' | 'center' | 'right';
  /** Stands on the line that any words of its size would stand on, whatever letters it has. */
  readonly evenly?: boolean;
  readonly features: Readonly<Record<string, boolean>>;
}

export interface Line {
  /** Of the size of its letters, beside those of the other lines. */
  readonly share: number;
  readonly align: 'left' | 'center' | 'right';
  /** Over the top of an ellipse, heads outwards, or along its bottom, heads inwards. */
  readonly arc?: 'top' | 'bottom';
}

/** Plates that go by a name; lengths in mm. */
export type NamedPlate =
  | { readonly kind: 'oval'; readonly width: number; readonly height: number; readonly exponent: number }
  | { readonly kind: 'heart'; readonly width: number; readonly height: number }
  | {
      readonly kind: 'house';
      readonly width: number;
      readonly height: number;
      readonly roof: number;
      readonly eaves: number;
    }
  | {
      readonly kind: 'label';
      readonly width: number;
      readonly height: number;
      readonly cut: number;
      readonly end: Side;
    }
  | { readonly kind: 'ticket'; readonly width: number; readonly height: number; readonly bite: number }
  | {
      readonly kind: 'scalloped-rectangle';
      readonly width: number;
      readonly height: number;
      /** Lobes along a side, those at its two corners included. */
      readonly columns: number;
      readonly rows: number;
    }
  | { readonly kind: 'scalloped-disc'; readonly across: number; readonly lobes: number };

/** Lines along an outline; lengths in mm. */
export interface BorderGenerator {
  readonly kind: 'border';
  readonly shape: Shape;
  readonly inset: number;
  /** From the outer edge of the border inwards. */
  readonly lines: readonly { readonly from: number; readonly to: number }[];
  /** Of its corners, where they are rounded; what each takes of either side, where they are cut off. */
  readonly radius: number;
  readonly clip: number;
  /** What it keeps free round openings. */
  readonly clear: number;
}

/** How copies follow one another round a closed line, starting from its top: so many, so far apart, or both. */
export interface Round {
  readonly count?: number;
  /** In mm along the line. */
  readonly spacing?: number;
  /** Whether each stands as it was drawn; else it turns with the line. */
  readonly upright: boolean;
}

export interface RepeatGenerator {
  readonly kind: 'repeat';
  /** What is repeated, then the shape whose outline it follows. */
  readonly shapes: readonly [Shape] | readonly [Shape, Shape];
  readonly along:
    | {
        readonly kind: 'rows';
        readonly columns: number;
        readonly rows: number;
        readonly across: Point;
        readonly down: Point;
      }
    | (Round & { readonly kind: 'circle'; readonly diameter: number })
    | (Round & { readonly kind: 'outline'; readonly inset: number });
}

/** A tapered stick that carries a shape; lengths in mm. */
export interface StickGenerator {
  readonly kind: 'stick';
  readonly shape: Shape;
  /** Which way its point is. */
  readonly towards: 'down' | 'up' | 'left' | 'right';
  /** What is seen of it, from the edge of what it carries to its end. */
  readonly length: number;
  readonly width: number;
  /** How much of that tapers. */
  readonly point: number;
  /** How much material of what it carries it goes into. */
  readonly lap: number;
}

/** A QR code. */
export interface CodeGenerator {
  readonly kind: 'code';
  readonly text: string;
  /** How much of it may be damaged. */
  readonly correction: Correction;
  /** Its side without the clear zone round it, in mm; absent where a width, a height or a fit says it. */
  readonly size?: number;
}

export type Correction = 'low' | 'medium' | 'quartile' | 'high';

export type Generator =
  | TextGenerator
  | StrokesGenerator
  | CodeGenerator
  | BorderGenerator
  | StickGenerator
  | RepeatGenerator
  | { readonly kind: 'rectangle'; readonly width: number; readonly height: number; readonly radius: number }
  | { readonly kind: 'ellipse'; readonly width: number; readonly height: number }
  | { readonly kind: 'regular'; readonly sides: number; readonly across: number }
  | { readonly kind: 'points'; readonly points: readonly Point[] }
  | {
      readonly kind: 'arrow';
      readonly length: number;
      readonly width: number;
      readonly head: number;
      readonly tipDegrees: number;
      readonly tail: 'straight' | 'notched' | 'forked' | 'pointed';
      readonly notch: number;
    }
  | NamedPlate
  | {
      readonly kind: 'stack';
      readonly shapes: readonly Shape[];
      readonly towards: 'down' | 'up' | 'left' | 'right';
      readonly lap?: number;
    }
  | { readonly kind: 'path'; readonly data: string; readonly mmPerUnit: number; readonly asLines: boolean }
  | { readonly kind: 'drawing'; readonly file: string; readonly asLines: boolean }
  | {
      readonly kind: 'around';
      readonly shape: Shape;
      readonly by: number;
      readonly corners: Corners;
      readonly keepHoles: boolean;
      /** Width below which bays are closed, in mm. */
      readonly bays: number;
      /** Whether wider ones are closed as well, where several lines would have a backing each. */
      readonly together: boolean;
    }
  | { readonly kind: 'union' | 'difference' | 'intersection'; readonly shapes: readonly Shape[] }
  | {
      readonly kind: 'lines';
      /** Texts without a size of their own. */
      readonly shapes: readonly Shape[];
      readonly lines: readonly Line[];
      /** Between the ink of a line and that of the next, in mm. */
      readonly gap?: number;
      /** Of the largest line. */
      readonly size?: TextGenerator['size'];
      /** Set as if its lines had all letters, and standing on the line that any words of its size would stand on. */
      readonly evenly: boolean;
    }
  | { readonly kind: 'from'; readonly shape: Shape };

/** In mm, or as wide as the stock's `min_web`. */
export type HoldWidth = number | 'auto';

/** Where a shape is made as large as goes in; lengths in mm. */
export interface Fit extends Target {
  /** Left free along the outline of what it goes into. */
  readonly margin: number;
  /** Kept from the hangers, the cuts and the other marks of its piece. */
  readonly clear: number;
  /** In a batch, as large as on all other tags. */
  readonly sameSize: boolean;
  /** What it is made no larger than. */
  readonly atMost?: { readonly capitals?: number; readonly 'small letters'?: number; readonly width?: number };
}

/** What lettering a shape is by itself: a text, or the texts of its lines. */
export function textsOf(generator: Generator): readonly TextGenerator[] {
  if (generator.kind === 'text') return [generator];
  return generator.kind === 'lines' ? generator.shapes.flatMap((line) => textsOf(line.generator)) : [];
}

/** The shapes, and each line of those that are lines: whatever has a text of its own. */
export function withLines(shapes: Iterable<Shape>): Shape[] {
  return [...shapes].flatMap((shape) => [shape, ...(shape.generator.kind === 'lines' ? shape.generator.shapes : [])]);
}

/** In the order in which they are applied. */
export interface Modifiers {
  readonly tidy?: number;
  readonly grow?: number;
  /** Grown as much as `min_web` needs, which is known once it is made; `grow` is then absent. */
  readonly growAuto?: true;
  readonly corners: Corners;
  readonly width?: number;
  readonly height?: number;
  readonly fit?: Fit;
  /** Width in mm of what joins the parts of the shape. */
  readonly straps?: HoldWidth;
  readonly bridges?: { readonly width: HoldWidth; readonly sides: readonly Side[] };
  readonly rotate?: number;
  readonly mirror?: 'left-right' | 'up-down';
  /** `margin`: beside the target, the gap to it. */
  readonly place?: Target & { readonly at: Anchor | Beside; readonly margin: number; readonly by: CentreRule };
  readonly nudge?: Point;
}

export interface Shape {
  /** Its key under `shapes`; shapes written in place have none. */
  readonly name?: string;
  readonly path: YamlPath;
  readonly generator: Generator;
  readonly modifiers: Modifiers;
}

/** Finds the shapes that others are made from; one that cannot be had has been reported at `path`. */
export interface ShapeNames {
  byName(name: string, path: YamlPath): Shape | undefined;
  /** A name, or a shape written in place. */
  byRef(ref: ShapeOrName, path: YamlPath): Shape | undefined;
  /** What is meant by putting something on that shape, or into it: a member of a stack where the stack has put it. */
  placed(name: string, path: YamlPath): Target | undefined;
}

/** `degrees`: clockwise from the top. `point`: from the centre of what the hanger is on. */
export type HangerPlace =
  | { readonly kind: 'auto' }
  | { readonly kind: 'anchor'; readonly anchor: Exclude<Anchor, 'center'> }
  | { readonly kind: 'degrees'; readonly degrees: number }
  | { readonly kind: 'point'; readonly offset: Point };

/** One of a row of hangers along a side. */
export interface InRow {
  /** From 0, to the right as seen with that side at the top. */
  readonly nth: number;
  readonly count: number;
  /** From middle to middle, in mm; absent where they share the width evenly. */
  readonly spacing?: number;
}

interface HangerBase {
  readonly path: YamlPath;
  /** Absent for one that stands alone. */
  readonly row?: InRow;
  /** A member of a stack of the body is meant where the stack has put it. */
  readonly on?: Target;
  readonly at: HangerPlace;
  /** Diameter of a round opening, short side of a slot. */
  readonly opening: number;
  readonly nudge: Point;
}

export type Hanger =
  | (HangerBase & { readonly kind: 'ring'; readonly wall: number; readonly sink: number })
  | (HangerBase & {
      readonly kind: 'hole';
      readonly inset: number;
      /** Where the spec does not say how far it is from the edge: as little as it may be to keep clear of something. */
      readonly leastInset?: number;
      /** Whether another side will do, where the spec names none. */
      readonly anySide?: true;
    })
  | (HangerBase & { readonly kind: 'slot'; readonly inset: number; readonly length: number })
  /** `opening`: width of the slot that its nail rests in; `head`: diameter of the round opening that the head goes through. */
  | (HangerBase & {
      readonly kind: 'keyhole';
      readonly inset: number;
      readonly head: number;
      /** Of the whole opening. */
      readonly length: number;
    });

/** A shape as an entry of one of a piece's lists. */
export interface Entry {
  readonly shape: Shape;
  readonly path: YamlPath;
}

/** What a piece is cut from that is not cut from the tag's own stock, and how fast the machine works that. */
export interface CutFrom {
  readonly stock: Stock;
  readonly machine?: Machine;
}

export interface PieceModel {
  readonly id: string;
  readonly title: string;
  readonly path: YamlPath;
  readonly body: readonly Entry[];
  readonly cut: readonly Entry[];
  readonly score: readonly Entry[];
  readonly engrave: readonly Entry[];
  readonly hangers: readonly Hanger[];
  /** Asked for the whole piece, its hangers included. */
  readonly size?: { readonly side: 'width' | 'height'; readonly mm: number };
  readonly parts: 'one' | 'many';
  readonly glueTo?: string;
  /** Absent where it is the tag's own stock. */
  readonly cutFrom?: CutFrom;
}

export interface TagModel {
  readonly title: string;
  readonly units: Units;
  readonly stock: Stock;
  readonly tie?: Tie;
  readonly sheet?: Sheet;
  readonly machine?: Machine;
  readonly output: Output;
  /** Every shape that could be read, by name, in the order of the text. */
  readonly shapes: ReadonlyMap<string, Shape>;
  readonly pieces: readonly PieceModel[];
}
