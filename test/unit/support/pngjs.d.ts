/** The part of pngjs that tests use; the package has no types. */
declare module 'pngjs' {
  export const PNG: {
    readonly sync: {
      /** Four bytes a pixel: red, green, blue, alpha. */
      read(png: Uint8Array): { readonly width: number; readonly height: number; readonly data: Uint8Array };
    };
  };
}
