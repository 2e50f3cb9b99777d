/** Text down a page, line after line: from 0 downwards, to be moved up onto the page at the end. */

import type { FontFace } from '../text/font-face.ts';
import { layoutText } from '../text/layout.ts';
import { PageBuilder, wrapped } from './page.ts';

/** In mm: ISO 216 A4, and the 8 1/2 by 11 inches of where inches are. */
export const papers = { mm: { width: 210, height: 297 }, in: { width: 215.9, height: 279.4 } } as const;

export interface Faces {
  readonly plain: FontFace;
  readonly bold: FontFace;
}

export interface WriteLook {
  readonly size?: number;
  readonly fill?: string;
  readonly bold?: boolean;
  /** From the left margin. */
  readonly indent?: number;
  /** From one line to the next, by the em. */
  readonly lead?: number;
  /** Of the lines; up to the right margin unless said. */
  readonly width?: number;
}

const sizeMm = 3.4;

export class Flow {
  readonly page = new PageBuilder();
  /** Of the line that comes next; not above 0. */
  y = 0;

  constructor(
    readonly faces: Faces,
    readonly left: number,
    readonly width: number,
  ) {}

  get height(): number {
    return -this.y;
  }

  /** Whether the captions' font has every letter of it; gaps would stand for the others. */
  canWrite(text: string): boolean {
    return layoutText(this.faces.plain, { text, align: 'left' }).missing.length === 0;
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

  /** A name in bold and what there is to say of it, in a column. */
  fact(name: string, value: string, column: number, look: WriteLook = {}): void {
    const top = this.y;
    this.write(name, { bold: true, width: column - 3 });
    const below = this.y;
    this.y = top;
    this.write(value, { ...look, indent: column });
    this.y = Math.min(this.y, below);
  }
}
