/** The part of fontkit that tests use; the package has no types. */
declare module 'fontkit' {
  export interface ShapedRun {
    readonly glyphs: readonly { readonly id: number }[];
    readonly positions: readonly { readonly xAdvance: number; readonly xOffset: number; readonly yOffset: number }[];
  }
  export interface Font {
    readonly unitsPerEm: number;
    layout(text: string): ShapedRun;
  }
  export function create(bytes: Uint8Array): Font;
}
