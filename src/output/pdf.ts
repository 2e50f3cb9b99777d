/**
 * A tag as a PDF: the proof for people, then the cut page at true size. The only file that knows pdf-lib. Captions are drawn
 * as outlines, so that they look the same everywhere; the same words lie over them unseen, to be searched and copied.
 */

import type * as Pdf from 'pdf-lib';
import type { CurvePath } from '../geometry/curves.ts';
import { channels } from './channels.ts';
import { errorNote, kerfNote } from './job.ts';
import type { Job, Tools } from './job.ts';
import { curvesOf, PageBuilder, wrapped } from './page.ts';
import type { Drawing, Page } from './page.ts';
import { proofPage } from './proof.ts';
import { styleOf } from './styles.ts';

/** The format's unit is 1/72 inch (ISO 32000-1, table 30). */
const perMm = 72 / 25.4;

/** Over the cut page of a tag with errors. */
const bannerMm = 12;

export async function toPdf(job: Job, tools: Tools): Promise<Uint8Array> {
  const library = await import('pdf-lib');
  // No dates, and nothing else that differs from one time to the next.
  const pdf = await library.PDFDocument.create({ updateMetadata: false });
  pdf.setTitle(job.tag.title.toWellFormed());
  pdf.setSubject(errorNote(job) ?? kerfNote(job.tag));
  const unseen = await pdf.embedFont(library.StandardFonts.Helvetica);
  addPage(pdf, await proofPage(job, tools), unseen, library);
  addPage(pdf, await cutPage(job, tools), unseen, library);
  return pdf.save({ useObjectStreams: false, addDefaultPage: false });
}

/** All paths in working order, on a page that is as large as they are. */
async function cutPage(job: Job, tools: Tools): Promise<Page> {
  const { tag, plan } = job;
  const { maxX: width, maxY } = plan.bounds;
  const page = new PageBuilder();
  for (const { operation, paths } of plan.steps) {
    const { color, lineWidth } = styleOf(tag, operation);
    for (const { contours } of paths)
      page.draw(curvesOf(contours), operation === 'engrave' ? { fill: color } : { stroke: color, lineWidth });
  }
  const note = errorNote(job);
  if (!note) return page.page(width, maxY);
  const face = await tools.captions(800);
  const size = 3;
  wrapped(note, face, size, width).forEach((line, i) => {
    page.caption(line, face, { x: 0, y: maxY + bannerMm - (i + 1) * size * 1.3, size, fill: '#B00020' });
  });
  return page.page(width, maxY + bannerMm);
}

function addPage(
  pdf: Pdf.PDFDocument,
  { width, height, drawings, words }: Page,
  font: Pdf.PDFFont,
  library: typeof Pdf,
): void {
  const page = pdf.addPage([width * perMm, height * perMm]);
  const { pushGraphicsState, popGraphicsState, concatTransformationMatrix, setLineWidth } = library;
  page.pushOperators(pushGraphicsState(), concatTransformationMatrix(perMm, 0, 0, perMm, 0, 0));
  for (const drawing of drawings) {
    const { path, fill, stroke, lineWidth } = drawing;
    if (fill !== undefined) page.pushOperators(library.setFillingColor(colour(fill, library)));
    if (stroke !== undefined)
      page.pushOperators(library.setStrokingColor(colour(stroke, library)), setLineWidth(lineWidth ?? 0.1));
    page.pushOperators(...operators(path, library), painting(drawing, library));
  }
  page.pushOperators(popGraphicsState());
  addWords(page, words, font, library);
}

function painting(
  { fill, stroke, rule }: Pick<Drawing, 'fill' | 'stroke' | 'rule'>,
  library: typeof Pdf,
): Pdf.PDFOperator {
  const { PDFOperator, PDFOperatorNames: names } = library;
  if (fill === undefined) return library.stroke();
  if (rule === 'nonzero') return library.fill();
  return PDFOperator.of(stroke === undefined ? names.FillEvenOdd : names.FillEvenOddAndStroke);
}

function operators(path: CurvePath, library: typeof Pdf): Pdf.PDFOperator[] {
  const { moveTo, lineTo, appendBezierCurve, closePath } = library;
  let [x, y] = [0, 0];
  return path.map((command) => {
    if (command.type === 'Z') return closePath();
    const from = { x, y };
    ({ x, y } = command);
    switch (command.type) {
      case 'M':
        return moveTo(n(x), n(y));
      case 'L':
        return lineTo(n(x), n(y));
      case 'C':
        return appendBezierCurve(n(command.x1), n(command.y1), n(command.x2), n(command.y2), n(x), n(y));
      case 'Q': {
        // The same curve as a cubic: handles two thirds of the way to its one.
        const toward = (end: number, handle: number) => n(end + (2 / 3) * (handle - end));
        const { x1, y1 } = command;
        return appendBezierCurve(toward(from.x, x1), toward(from.y, y1), toward(x, x1), toward(y, y1), n(x), n(y));
      }
    }
  });
}

/** To a tenth of a micrometre: shorter files, and no exponents, which the format does not have. */
function n(value: number): number {
  return Math.round(value * 1e4) / 1e4 + 0;
}

function colour(hex: string, { rgb }: typeof Pdf): Pdf.Color {
  const [red, green, blue] = channels(hex);
  return rgb(red / 255, green / 255, blue / 255);
}

function addWords(page: Pdf.PDFPage, words: Page['words'], font: Pdf.PDFFont, library: typeof Pdf): void {
  if (words.length === 0) return;
  const known = new Set(font.getCharacterSet());
  const key = page.node.newFontDictionary('Words', font.ref);
  const { beginText, endText, setFontAndSize, setTextMatrix, setTextRenderingMode, showText, TextRenderingMode } =
    library;
  page.pushOperators(beginText(), setTextRenderingMode(TextRenderingMode.Invisible));
  for (const { text, x, y, size } of words) {
    const encodable = Array.from(text.normalize('NFC'))
      .filter((character) => known.has(character.codePointAt(0)!))
      .join('');
    if (encodable === '') continue;
    page.pushOperators(
      setFontAndSize(key, n(size * perMm)),
      setTextMatrix(1, 0, 0, 1, n(x * perMm), n(y * perMm)),
      showText(font.encodeText(encodable)),
    );
  }
  page.pushOperators(endText());
}
