/** A spec after reading: lengths in mm, names resolved, nothing missing. */

import type { Corners } from '../geometry/clipper.ts';
import type { Point } from '../geometry/types.ts';
import type { YamlPath } from '../core/issue.ts';
import type { Units } from '../core/units.ts';
import type { StockLook } from '../look/stock-look.ts';
import type { Dated } from './measured-values.ts';
import type { Unfilled } from './problems.ts';
import type { ShapeOrName } from './types.generated.ts';

export type Side = 'top' | 'bottom' | 'left' | 'right';
export type Anchor = 'center' | Side | 'top-left' | 'top-right' | 'bottom-left' | 'bottom-right';
/** Outside the target, on the given side. */
export type Beside = 'above' | 'below' | 'left of' | 'right of';
export type CentreRule = 'box' | 'mass' | 'eye' | 'x-height';

export interface Tie {
  readonly kind: 'twine' | 'ribbon';
  /** Diameter of the twine or width of the ribbon, in mm. */
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

/** A shape, or one member of it if it is a stack. */
export interface Target {
  readonly shape: Shape;
  readonly part?: string;
}

/** The circle a text stands on, given by its radius in mm or by the angle in degrees that the text covers. */
export type TextArc = { readonly at: 'top' | 'bottom' } & ({ readonly radius: number } | { readonly sweep: number });

/** A text and how it is set, whatever its letters look like. */
export interface Wording {
  readonly text: string;
  /** The size asked for: the em, or the finished height of the capitals or the small letters. */
  readonly size?: { readonly of: 'em' | 'capitals' | 'small letters'; readonly mm: number };
  readonly arc?: TextArc;
  readonly letterSpacingMm: number;
  /** Distance from line to line, in em. */
  readonly lineHeight?: number;
  readonly align: 'left' | 'center' | 'right';
  /** Stands on the line that any text of its size would stand on, whatever letters it has. */
  readonly evenly?: boolean;
  readonly features: Readonly<Record<string, boolean>>;
}

/** Lettering of single strokes, for lines that the beam follows once. */
export interface StrokesGenerator extends Wording {
  readonly kind: 'strokes';
}

export interface TextGenerator extends Wording {
  readonly kind: 'text';
  readonly font: string;
  /** Fonts for letters that `font` lacks, in this order. */
  readonly fallbacks?: readonly string[];
  readonly weight: number;
  /** Whether the spec gives the weight; otherwise it is the default. */
  readonly weightAsked: boolean;
  readonly italic: boolean;
  /** Largest overlap of neighbouring letters, in mm, if they slide together; `auto` follows the least width of a joint. */
  readonly overlap?: number | 'auto';
}

export interface TextLine {
  /** Size of its letters relative to those of the other lines. */
  readonly share: number;
  readonly align: 'left' | 'center' | 'right';
  /** Over the top of an ellipse, heads outwards, or along its bottom, heads inwards. */
  readonly arc?: 'top' | 'bottom';
}

/** Plates with a name of their own; lengths in mm. */
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
      /** Lobes along a side, including those at its two corners. */
      readonly columns: number;
      readonly rows: number;
    }
  | { readonly kind: 'scalloped-disc'; readonly across: number; readonly lobes: number };

/** Lines along an outline; lengths in mm. */
export interface BorderGenerator {
  readonly kind: 'border';
  readonly shape: Shape;
  readonly inset: number;
  /** Distances of the edges of each line from the outer edge of the border inwards. */
  readonly lines: readonly { readonly from: number; readonly to: number }[];
  /** Corner radius if rounded; length cut from either side if cut off. */
  readonly radius: number;
  readonly clip: number;
  /** Distance kept from openings. */
  readonly clear: number;
}

/** The spacing of copies round a closed line, starting at its top: by number, by distance, or both. */
export interface RoundSpacing {
  readonly count?: number;
  /** In mm along the line. */
  readonly spacing?: number;
  /** Whether each copy keeps the direction it was drawn in; otherwise it turns with the line. */
  readonly upright: boolean;
}

export interface RepeatGenerator {
  readonly kind: 'repeat';
  /** The shape repeated, then the shape whose outline the copies follow. */
  readonly shapes: readonly [Shape] | readonly [Shape, Shape];
  readonly along:
    | {
        readonly kind: 'rows';
        readonly columns: number;
        readonly rows: number;
        readonly across: Point;
        readonly down: Point;
      }
    | (RoundSpacing & { readonly kind: 'circle'; readonly diameter: number })
    | (RoundSpacing & { readonly kind: 'outline'; readonly inset: number });
}

/** A tapered stick that carries a shape; lengths in mm. */
export interface StickGenerator {
  readonly kind: 'stick';
  readonly shape: Shape;
  /** Direction of its point. */
  readonly towards: 'down' | 'up' | 'left' | 'right';
  /** Visible length, from the edge of what it carries to its end. */
  readonly length: number;
  readonly width: number;
  /** Length of the tapered part. */
  readonly point: number;
  /** Depth to which it reaches into the material of what it carries. */
  readonly lap: number;
}

/** A QR code. */
export interface CodeGenerator {
  readonly kind: 'code';
  readonly text: string;
  /** Error correction: how much of the code may be damaged. */
  readonly correction: Correction;
  /** Side without the quiet zone, in mm; absent if a width, a height or a fit determines it. */
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
      /** Bays narrower than this are closed, in mm. */
      readonly bays: number;
      /** Whether wider bays are closed too, so that several lines share one backing. */
      readonly together: boolean;
    }
  | { readonly kind: 'union' | 'difference' | 'intersection'; readonly shapes: readonly Shape[] }
  | {
      readonly kind: 'lines';
      /** Texts and single strokes without a size of their own. */
      readonly shapes: readonly Shape[];
      readonly lines: readonly TextLine[];
      /** Distance between the ink of one line and that of the next, in mm. */
      readonly gap?: number;
      /** Size of the largest line. */
      readonly size?: TextGenerator['size'];
      /** Spaced as if every line had all letters, and standing on the line that any text of its size would stand on. */
      readonly evenly: boolean;
    }
  | { readonly kind: 'from'; readonly shape: Shape };

/** In mm, or `auto` for the stock's `min_web`. */
export type HoldWidth = number | 'auto';

/** A shape made as large as fits into its target; lengths in mm. */
export interface Fit extends Target {
  /** Distance kept from the outline of the target. */
  readonly margin: number;
  /** Distance kept from the hangers, the cuts and the other marks of its piece. */
  readonly clear: number;
  /** In a batch, the same size as on all other tags. */
  readonly sameSize: boolean;
  /** Upper limits for its size. */
  readonly atMost?: { readonly capitals?: number; readonly 'small letters'?: number; readonly width?: number };
}

/** The texts that a shape itself consists of: one, or those of its lines. */
export function textsOf(generator: Generator): readonly (TextGenerator | StrokesGenerator)[] {
  if (generator.kind === 'text' || generator.kind === 'strokes') return [generator];
  return generator.kind === 'lines' ? generator.shapes.flatMap((line) => textsOf(line.generator)) : [];
}

/** The shapes and each line of those that consist of lines: everything with a text of its own. */
export function withLines(shapes: Iterable<Shape>): Shape[] {
  return [...shapes].flatMap((shape) => [shape, ...(shape.generator.kind === 'lines' ? shape.generator.shapes : [])]);
}

/** Modifiers, in the order in which they are applied. */
export interface Modifiers {
  readonly tidy?: number;
  readonly grow?: number;
  /** Grown as much as `min_web` requires, which is only known once the shape is made; `grow` is then absent. */
  readonly growAuto?: true;
  readonly corners: Corners;
  readonly width?: number;
  readonly height?: number;
  readonly fit?: Fit;
  /** Width of the strips that join the parts of the shape, in mm. */
  readonly straps?: HoldWidth;
  readonly bridges?: { readonly width: HoldWidth; readonly sides: readonly Side[] };
  readonly rotate?: number;
  readonly mirror?: 'left-right' | 'up-down';
  /** `margin` is the gap to the target when placed beside it. */
  readonly place?: Target & { readonly at: Anchor | Beside; readonly margin: number; readonly by: CentreRule };
  readonly nudge?: Point;
}

export interface Shape {
  /** Its key under `shapes`; absent for shapes written in place. */
  readonly name?: string;
  readonly path: YamlPath;
  readonly generator: Generator;
  readonly modifiers: Modifiers;
}

/** Looks up the shapes that others are made from; a failure has been reported at `path`. */
export interface ShapeNames {
  byName(name: string, path: YamlPath): Shape | undefined;
  /** The shape of a name or of a definition written in place. */
  byRef(ref: ShapeOrName, path: YamlPath): Shape | undefined;
  /** The target of placing on that shape or fitting inside it: a member of a stack where the stack puts it. */
  placed(name: string, path: YamlPath): Target | undefined;
}

/** `degrees` run clockwise from the top. `point` is relative to the centre of what the hanger is on. */
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
  /** The shape it is on, if not the body; a member of one of the body's stacks is meant where the stack puts it. */
  readonly on?: Target;
  readonly at: HangerPlace;
  /** Diameter of a round opening, short side of a slot, in mm. */
  readonly opening: number;
  readonly nudge: Point;
}

export type Hanger =
  | (HangerBase & { readonly kind: 'ring'; readonly wall: number; readonly sink: number })
  | (HangerBase & {
      readonly kind: 'hole';
      readonly inset: number;
      /** If the spec gives no distance from the edge: the least one allowed to keep clear of something. */
      readonly leastInset?: number;
      /** Whether it may move to another side because the spec names none. */
      readonly anySide?: true;
    })
  | (HangerBase & { readonly kind: 'slot'; readonly inset: number; readonly length: number })
  /**
   * `opening` is the width of the slot that the nail rests in, `head` the diameter of the opening for the nail's head.
   */
  | (HangerBase & {
      readonly kind: 'keyhole';
      readonly inset: number;
      readonly head: number;
      /** Length of the whole opening. */
      readonly length: number;
    });

/** A shape as an entry in one of a piece's lists. */
export interface ShapeEntry {
  readonly shape: Shape;
  readonly path: YamlPath;
}

/** The stock of a piece that is not cut from the tag's own stock, and how the machine cuts it. */
export interface CutFrom {
  readonly stock: Stock;
  readonly machine?: Machine;
}

export interface PieceModel {
  readonly id: string;
  readonly title: string;
  readonly path: YamlPath;
  readonly body: readonly ShapeEntry[];
  readonly cut: readonly ShapeEntry[];
  readonly score: readonly ShapeEntry[];
  readonly engrave: readonly ShapeEntry[];
  readonly hangers: readonly Hanger[];
  /** Size asked for the whole piece, its hangers included. */
  readonly size?: { readonly side: 'width' | 'height'; readonly mm: number };
  readonly parts: 'one' | 'many';
  readonly glueTo?: string;
  /** Absent if it is the tag's own stock. */
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
  /** Words left as written, `{column}` included, as there is no batch. */
  readonly unfilled?: readonly Unfilled[];
}
