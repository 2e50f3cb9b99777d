/** The part of fontkit that tests use; the package has no types. */
declare module 'fontkit' {
  export interface ShapedRun {
    readonly glyphs: readonly Glyph[];
    readonly positions: readonly { readonly xAdvance: number; readonly xOffset: number; readonly yOffset: number }[];
  }
  export interface PathCommand {
    readonly command: 'moveTo' | 'lineTo' | 'quadraticCurveTo' | 'bezierCurveTo' | 'closePath';
    readonly args: readonly number[];
  }

  export interface Glyph {
    readonly id: number;
    readonly path: { readonly commands: readonly PathCommand[] };
    readonly bbox: { readonly minY: number; readonly maxY: number };
  }

  export interface Font {
    readonly unitsPerEm: number;
    readonly 'OS/2': { readonly version: number };
    readonly capHeight: number;
    readonly xHeight: number;
    getGlyph(id: number): Glyph;
    layout(text: string, features?: Readonly<Record<string, boolean>>): ShapedRun;
    getVariation(axes: Readonly<Record<string, number>>): Font;
  }
  export function create(bytes: Uint8Array): Font;
}
