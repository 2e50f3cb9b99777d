/** Shapes of a spec after reading: what generates them, and what modifies them. */

import type { Corners } from '../../geometry/clipper.ts';
import type { Point, Side } from '../../geometry/types.ts';
import type { YamlPath } from '../../core/issue.ts';
import type { ShapeOrName } from '../types.generated.ts';

export type Anchor = 'center' | Side | 'top-left' | 'top-right' | 'bottom-left' | 'bottom-right';
/** Outside the target, on the given side. */
export type Beside = 'above' | 'below' | 'left of' | 'right of';
export type CentreRule = 'box' | 'mass' | 'eye' | 'x-height';

/** A shape, or one member of it if it is a stack. */
export interface Target {
  readonly shape: Shape;
  readonly part?: string;
}

/** The circle a text stands on, given by its radius in mm or by the angle in degrees that the text covers. */
export type TextArc = { readonly at: 'top' | 'bottom' } & ({ readonly radius: number } | { readonly sweep: number });

/** What there may be on a line that is the same on all tags: any words, or the letters of a batch and the most of them in a row. */
export type Evenly = 'any words' | { readonly letters: string; readonly longest: number };

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
  /** Stands on the line that any text of its size would stand on, whatever letters it has itself. */
  readonly evenly?: Evenly;
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
  /** Distance kept from openings, and the least where a bay would take a pointed corner off. */
  readonly clear: number;
  readonly leastClear: number;
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
    }
  | { readonly kind: 'from'; readonly shape: Shape };

/** In mm, or `auto` for the stock's `min_web`. */
export type HoldWidth = number | 'auto';

/** Strips that join the parts of a shape: where they are nearest, at these sides of each part, or so many round it. */
export interface Straps {
  readonly width: HoldWidth;
  readonly sides?: readonly Side[];
  readonly count?: number;
}

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
  readonly straps?: Straps;
  readonly bridges?: { readonly width: HoldWidth; readonly sides: readonly Side[] };
  readonly rotate?: number;
  readonly mirror?: 'left-right' | 'up-down';
  /** `margin` is the gap to the target when placed beside it. */
  readonly place?: Place;
  readonly nudge?: Point;
}

export interface Place extends Target {
  readonly at: Anchor | Beside;
  readonly margin: number;
  readonly by: CentreRule;
  /** Whether it is beside the target and nobody said at what distance. */
  readonly isUsualGap?: true;
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
