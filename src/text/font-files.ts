/** Access to font files. The engine knows no file system; whoever runs it provides this. */

export interface FontFiles extends InstalledFonts {
  /** One of the files named in `bundled-fonts.ts`. */
  bundled(name: string): Promise<Uint8Array>;
  /** The WebAssembly of the shaping library, where the library cannot find it by itself. */
  readonly shaperWasm?: () => Promise<Uint8Array>;
}

/** Access that only a computer with a file system has. */
export interface InstalledFonts {
  /** A file by its path, whole or the stretch asked for (`end` is exclusive; a stretch past the end is cut short). */
  read(path: string, stretch?: { readonly start: number; readonly end: number }): Promise<Uint8Array>;
  /** Names of the files in the folder of a file; rejects, or is absent, if they cannot be listed. */
  beside?(path: string): Promise<readonly string[]>;
  /** Paths of the font files installed on this computer. */
  systemFonts(): Promise<readonly string[]>;
}

/** Whether a `font` is the name of a file; otherwise it is a family. */
export function isFontFile(font: string): boolean {
  return /\.(ttf|otf|ttc|otc|woff2?)$/i.test(font);
}

/** Larger than any font a tag needs (the largest in use, with every Chinese character, are about 30 MB). */
export const maxFontBytes = 64 * 1024 * 1024;
