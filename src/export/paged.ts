/** Paging: spreads blocks of text and drawings over as many pages as they need. */

import type { Flow } from './flow.ts';
import { movedUp, PageBuilder } from './page.ts';
import type { Page } from './page.ts';

const quiet = '#666666';
const gutterMm = 10;

export interface Paper {
  readonly width: number;
  readonly height: number;
  readonly margin: number;
}

/** Columns of one page, each with its blocks. */
type Columns = Flow[][];

/** Blocks that begin on a page of their own; the title is in the footer of their pages. */
export interface Chapter {
  readonly blocks: readonly Flow[];
  readonly title: string;
}

/** One chapter. `columns`: how many stand side by side; the blocks are as wide as one. */
export function paged(blocks: readonly Flow[], paper: Paper, title: string, columns = 1): Page[] {
  return pagedTogether([{ blocks, title }], paper, columns);
}

/**
 * Pages of all chapters, numbered through. Blocks are never broken; one that is taller than a page makes its page
 * taller.
 */
export function pagedTogether(chapters: readonly Chapter[], paper: Paper, columns = 1): Page[] {
  const { height, width, margin } = paper;
  const sheets = chapters.flatMap(({ blocks, title }) =>
    spread(blocks, height - 2 * margin - 8, columns).map((sheet) => ({ sheet, title, face: blocks[0]!.faces.plain })),
  );
  return sheets.map(({ sheet, title, face }, index) => {
    const tallest = Math.max(...sheet.map((flows) => flows.reduce((sum, flow) => sum + flow.height, 0)));
    const high = Math.max(height, tallest + 2 * margin + 8);
    const builder = new PageBuilder();
    for (const [column, flows] of sheet.entries()) {
      let top = high - margin;
      for (const flow of flows) {
        builder.add(movedUp(flow.page, top, column * (columnWidth(paper, columns) + gutterMm)));
        top -= flow.height;
      }
    }
    const foot = { y: margin - 4, size: 2.6, fill: quiet } as const;
    builder.caption(shortened(title), face, { ...foot, x: margin });
    if (sheets.length > 1)
      builder.caption(`${index + 1} of ${sheets.length}`, face, { ...foot, x: width - margin, at: 'right' });
    return builder.page(width, high);
  });
}

function spread(blocks: readonly Flow[], room: number, columns: number): Columns[] {
  const sheets: Columns[] = [[[]]];
  let used = 0;
  for (const block of blocks) {
    if (used > 0 && used + block.height > room) {
      if (sheets.at(-1)!.length < columns) sheets.at(-1)!.push([]);
      else sheets.push([[]]);
      used = 0;
    }
    sheets.at(-1)!.at(-1)!.push(block);
    used += block.height;
  }
  return sheets;
}

/** Of the blocks of one column. */
export function columnWidth({ width, margin }: Paper, columns: number): number {
  return (width - 2 * margin - (columns - 1) * gutterMm) / columns;
}

function shortened(title: string): string {
  const letters = [...new Intl.Segmenter().segment(title)].map(({ segment }) => segment);
  return letters.length > 80 ? `${letters.slice(0, 79).join('')}…` : title;
}
