/** Font files on a computer with a file system. */

import { open, readdir, readFile } from 'node:fs/promises';
import { homedir, platform } from 'node:os';
import { dirname, extname, join } from 'node:path';
import { maxFontBytes, type FontFiles, type InstalledFonts } from './font-files.ts';

const fontExtensions = new Set(['.ttf', '.otf', '.ttc', '.otc', '.woff', '.woff2']);
/**
 * Most folders to descend: fonts lie two or three deep, and a link that leads back up must not keep the search going.
 */
const maxDepth = 6;
const maxFonts = 10_000;

/** `bundledFolder` holds the files of `bundled-fonts.ts` that the build copied. */
export function nodeFontFiles(bundledFolder: string): FontFiles {
  return { ...nodeInstalledFonts, bundled: (name) => readFile(join(bundledFolder, name)) };
}

export const nodeInstalledFonts: InstalledFonts = {
  read: (path, stretch) => readStretch(path, stretch?.start ?? 0, stretch?.end ?? maxFontBytes + 1),
  beside: (path) => readdir(dirname(path)),
  async systemFonts() {
    const paths: string[] = [];
    for (const folder of systemFontFolders()) await collectFonts(folder, 0, paths);
    return paths;
  },
};

function systemFontFolders(): string[] {
  const home = homedir();
  if (platform() === 'win32') {
    return [
      join(process.env['WINDIR'] ?? 'C:\\Windows', 'Fonts'),
      join(process.env['LOCALAPPDATA'] ?? join(home, 'AppData', 'Local'), 'Microsoft', 'Windows', 'Fonts'),
    ];
  }
  if (platform() === 'darwin') return ['/Library/Fonts', join(home, 'Library', 'Fonts'), '/System/Library/Fonts'];
  return [
    join(home, '.fonts'),
    join(process.env['XDG_DATA_HOME'] ?? join(home, '.local', 'share'), 'fonts'),
    '/usr/local/share/fonts',
    '/usr/share/fonts',
  ];
}

async function collectFonts(folder: string, depth: number, into: string[]): Promise<void> {
  const entries = await readdir(folder, { withFileTypes: true }).catch(() => []);
  for (const entry of entries) {
    if (into.length >= maxFonts) return;
    const path = join(folder, entry.name);
    if (fontExtensions.has(extname(entry.name).toLowerCase())) {
      if (entry.isFile() || entry.isSymbolicLink()) into.push(path);
    } else if ((entry.isDirectory() || entry.isSymbolicLink()) && depth < maxDepth) {
      await collectFonts(path, depth + 1, into);
    }
  }
}

/** Never reads more than is asked for: a file with a font's name may be a film. */
async function readStretch(path: string, start: number, end: number): Promise<Uint8Array> {
  const file = await open(path);
  try {
    const { size } = await file.stat();
    const bytes = new Uint8Array(Math.max(0, Math.min(end, size) - start));
    let filled = 0;
    while (filled < bytes.length) {
      const { bytesRead } = await file.read(bytes, filled, bytes.length - filled, start + filled);
      if (bytesRead === 0) break;
      filled += bytesRead;
    }
    return bytes.subarray(0, filled);
  } finally {
    await file.close();
  }
}
