/** A font ready to be set: its files shaped by HarfBuzz, its outlines scaled to an em of 1. */

import { curveBounds, flatten, reverseCurves, transformCurves, type CurvePath } from '../geometry/curves.ts';
import type { Ring } from '../geometry/types.ts';
import { contentHash } from './content-hash.ts';
import { describe, readMetrics, type FontLicence } from './font-description.ts';
import { openShaper, type Shaper, type Variations } from './harfbuzz.ts';
import { openOutlines } from './opentype.ts';
import { readTables, writeSfnt } from './sfnt.ts';

export interface FontFace {
  /** Changes with the content of the files and the variation chosen, and with nothing else. */
  readonly id: string;
  readonly family: string;
  readonly style: string;
  readonly weight: number;
  readonly italic: boolean;
  readonly licence: FontLicence;
  readonly unitsPerEm: number;
  /** In em, y up; `descender` is negative. */
  readonly ascender: number;
  readonly descender: number;
  /** From one baseline to the next, as the font would have it, in em. */
  readonly lineHeight: number;
  readonly xHeight: number;
  readonly capHeight: number;
  /** Usually one. The subsets of a font in the order in which a letter is looked for. */
  readonly files: readonly FontFile[];
}

export interface FontFile extends Shaper {
  readonly unitsPerEm: number;
  /**
   * The outline of a glyph in em, y up, its outer contours counter-clockwise; `undefined` when the file is damaged there.
   * TrueType and CFF fonts turn opposite ways, and overlapping letters must never cancel each other out.
   */
  outline(glyph: number): CurvePath | undefined;
}

export interface FaceSource {
  readonly files: readonly Uint8Array[];
  /** Which face of a collection. */
  readonly index: number;
  readonly variations: Variations;
  /** What the catalogue knows better than the file: subset files are not always named well. */
  readonly known?: { readonly family: string; readonly weight: number; readonly italic: boolean };
}

/** What `FontFace.id` will be. */
export function faceId({ files, index, variations }: FaceSource): string {
  return contentHash([...files, new TextEncoder().encode(JSON.stringify([index, variations]))]);
}

/** @throws BadFontError when any of the files is no sound font. */
export async function openFace(source: FaceSource): Promise<FontFace> {
  const { files, index, variations, known } = source;
  const tables = files.map((bytes) => readTables(bytes, index));
  const first = tables[0]!;
  const opened: FontFile[] = [];
  for (const each of tables) {
    const shaper = await openShaper(writeSfnt(each), variations);
    opened.push({ ...shaper, ...scaledOutlines(each, variations) });
  }
  const description = describe(first);
  const metrics = readMetrics(first);
  const em = (units: number): number => units / metrics.unitsPerEm;
  const ascender = em(metrics.ascender);
  const descender = em(metrics.descender);
  return {
    id: faceId(source),
    family: known?.family ?? description.family,
    style: description.style,
    weight: known?.weight ?? variations['wght'] ?? description.weight,
    italic: known?.italic ?? description.italic,
    licence: description.licence,
    unitsPerEm: metrics.unitsPerEm,
    ascender,
    descender,
    lineHeight: ascender - descender + em(metrics.lineGap),
    // Without either: what CSS assumes (CSS Values 4, units `ex` and `cap`).
    xHeight: metrics.xHeight === undefined ? (measuredHeight(opened, 'x') ?? 0.5) : em(metrics.xHeight),
    capHeight: metrics.capHeight === undefined ? (measuredHeight(opened, 'H') ?? ascender) : em(metrics.capHeight),
    files: opened,
  };
}

function scaledOutlines(
  tables: ReturnType<typeof readTables>,
  variations: Variations,
): Pick<FontFile, 'unitsPerEm' | 'outline'> {
  const { unitsPerEm } = readMetrics(tables);
  const outlines = openOutlines(tables, variations);
  const scale = 1 / unitsPerEm;
  const cache = new Map<number, CurvePath | undefined>();
  return {
    unitsPerEm,
    outline(glyph) {
      if (!cache.has(glyph)) {
        const raw = outlines(glyph);
        const scaled = raw && transformCurves(raw, { a: scale, b: 0, c: 0, d: scale, e: 0, f: 0 });
        cache.set(glyph, scaled && counterClockwise(scaled));
      }
      return cache.get(glyph);
    },
  };
}

function counterClockwise(path: CurvePath): CurvePath {
  // Only the sign of the area counts, so a coarse polygon will do.
  const area = flatten(path, { tolerance: 0.001 }).reduce((sum, ring) => sum + twiceArea(ring), 0);
  return area < 0 ? reverseCurves(path) : path;
}

function twiceArea(ring: Ring): number {
  return ring.reduce((sum, point, i) => {
    const next = ring[(i + 1) % ring.length]!;
    return sum + point.x * next.y - next.x * point.y;
  }, 0);
}

function measuredHeight(files: readonly FontFile[], letter: string): number | undefined {
  for (const file of files) {
    if (!file.covers(letter.codePointAt(0)!)) continue;
    const [glyph] = file.shape({ text: letter, start: 0, end: 1, rightToLeft: false, features: new Map() });
    return curveBounds(file.outline(glyph!.id) ?? [])?.maxY;
  }
  return undefined;
}
