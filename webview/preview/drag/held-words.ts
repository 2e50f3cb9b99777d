/** What is said of the thing that is held: its name, its change, or why it cannot be changed. Below its frame. */

import { svg } from '../../common/dom.ts';
import { textWidth } from '../../common/text-width.ts';
import type { Box, Size, XY } from '../../common/camera/viewport.ts';

const fontPx = 12;
const linePx = 15;
/** The ruler on the left, and a little on the right. */
const marginPx = { left: 22, right: 8 };

export class HeldWords {
  readonly element = svg('text', { class: 'words' });
  private text = '';
  private lines: readonly string[] = [];

  set(text: string): void {
    this.text = text;
  }

  /** As near to `at` as the stage allows. Returns the space that it takes. */
  follow(at: XY, stage: Size): Box {
    const lines = inLines(this.text, stage.width - marginPx.left - marginPx.right);
    const width = Math.max(...lines.map((line) => textWidth(line, fontPx)));
    const height = (lines.length - 1) * linePx;
    const x = Math.max(Math.min(at[0], stage.width - width - marginPx.right), marginPx.left);
    const y = Math.min(at[1], stage.height - marginPx.right - height);
    if (lines.join('\n') !== this.lines.join('\n')) {
      this.lines = lines;
      this.element.replaceChildren(...lines.flatMap((line, nth) => [nth > 0 ? ' ' : '', lineOf(line, nth)]));
    }
    for (const line of this.element.children) line.setAttribute('x', x.toFixed(1));
    this.element.setAttribute('y', y.toFixed(1));
    return [x, y - fontPx, x + width, y + height + 4];
  }
}

function lineOf(text: string, nth: number): SVGTSpanElement {
  const line = svg('tspan', nth > 0 ? { dy: `${linePx}` } : {});
  line.textContent = text;
  return line;
}

function inLines(text: string, mostPx: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const longer = `${lines.at(-1) ?? ''} ${word}`;
    if (lines.length > 0 && textWidth(longer, fontPx) <= mostPx) lines.splice(-1, 1, longer);
    else lines.push(word);
  }
  return lines;
}
