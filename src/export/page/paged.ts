/** Paging: spreads blocks of text and drawings over as many pages as they need. */

import { Flow } from './flow.ts';
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

/** Blocks that begin on a page of their own; the title is in the footer of their pages, and after it the part. */
export interface Chapter {
  readonly blocks: readonly Flow[];
  readonly title: string;
  readonly part?: string;
  /** Whether it goes on the page that is begun, where all of it has room there. */
  readonly joins?: boolean;
}

/** One chapter. `columns`: how many stand side by side; the blocks are as wide as one. */
export function paged(blocks: readonly Flow[], paper: Paper, title: string, columns = 1): Page[] {
  return pagedTogether([{ blocks, title }], paper, columns);
}

interface FilledPage {
  readonly columns: Columns;
  readonly of: Chapter[];
}

const footMm = 8;

/** For the blocks of one column, in mm. */
export function roomOn({ height, margin }: Paper): number {
  return height - 2 * margin - footMm;
}

/** Between two chapters on one page, in mm. */
const apartMm = 10;

/**
 * Pages of all chapters, numbered through. Blocks are never broken; one that is taller than a page makes its page
 * taller.
 */
export function pagedTogether(chapters: readonly Chapter[], paper: Paper, columns = 1): Page[] {
  return [...pageByPage(chapters, paper, columns)];
}

/** The same, each page made when it is asked for. */
export function* pageByPage(chapters: readonly Chapter[], paper: Paper, columns = 1): Generator<Page> {
  const { height, width, margin } = paper;
  const room = roomOn(paper);
  const filled: FilledPage[] = [];
  for (const chapter of chapters) {
    const last = filled.at(-1);
    const below = last?.columns.at(-1);
    if (below && chapter.joins && heightOf(below) + apartMm + heightOf(chapter.blocks) <= room) {
      below.push(space(chapter.blocks[0]!, apartMm), ...chapter.blocks);
      last!.of.push(chapter);
    } else filled.push(...spread(chapter.blocks, room, columns).map((each) => ({ columns: each, of: [chapter] })));
  }
  for (const [index, { columns: all, of }] of filled.entries()) {
    const high = Math.max(height, Math.max(...all.map(heightOf)) + 2 * margin + footMm);
    const builder = new PageBuilder();
    for (const [column, flows] of all.entries()) {
      let top = high - margin;
      for (const flow of flows) {
        const left = column * (columnWidth(paper, columns) + gutterMm);
        builder.add(movedUp(flow.page, top, left));
        if (flow.later) builder.add(movedUp(flow.later(), top, left));
        top -= flow.height;
      }
    }
    const face = of[0]!.blocks[0]!.faces.plain;
    const foot = { y: margin - 4, size: 2.6, fill: quiet } as const;
    const parts = of.flatMap(({ part }) => part ?? []).join(', ');
    builder.caption(shortened([of[0]!.title, ...(parts === '' ? [] : [parts])].join(': ')), face, {
      ...foot,
      x: margin,
    });
    if (filled.length > 1)
      builder.caption(`${index + 1} of ${filled.length}`, face, { ...foot, x: width - margin, at: 'right' });
    yield builder.page(width, high);
  }
}

function space({ faces, left, width }: Flow, mm: number): Flow {
  const flow = new Flow(faces, left, width);
  flow.skip(mm);
  return flow;
}

export function heightOf(flows: readonly Flow[]): number {
  return flows.reduce((sum, { height }) => sum + height, 0);
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
