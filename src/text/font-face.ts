/** A font ready for setting text: shaped by HarfBuzz, its outlines scaled to an em of 1. */

import { curveBounds, reverseCurves, transformCurves, type CurvePath } from '../geometry/curves.ts';
import { flatten } from '../geometry/flatten.ts';
import type { Ring } from '../geometry/types.ts';
import { contentHash } from './content-hash.ts';
import { describeFont, readMetrics, type FontLicence } from './font-description.ts';
import { openShaper, type ReadWasm, type Shaper, type Variations } from './harfbuzz.ts';
import { openOutlines } from './opentype.ts';
import { BadFontError } from './bad-font.ts';
import { readTables, unpacked, writeSfnt } from './sfnt.ts';

export interface FontFace extends Shaper {
  /** Depends on the content of the file, the face and the variation chosen, and on nothing else. */
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
  /** Distance between baselines by the font's own metrics, in em. */
  readonly lineHeight: number;
  readonly xHeight: number;
  readonly capHeight: number;
  /**
   * The outline of a glyph in em, y up, with outer contours counter-clockwise; empty for a space, or if the font is
   * damaged. TrueType and CFF fonts run in opposite directions, and overlapping letters must never cancel each other
   * out.
   */
  outline(glyph: number): CurvePath;
}

export interface FaceSource {
  readonly bytes: Uint8Array;
  /** Index of the face in a collection. */
  readonly index: number;
  readonly variations: Variations;
}

/** The `FontFace.id` that a source will have. */
export function faceId({ bytes, index, variations }: FaceSource): string {
  return contentHash([bytes, new TextEncoder().encode(JSON.stringify([index, variations]))]);
}

/** Some fonts say a height that their letters do not have by far: up to ten times off. Swashes are within this factor. */
const mostOff = 1.5;

/** Letters of no font are lower than this, in em; what a font without an “x” says is believed above it only. */
const leastHeight = 0.15;

const outlineTables = ['glyf', 'CFF ', 'CFF2'];

/** @throws BadFontError if the bytes are not a sound font. */
export async function openFace(source: FaceSource, shaperWasm?: ReadWasm): Promise<FontFace> {
  const tables = readTables(await unpacked(source.bytes), source.index);
  if (!outlineTables.some((tag) => tables.has(tag)))
    throw new BadFontError('has no outlines, only pictures of its letters');
  const { family, style, weight, italic, licence } = describeFont(tables);
  const metrics = readMetrics(tables);
  const em = (units: number): number => units / metrics.unitsPerEm;
  const shaper = await openShaper(writeSfnt(tables), source.variations, shaperWasm);
  const outlines = await openOutlines(tables);
  const outline = scaledOutlines((glyph) => outlines?.(glyph) ?? shaper.outlineOf(glyph), em(1));
  const measured = (letter: string): number | undefined => {
    if (!shaper.covers(letter.codePointAt(0)!)) return undefined;
    const [glyph] = shaper.shape({ text: letter, start: 0, end: 1, rightToLeft: false, features: new Map() });
    return curveBounds(outline(glyph!.id))?.maxY;
  };
  const trusted = (units: number | undefined, drawn: number | undefined): number | undefined => {
    const said = units === undefined ? undefined : em(units);
    if (drawn === undefined) return said !== undefined && said > leastHeight ? said : undefined;
    if (said === undefined) return drawn;
    return Math.max(said, drawn) > mostOff * Math.min(said, drawn) ? drawn : said;
  };
  const ascender = em(metrics.ascender);
  const descender = em(metrics.descender);
  return {
    ...shaper,
    id: faceId(source),
    family,
    style,
    weight: source.variations['wght'] ?? weight,
    italic,
    licence,
    unitsPerEm: metrics.unitsPerEm,
    ascender,
    descender,
    lineHeight: ascender - descender + em(metrics.lineGap),
    // Neither said nor to be measured: what CSS assumes (CSS Values 4, units `ex` and `cap`).
    xHeight: trusted(metrics.xHeight, measured('x')) ?? 0.5,
    capHeight: trusted(metrics.capHeight, measured('H')) ?? ascender,
    outline,
  };
}

function scaledOutlines(read: (glyph: number) => CurvePath, scale: number): FontFace['outline'] {
  const cache = new Map<number, CurvePath>();
  return (glyph) => {
    let outline = cache.get(glyph);
    if (!outline) {
      outline = counterClockwise(transformCurves(read(glyph), { a: scale, b: 0, c: 0, d: scale, e: 0, f: 0 }));
      cache.set(glyph, outline);
    }
    return outline;
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
