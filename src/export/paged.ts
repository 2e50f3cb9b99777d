/** Paging: spreads blocks of text and drawings over as many pages as they need. */

import type { Flow } from './flow.ts';
import { movedUp, PageBuilder } from './page.ts';
import type { Page } from './page.ts';

const quiet = '#666666';

export interface Paper {
  readonly width: number;
  readonly height: number;
  readonly margin: number;
}

/**
 * Blocks are never broken; one that is taller than a page makes its page taller. `title`: in the footer, with the page
 * number.
 */
export function paged(blocks: readonly Flow[], { width, height, margin }: Paper, title: string): Page[] {
  const sheets: Flow[][] = [[]];
  let used = 0;
  const room = height - 2 * margin - 8;
  for (const block of blocks) {
    if (used > 0 && used + block.height > room) {
      sheets.push([]);
      used = 0;
    }
    sheets.at(-1)!.push(block);
    used += block.height;
  }
  return sheets.map((flows, index) => {
    const high = Math.max(height, flows.reduce((sum, flow) => sum + flow.height, 0) + 2 * margin + 8);
    const builder = new PageBuilder();
    let top = high - margin;
    for (const flow of flows) {
      builder.add(movedUp(flow.page, top));
      top -= flow.height;
    }
    const { plain } = blocks[0]!.faces;
    const foot = { y: margin - 4, size: 2.6, fill: quiet } as const;
    builder.caption(shortened(title), plain, { ...foot, x: margin });
    if (sheets.length > 1)
      builder.caption(`${index + 1} of ${sheets.length}`, plain, { ...foot, x: width - margin, at: 'right' });
    return builder.page(width, high);
  });
}

function shortened(title: string): string {
  const letters = [...new Intl.Segmenter().segment(title)].map(({ segment }) => segment);
  return letters.length > 80 ? `${letters.slice(0, 79).join('')}…` : title;
}
