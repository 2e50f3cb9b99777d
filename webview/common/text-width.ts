/** Widths of words on the screen, measured without laying out the page. */

/** Limit on cached widths; a drag prints hundreds of numbers. */
const mostKnown = 500;

/** By text and font. */
const cache = new Map<string, number>();
let pen: CanvasRenderingContext2D | null | undefined;

/** Width in px, at this size in the page's font. */
export function textWidth(text: string, sizePx: number): number {
  const font = `${sizePx}px ${getComputedStyle(document.body).fontFamily}`;
  const key = `${font}/${text}`;
  let width = cache.get(key);
  if (width === undefined) {
    pen ??= document.createElement('canvas').getContext('2d');
    if (!pen) return text.length * sizePx * 0.6;
    pen.font = font;
    width = pen.measureText(text).width;
    if (cache.size > mostKnown) cache.clear();
    cache.set(key, width);
  }
  return width;
}
