/** The proof: one page that shows a customer what will be made, and the maker what was found. */

import type { Severity } from '../issue.ts';
import { errorNote } from './job.ts';
import type { Job, Tools } from './job.ts';
import { moved, PageBuilder, wrapped } from './page.ts';
import type { Page } from './page.ts';
import { proofDrawing } from './proof-drawing.ts';
import { proofFacts } from './proof-facts.ts';

/** In mm: ISO 216 A4, and the 8 1/2 by 11 inches of where inches are. */
const papers = { mm: { width: 210, height: 297 }, in: { width: 215.9, height: 279.4 } } as const;

const marginMm = 15;

/** The em of captions, and from one line to the next. */
const sizeMm = 3.4;
const leadingMm = 5.2;

/** Values begin so far to the right of names. */
const columnMm = 30;

/** More findings than this are counted, not listed. */
const mostFindings = 12;

/** A picture has no true size; a tag is shown at most so many times its own on one. */
const mostEnlarged = 3;

/** As long as this on paper, to be measured with a ruler: printers shrink pages. */
const barMm = 50;

const words: Readonly<Record<Severity, string>> = { error: 'Error', warning: 'Warning', info: 'Note' };
const inks: Readonly<Record<Severity, string>> = { error: '#B00020', warning: '#9A5B00', info: '#444444' };

/** `cropped`: only as high as what is on it, for a picture. */
export async function proofPage(job: Job, tools: Tools, cropped = false): Promise<Page> {
  const { tag, issues } = job;
  const paper = papers[tag.units];
  const [plain, bold] = [await tools.captions(600), await tools.captions(800)];
  const page = new PageBuilder();
  const room = paper.width - 2 * marginMm;
  // Written downwards from 0; moved up onto the page at the end.
  let y = -marginMm - 7;
  const write = (text: string, look: { size?: number; fill?: string; bold?: boolean; x?: number } = {}) => {
    const { size = sizeMm, fill, x = marginMm } = look;
    const face = look.bold ? bold : plain;
    for (const line of wrapped(text, face, size, paper.width - marginMm - x)) {
      page.caption(line, face, { x, y, size, ...(fill === undefined ? {} : { fill }) });
      y -= (leadingMm * size) / sizeMm;
    }
  };
  write(tag.title, { size: 6.5, bold: true });
  const note = errorNote(job);
  if (note) write(note, { fill: inks.error, bold: true });
  const drawing = proofDrawing(tag, {
    width: room,
    height: (cropped ? 0.35 : 0.5) * paper.height,
    most: cropped ? mostEnlarged : 1,
  });
  drawing.draw(page, marginMm + 2, y - 2, plain);
  y -= drawing.height + 12;
  if (!cropped) {
    drawBar(page, y, drawing.scale, plain);
    y -= 9;
  }
  for (const { name, value } of proofFacts(job)) {
    page.caption(name, bold, { x: marginMm, y, size: sizeMm });
    write(value, { x: marginMm + columnMm });
  }
  y -= 2;
  page.caption('Checked', bold, { x: marginMm, y, size: sizeMm });
  if (issues.length === 0) write('No problems found.', { x: marginMm + columnMm });
  for (const { severity, message } of issues.slice(0, mostFindings))
    write(`${words[severity]}: ${message}`, { x: marginMm + columnMm, fill: inks[severity] });
  if (issues.length > mostFindings)
    write(`And ${issues.length - mostFindings} more.`, { x: marginMm + columnMm, fill: inks.info });
  y -= 2;
  write('Colours are only like those of the material. Widths are geometry, no promise of strength.', {
    size: 2.8,
    fill: inks.info,
  });
  // A page that overflows grows: nothing may be cut off.
  const height = cropped ? marginMm - y - 2 : Math.max(paper.height, marginMm - y);
  return moved(page.page(paper.width, height), height);
}

function drawBar(page: PageBuilder, y: number, scale: number, face: Awaited<ReturnType<Tools['captions']>>): void {
  if (scale < 1) {
    const percent = (100 * scale).toFixed(0);
    page.caption(`Drawn at ${percent} % of its size.`, face, { x: marginMm, y, size: 2.8, fill: inks.info });
    return;
  }
  page.line([marginMm, y], [marginMm + barMm, y], inks.info, 0.3);
  for (const x of [marginMm, marginMm + barMm]) page.line([x, y - 1], [x, y + 1], inks.info, 0.3);
  page.caption('True size when this line is 50 mm long.', face, {
    x: marginMm + barMm + 3,
    y: y - 1,
    size: 2.8,
    fill: inks.info,
  });
}
