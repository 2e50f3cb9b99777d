/**
 * Writes pages as a PDF: the customer's proof, the job sheet, the cut page at true size. The only file that uses the
 * PDF library. Captions are drawn as outlines (`pdf-glyphs.ts`), so that they look the same everywhere, with the same words
 * over them as invisible text, to be searched and copied.
 */

import { zlibSync } from 'fflate';
import type * as Pdf from '@cantoo/pdf-lib';
import type { Tag } from '../../tag/tag.ts';
import { draftNote, errorNote, isDraft, jobsByStock } from '../job/job.ts';
import type { Job, Tools } from '../job/job.ts';
import { curvesOf, PageBuilder, wrapped } from '../page/page.ts';
import type { Clipped, Drawing, Page } from '../page/page.ts';
import { batchProofPages } from '../proof/batch-proof.ts';
import { proofPage } from '../proof/proof.ts';
import type { TagProof } from '../proof/tag-proof.ts';
import { colourOperands, pathOperators, pdfNumber } from './pdf-operators.ts';
import { GlyphForms } from './pdf-glyphs.ts';
import { styleOf } from '../page/styles.ts';

/** The format's unit is 1/72 inch (ISO 32000-1, table 30). */
const perMm = 72 / 25.4;

/** Least width of a page with a warning not to cut, in mm. */
const leastBannerMm = 60;

/** A PDF with the proof and the cut pages. */
export async function toPdf(job: Job, tools: Tools): Promise<Uint8Array> {
  const pages = [await proofPage(job, tools), ...(await cutPages(job, tools))];
  return pdfOf(pages, job.tag, 'Proof, and the outlines at true size');
}

/** The cut pages alone: who buys files has nothing to sign. */
export async function toCutPdf(job: Job, tools: Tools): Promise<Uint8Array> {
  return pdfOf(await cutPages(job, tools), job.tag, errorNote(job) ?? 'The outlines at true size');
}

async function cutPages(job: Job, tools: Tools): Promise<Page[]> {
  const pages: Page[] = [];
  for (const { job: part } of jobsByStock(job)) pages.push(await cutPage(part, tools));
  return pages;
}

/** The proof alone, as the customer gets it. */
export async function toProof(job: Job, tools: Tools): Promise<Uint8Array> {
  return pdfOf([await proofPage(job, tools)], job.tag, isDraft(job) ? draftNote : 'Proof');
}

/** One proof for all tags of a batch; `undefined` without any. `title`: of the batch. */
export async function toBatchProof(
  title: string,
  [first, ...others]: readonly TagProof[],
  tools: Tools,
): Promise<Uint8Array | undefined> {
  if (!first) return undefined;
  const proofs = [first, ...others] as const;
  const subject = proofs.some((proof) => proof.isDraft) ? draftNote : 'Proof';
  return pdfOf(await batchProofPages(title, proofs, tools), { title }, subject);
}

/** `pages`: each is let go once it is written. `subject`: the kind of document, or its state. */
export async function pdfOf(
  pages: Iterable<Page> | AsyncIterable<Page>,
  { title }: Pick<Tag, 'title'>,
  subject: string,
): Promise<Uint8Array> {
  const library = await import('@cantoo/pdf-lib');
  // No dates, nor anything else that varies between runs.
  const pdf = await library.PDFDocument.create({ updateMetadata: false });
  pdf.setTitle(title.toWellFormed());
  pdf.setSubject(subject);
  const unseen = await pdf.embedFont(library.StandardFonts.Helvetica);
  const glyphs = new GlyphForms(pdf, library);
  for await (const page of pages) addPage(pdf, page, glyphs, unseen, library);
  return pdf.save({ useObjectStreams: false, addDefaultPage: false });
}

/** All paths in working order, on a page of their size. */
export async function cutPage(job: Job, tools: Tools): Promise<Page> {
  const { tag, plan } = job;
  const { maxX: width, maxY } = plan.bounds;
  const page = new PageBuilder();
  for (const { operation, layer, paths } of plan.steps) {
    const { color, lineWidth } = styleOf(tag, operation, layer);
    for (const { contours, alongLines } of paths) {
      const isFilled = operation === 'engrave' && !alongLines;
      page.draw(curvesOf(contours), isFilled ? { fill: color } : { stroke: color, lineWidth });
    }
  }
  const note = errorNote(job);
  if (!note) return page.page(width, maxY);
  const face = await tools.captions(800);
  const [size, leading] = [3, 3.9];
  const wide = Math.max(width, leastBannerMm);
  const lines = wrapped(note, face, size, wide);
  lines.forEach((line, i) => {
    page.caption(line, face, { x: 0, y: maxY + (lines.length - i - 0.3) * leading, size, fill: '#B00020' });
  });
  return page.page(wide, maxY + (lines.length + 0.7) * leading);
}

function addPage(
  pdf: Pdf.PDFDocument,
  { width, height, drawings, words }: Page,
  glyphs: GlyphForms,
  font: Pdf.PDFFont,
  library: typeof Pdf,
): void {
  const page = pdf.addPage([width * perMm, height * perMm]);
  // Operators are written as text: as objects of the library, the thousands of curves in lettering take several times
  // as long.
  const painted = drawings.map((each) => ('letters' in each ? glyphs.operators(each) : drawingOperators(each)));
  const operators = [`q ${perMm} 0 0 ${perMm} 0 0 cm`, ...painted, 'Q', ''].join('\n');
  const { context } = pdf;
  const contents = context.stream(zlibSync(new TextEncoder().encode(operators)), { Filter: 'FlateDecode' });
  page.node.addContentStream(context.register(contents));
  glyphs.addTo(page);
  addWords(page, words, font, library);
}

function drawingOperators(each: Drawing | Clipped): string {
  if (!('clip' in each)) return paintOperators(each);
  return ['q', ...pathOperators(each.clip), 'W* n', ...each.drawings.map(paintOperators), 'Q'].join('\n');
}

/** Path operators; see ISO 32000-1, annex A. */
function paintOperators({ path, fill, stroke, rule, lineWidth = 0.1 }: Drawing): string {
  const fillColour = fill === undefined ? [] : [`${colourOperands(fill)} rg`];
  const line = stroke === undefined ? [] : [`${colourOperands(stroke)} RG ${pdfNumber(lineWidth)} w`];
  const even = rule === 'nonzero' ? '' : '*';
  const painting = fill === undefined ? 'S' : `${stroke === undefined ? 'f' : 'B'}${even}`;
  return [...fillColour, ...line, ...pathOperators(path), painting].join('\n');
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
      setFontAndSize(key, pdfNumber(size * perMm)),
      setTextMatrix(1, 0, 0, 1, pdfNumber(x * perMm), pdfNumber(y * perMm)),
      showText(font.encodeText(encodable)),
    );
  }
  page.pushOperators(endText());
}
