/** The part of fontkit that tests use; the package has no types. */
declare module 'fontkit' {
  export interface ShapedRun {
    readonly glyphs: readonly { readonly id: number }[];
    readonly positions: readonly { readonly xAdvance: number; readonly xOffset: number; readonly yOffset: number }[];
  }
  export interface PathCommand {
    readonly command: 'moveTo' | 'lineTo' | 'quadraticCurveTo' | 'bezierCurveTo' | 'closePath';
    readonly args: readonly number[];
  }

  export interface Font {
    readonly unitsPerEm: number;
    getGlyph(id: number): { readonly path: { readonly commands: readonly PathCommand[] } };
    layout(text: string): ShapedRun;
  }
  export function create(bytes: Uint8Array): Font;
}
