/**
 * Shaping (the glyphs of a text and their positions) and the outlines of those glyphs, by HarfBuzz; no other file
 * imports it. It is made for untrusted fonts: damaged parts come out empty, and never take long.
 *
 * HarfBuzz comes as WebAssembly. It is loaded once, with the first font; the library frees the memory of a font some
 * time after the last reference to its `Shaper` is gone.
 */

import type * as HarfBuzz from 'harfbuzzjs';
import type { CurveCommand, CurvePath } from '../geometry/curves.ts';

export interface ShapedGlyph {
  readonly id: number;
  /** Offset in the text at which the characters of this glyph begin, in UTF-16 units. */
  readonly cluster: number;
  /** Font units. The advance moves the pen; the offsets only displace this glyph, y up. */
  readonly advance: number;
  readonly dx: number;
  readonly dy: number;
}

export interface ShapeRequest {
  readonly text: string;
  /**
   * The stretch to shape; the text around it is context only (letters of a joined script depend on their neighbours).
   */
  readonly start: number;
  readonly end: number;
  readonly rightToLeft: boolean;
  /** OpenType feature tags of four ASCII characters, switched by number as in CSS `font-feature-settings`. */
  readonly features: ReadonlyMap<string, number>;
}

export interface Shaper {
  covers(codePoint: number): boolean;
  /** Glyphs in visual order, from left to right. Glyph 0 stands for a character the font lacks. */
  shape(request: ShapeRequest): ShapedGlyph[];
  advanceOf(glyph: number): number;
  /** In font units, y up, contours as the font has them; empty if the font is damaged. */
  outlineOf(glyph: number): CurvePath;
}

/** Settings of a variable font's axes, by tag. */
export type Variations = Readonly<Record<string, number>>;

/**
 * HarfBuzz looks at five characters on either side; copying the whole text for every run would be slow for long ones.
 */
const contextLength = 8;

/** Reads the library's WebAssembly, where the library cannot find it by itself. */
export type ReadWasm = () => Promise<Uint8Array>;

let loading: Promise<typeof HarfBuzz> | undefined;

export async function openShaper(sfnt: Uint8Array, variations: Variations, wasm?: ReadWasm): Promise<Shaper> {
  loading ??= load(wasm);
  const hb = await loading;
  const font = new hb.Font(new hb.Face(new hb.Blob(sfnt)));
  const axes = Object.entries(variations);
  if (axes.length > 0) font.setVariations(axes.map(([tag, value]) => new hb.Variation(tag, value)));
  // One buffer for all runs: nothing is freed before garbage collection.
  const buffer = new hb.Buffer();
  return {
    covers: (codePoint) => (font.nominalGlyph(codePoint) ?? 0) !== 0,
    advanceOf: (glyph) => font.glyphHAdvance(glyph),
    outlineOf: (glyph) => font.glyphToJson(glyph).map(curveCommand),
    shape({ text, start, end, rightToLeft, features }) {
      const from = Math.max(0, start - contextLength);
      buffer.reset();
      buffer.addText(text.slice(from, end + contextLength), start - from, end - start);
      buffer.setDirection(rightToLeft ? hb.Direction.RTL : hb.Direction.LTR);
      // Guesses script and language; a direction already set is kept.
      buffer.guessSegmentProperties();
      hb.shape(
        font,
        buffer,
        [...features].map(([tag, value]) => new hb.Feature(tag, value)),
      );
      const positions = buffer.getGlyphPositions();
      return buffer.getGlyphInfos().map(({ codepoint, cluster }, i) => {
        const { xAdvance, xOffset, yOffset } = positions[i]!;
        return { id: codepoint, cluster: cluster + from, advance: xAdvance, dx: xOffset, dy: yOffset };
      });
    },
  };
}

/** In the bundle for browsers the library waits until it is given its WebAssembly (see `dev/build.ts`). */
async function load(wasm: ReadWasm | undefined): Promise<typeof HarfBuzz> {
  const library: typeof HarfBuzz & { setUp?(wasm: Uint8Array): Promise<void> } = await import('harfbuzzjs');
  if (wasm) await library.setUp?.(await wasm());
  return library;
}

function curveCommand({ type, values }: HarfBuzz.SvgPathCommand): CurveCommand {
  const [a, b, c, d, e, f] = values as [number, number, number, number, number, number];
  switch (type) {
    case 'M':
    case 'L':
      return { type, x: a, y: b };
    case 'Q':
      return { type, x1: a, y1: b, x: c, y: d };
    case 'C':
      return { type, x1: a, y1: b, x2: c, y2: d, x: e, y: f };
    default:
      return { type: 'Z' };
  }
}
