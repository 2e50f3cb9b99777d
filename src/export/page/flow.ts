/** Flow: text set down a page line by line, from y = 0 downwards; it is moved up onto the page at the end. */

import type { FontFace } from '../../text/font-face.ts';
import { layoutText } from '../../text/text-layout.ts';
import { PageBuilder, wrapped } from './page.ts';
import type { Page } from './page.ts';

/** In mm: A4 (ISO 216) for metric, letter (8 1/2 by 11 inches) for inches. */
export const papers = { mm: { width: 210, height: 297 }, in: { width: 215.9, height: 279.4 } } as const;

export interface CaptionFaces {
  readonly plain: FontFace;
  readonly bold: FontFace;
}

export interface WriteLook {
  readonly size?: number;
  readonly fill?: string;
  readonly bold?: boolean;
  /** From the left margin, in mm. */
  readonly indent?: number;
  /** Line spacing, in em. */
  readonly lead?: number;
  /** Line width in mm; by default up to the right margin. */
  readonly width?: number;
}

const sizeMm = 3.4;

/** Whether a font for captions has glyphs for the whole text; missing ones would be drawn as gaps. */
export function canWrite(captions: FontFace, text: string): boolean {
  return layoutText(captions, { text, align: 'left' }).missing.length === 0;
}

export class Flow {
  readonly page = new PageBuilder();
  /** What is drawn only once its page is written, as it takes much memory; within the height of the flow. */
  later?: () => Pick<Page, 'drawings' | 'words'>;
  /** Top of the next line, in mm; never above 0. */
  y = 0;

  constructor(
    readonly faces: CaptionFaces,
    readonly left: number,
    readonly width: number,
  ) {}

  get height(): number {
    return -this.y;
  }

  canWrite(text: string): boolean {
    return canWrite(this.faces.plain, text);
  }

  skip(mm: number): void {
    this.y -= mm;
  }

  write(
    text: string,
    { size = sizeMm, fill, bold = false, indent = 0, lead = 1.5, width = this.width - indent }: WriteLook = {},
  ): void {
    const face = bold ? this.faces.bold : this.faces.plain;
    for (const line of wrapped(text, face, size, width)) {
      this.y -= lead * size;
      this.page.caption(line, face, {
        x: this.left + indent,
        y: this.y + 0.4 * size,
        size,
        ...(fill === undefined ? {} : { fill }),
      });
    }
  }

  /** A bold name with its value in a column beside it. */
  fact(name: string, value: string, column: number, { indent = 0, ...look }: WriteLook = {}): void {
    const top = this.y;
    this.write(name, { bold: true, indent, width: column - 3 });
    const below = this.y;
    this.y = top;
    this.write(value, { ...look, indent: indent + column });
    this.y = Math.min(this.y, below);
  }
}
