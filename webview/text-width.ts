/** How wide words are on the screen, without laying the page out for it. */

const known = new Map<string, number>();
let pen: CanvasRenderingContext2D | null | undefined;
let font = '';

/** In px, at this size in the page's font. */
export function textWidth(text: string, sizePx: number): number {
  const now = `${sizePx}px ${getComputedStyle(document.body).fontFamily}`;
  if (now !== font) {
    font = now;
    known.clear();
  }
  let width = known.get(text);
  if (width === undefined) {
    pen ??= document.createElement('canvas').getContext('2d');
    if (!pen) return text.length * sizePx * 0.6;
    pen.font = font;
    width = pen.measureText(text).width;
    known.set(text, width);
  }
  return width;
}
