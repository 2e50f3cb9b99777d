/** One tag on a contact sheet: how it looks, what it is called, and what is said of it, with a dot where it is said. */

import type { Report } from '../../src/engine/engine.ts';
import type { Severity } from '../../src/core/issue-kinds.ts';
import { wrapped } from '../../src/export/page/page.ts';
import type { PageBuilder } from '../../src/export/page/page.ts';
import { proofPicture } from '../../src/export/pictures/proof-picture.ts';
import type { PicturePlace } from '../../src/export/pictures/proof-picture.ts';
import type { FontFace } from '../../src/text/font-face.ts';
import { listed, reportedIn } from '../collection/designs.ts';

export interface Faces {
  readonly plain: FontFace;
  readonly bold: FontFace;
}

export interface Tile {
  /** In mm, on paper. */
  readonly height: number;
  /** With its upper left corner there. */
  draw(page: PageBuilder, left: number, top: number): void;
}

const inks: Readonly<Record<Severity, string>> = { error: '#B00020', warning: '#9A5B00', info: '#1F5FA0' };

const titleMm = 3.6;
const noteMm = 2.3;
const leadingMm = 3.1;

/** Tags are shown at most so high, and at most so many times their size. */
const highestMm = 58;
const mostEnlarged = 2.2;

/** A flood is counted, not listed. */
const mostLines = 14;

/** @param notes What else is to be written below, such as the fixes that were made. */
export function tileOf(
  title: string,
  report: Report,
  { width, faces, notes = [] }: { width: number; faces: Faces; notes?: readonly string[] },
): Tile {
  const { tag } = report;
  const reported = reportedIn(report);
  const lines = [
    ...notes.map((text) => ({ text, fill: '#2E6B3A' })),
    ...reported.map((each) => ({ text: listed([each]).trim(), fill: inks[each.severity] })),
  ].flatMap(({ text, fill }) =>
    wrapped(text.replaceAll('→', 'to'), faces.plain, noteMm, width).map((line) => ({ line, fill })),
  );
  const shown = lines.slice(0, mostLines);
  if (lines.length > shown.length)
    shown.push({ line: `and ${lines.length - shown.length} more lines`, fill: '#444444' });
  const drawing = tag && proofPicture(tag, { width, height: highestMm, most: mostEnlarged });
  const drawn = drawing?.height ?? 10;
  return {
    height: titleMm + 4 + drawn + 4 + shown.length * leadingMm,
    draw(page, left, top) {
      page.caption(title, faces.bold, { x: left, y: top - titleMm, size: titleMm });
      const upper = top - titleMm - 4;
      const places = drawing?.draw(page, left, upper, faces.plain) ?? [];
      // Where everything lies in one heap, as nearly always; of tags beside each other only the list is shown.
      if (places.length === 1) drawDots(page, report, places[0]!);
      shown.forEach(({ line, fill }, i) => {
        page.caption(line, faces.plain, { x: left, y: upper - drawn - 4 - i * leadingMm, size: noteMm, fill });
      });
    },
  };
}

function drawDots(page: PageBuilder, { issues }: Report, { scale, dx, dy }: PicturePlace): void {
  for (const { points = [], severity } of issues) {
    for (const { x, y } of points) {
      const [px, py] = [x * scale + dx, y * scale + dy];
      page.box(px - 0.5, py - 0.5, 1, 1, { stroke: inks[severity], lineWidth: 0.3 });
    }
  }
}
