/** Page model: drawings and captions in mm, y up from the lower left corner, for any format that can draw paths. */

import { memoizeRecent } from '../../core/recent.ts';
import { translation } from '../../geometry/affine.ts';
import type { Contour } from '../../geometry/contour.ts';
import { startsOf, splitSegment } from '../../geometry/contour.ts';
import type { CurveCommand, CurvePath } from '../../geometry/curves.ts';
import { transformCurves } from '../../geometry/curves.ts';
import type { FontFace } from '../../text/font-face.ts';
import { layoutText } from '../../text/text-layout.ts';

export interface Drawing {
  readonly path: CurvePath;
  /** #RRGGBB. */
  readonly fill?: string;
  /** Even-odd by default; letters of a caption may overlap, and so may their parts. */
  readonly rule?: 'nonzero';
  readonly stroke?: string;
  /** In mm. */
  readonly lineWidth?: number;
}

/** Drawings clipped to a path, by the even-odd rule. */
export interface Clipped {
  readonly clip: CurvePath;
  readonly drawings: readonly Drawing[];
}

/** Letters of a caption, filled by the nonzero rule. The same few letters recur on every page of a document. */
export interface Letters {
  /** Outlines of glyphs in em, one object for each glyph, and their origins in em from the start of the baseline. */
  readonly letters: readonly { readonly outline: CurvePath; readonly x: number; readonly y: number }[];
  /** Start of the baseline, and the em, in mm. */
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly fill: string;
}

/** Text of a caption, for formats that can embed it besides its drawing. */
export interface CaptionText {
  readonly text: string;
  /** Start of the baseline, and the em, in mm. */
  readonly x: number;
  readonly y: number;
  readonly size: number;
}

export interface Page {
  readonly width: number;
  readonly height: number;
  readonly drawings: readonly (Drawing | Clipped | Letters)[];
  readonly words: readonly CaptionText[];
}

/** Collects the contents of a page. */
export class PageBuilder {
  readonly drawings: (Drawing | Clipped | Letters)[] = [];
  readonly words: CaptionText[] = [];

  draw(path: CurvePath, look: Omit<Drawing, 'path'>): void {
    if (path.length > 0) this.drawings.push({ path, ...look });
  }

  clipped(clip: CurvePath, drawings: readonly Drawing[]): void {
    if (clip.length > 0 && drawings.length > 0) this.drawings.push({ clip, drawings });
  }

  add({ drawings, words }: Pick<Page, 'drawings' | 'words'>): void {
    this.drawings.push(...drawings);
    this.words.push(...words);
  }

  line(from: readonly [number, number], to: readonly [number, number], stroke: string, lineWidth: number): void {
    const path: CurvePath = [
      { type: 'M', x: from[0], y: from[1] },
      { type: 'L', x: to[0], y: to[1] },
    ];
    this.draw(path, { stroke, lineWidth });
  }

  box(x: number, y: number, width: number, height: number, look: Omit<Drawing, 'path'>): void {
    const path: CurvePath = [
      { type: 'M', x, y },
      { type: 'L', x: x + width, y },
      { type: 'L', x: x + width, y: y + height },
      { type: 'L', x, y: y + height },
      { type: 'Z' },
    ];
    this.draw(path, look);
  }

  /** One line of text as outlines. `at`: the point of the text that x refers to. */
  caption(
    text: string,
    face: FontFace,
    place: { x: number; y: number; size: number; at?: 'left' | 'middle' | 'right'; fill?: string },
  ): void {
    const { glyphs, advance } = layoutText(face, { text, align: 'left' });
    const { size, y } = place;
    const share = { left: 0, middle: 0.5, right: 1 }[place.at ?? 'left'];
    const x = place.x - share * advance * size;
    // No more of a glyph than that: its curves at their place would be held until the page is written, of thousands of lines.
    const letters = glyphs.flatMap(({ outline, x: toX, y: toY }) =>
      outline.length > 0 ? [{ outline, x: toX, y: toY }] : [],
    );
    if (letters.length > 0) this.drawings.push({ letters, x, y, size, fill: place.fill ?? '#222222' });
    this.words.push({ text, x, y, size });
  }

  page(width: number, height: number): Page {
    return { width, height, drawings: this.drawings, words: this.words };
  }
}

/** The letters as one path, in mm. */
export function pathOfLetters({ letters, x, y, size }: Letters): CurvePath {
  return letters.flatMap(({ outline, ...origin }): readonly CurveCommand[] =>
    transformCurves(outline, { a: size, b: 0, c: 0, d: size, e: x + origin.x * size, f: y + origin.y * size }),
  );
}

/** Everything moved up by `dy` mm, and to the right by `dx`. */
export function movedUp<T extends Pick<Page, 'drawings' | 'words'>>(
  { drawings, words, ...page }: T,
  dy: number,
  dx = 0,
) {
  const moved = (path: CurvePath) => transformCurves(path, translation(dx, dy));
  const placed = ({ path, ...look }: Drawing): Drawing => ({ path: moved(path), ...look });
  return {
    ...page,
    drawings: drawings.map((each) => {
      if ('letters' in each) return { ...each, x: each.x + dx, y: each.y + dy };
      return 'clip' in each ? { clip: moved(each.clip), drawings: each.drawings.map(placed) } : placed(each);
    }),
    words: words.map((each) => ({ ...each, x: each.x + dx, y: each.y + dy })),
  };
}

/** Words recur, on a page and from page to page; only their widths are kept. */
const widths = new WeakMap<FontFace, (text: string) => number>();

/** Of one line of text, in em. */
export function captionWidth(face: FontFace, text: string): number {
  let widthOf = widths.get(face);
  if (!widthOf) {
    widthOf = memoizeRecent(4000, (words) => layoutText(face, { text: words, align: 'left' }).advance);
    widths.set(face, widthOf);
  }
  return widthOf(text);
}

/** Breaks text into lines of at most `width` mm, and words too if they are longer than that. */
export function wrapped(text: string, face: FontFace, size: number, width: number): string[] {
  const widthOf = (words: string): number => captionWidth(face, words) * size;
  const blank = widthOf('n n') - widthOf('nn');
  const lines: { text: string; width: number }[] = [];
  const fitting = (word: string) =>
    widthOf(word) <= width ? [word] : brokenWord(word, (part) => widthOf(part) <= width);
  for (const word of text
    .split(/\s+/)
    .filter((each) => each !== '')
    .flatMap(fitting)) {
    const own = widthOf(word);
    const line = lines.at(-1);
    if (line && line.width + blank + own <= width) {
      line.text += ` ${word}`;
      line.width += blank + own;
    } else lines.push({ text: word, width: own });
  }
  return lines.map((line) => line.text);
}

/** As few parts as possible, each at least one letter with its marks. */
function brokenWord(word: string, fits: (part: string) => boolean): string[] {
  const parts: string[] = [];
  let part = '';
  for (const { segment } of new Intl.Segmenter().segment(word)) {
    if (part !== '' && !fits(part + segment)) {
      parts.push(part);
      part = '';
    }
    part += segment;
  }
  return [...parts, part];
}

/** Contours as curves, scaled and moved; arcs are approximated by cubics. */
export function curvesOf(contours: readonly Contour[], scale = 1, dx = 0, dy = 0): CurveCommand[] {
  const path = contours.flatMap((contour): CurveCommand[] => {
    const starts = startsOf(contour);
    const commands = contour.segments.flatMap((segment, i): CurveCommand[] => {
      switch (segment.type) {
        case 'line':
          return [{ type: 'L', ...segment.to }];
        case 'cubic': {
          const { c1, c2, to } = segment;
          return [{ type: 'C', x1: c1.x, y1: c1.y, x2: c2.x, y2: c2.y, x: to.x, y: to.y }];
        }
        case 'arc':
          return arcAsCubics(starts[i]!, segment);
      }
    });
    return [{ type: 'M', ...contour.start }, ...commands, ...(contour.closed ? [{ type: 'Z' } as const] : [])];
  });
  return transformCurves(path, { a: scale, b: 0, c: 0, d: scale, e: dx, f: dy });
}

type ArcSegment = Extract<Contour['segments'][number], { type: 'arc' }>;

/** Handles of 4/3·tan(θ/4) radii: off the arc by 4e-6 of its radius at 45°. */
function arcAsCubics(from: { x: number; y: number }, arc: ArcSegment): CurveCommand[] {
  if (Math.abs(arc.sweep) > Math.PI / 4 + 1e-6) {
    const [first, second] = splitSegment(from, arc, 0.5) as [ArcSegment, ArcSegment];
    return [...arcAsCubics(from, first), ...arcAsCubics(first.to, second)];
  }
  const { centre, sweep, to } = arc;
  const k = (4 / 3) * Math.tan(sweep / 4);
  return [
    {
      type: 'C',
      x1: from.x - k * (from.y - centre.y),
      y1: from.y + k * (from.x - centre.x),
      x2: to.x + k * (to.y - centre.y),
      y2: to.y - k * (to.x - centre.x),
      ...to,
    },
  ];
}
