/** How lettering reaches font files. The engine knows no file system; whoever runs it hands this in. */

export interface FontFiles extends InstalledFonts {
  /** One of the files named in `bundled-fonts.ts`. */
  bundled(name: string): Promise<Uint8Array>;
  /** The WebAssembly of the library that shapes, for where the library cannot find it by itself. */
  readonly shaperWasm?: () => Promise<Uint8Array>;
}

/** What only a computer with a file system has. */
export interface InstalledFonts {
  /** A file by its path, whole or the stretch asked for (`end` exclusive; what lies past the end of the file is left out). */
  read(path: string, stretch?: { readonly start: number; readonly end: number }): Promise<Uint8Array>;
  /** Names of what lies in the folder of a file; rejects, or is absent, where that cannot be known. */
  beside?(path: string): Promise<readonly string[]>;
  /** Paths of the font files installed on this computer. */
  systemFonts(): Promise<readonly string[]>;
}

/** Whether a `font` is the name of a file; anything else is a family. */
export function isFontFile(font: string): boolean {
  return /\.(ttf|otf|ttc|otc|woff2?)$/i.test(font);
}

/** Larger than any font a tag needs (the largest in use, with every Chinese character, are about 30 MB). */
export const maxFontBytes = 64 * 1024 * 1024;
