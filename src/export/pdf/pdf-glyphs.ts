/**
 * Letters of a PDF's captions. The outline of each glyph is in the file once, as a form (ISO 32000-1, 8.10), and pages refer
 * to it: a proof has hundreds of letters, but only some sixty glyphs.
 */

import { zlibSync } from 'fflate';
import type * as Pdf from '@cantoo/pdf-lib';
import { curveBounds, transformCurves } from '../../geometry/curves.ts';
import type { CurvePath } from '../../geometry/curves.ts';
import { colourOperands, pathOperators, pdfNumber } from './pdf-operators.ts';
import type { Letters } from '../page/page.ts';

/** Units of an em in a form. */
const perEm = 1000;

interface GlyphForm {
  readonly name: string;
  readonly ref: Pdf.PDFRef;
}

export class GlyphForms {
  readonly #pdf: Pdf.PDFDocument;
  readonly #library: typeof Pdf;
  readonly #forms = new Map<CurvePath, GlyphForm>();
  /** Those that the page in hand refers to. */
  readonly #onPage = new Set<GlyphForm>();

  constructor(pdf: Pdf.PDFDocument, library: typeof Pdf) {
    this.#pdf = pdf;
    this.#library = library;
  }

  /** Operators that paint the letters, in mm. */
  operators({ letters, x, y, size, fill }: Letters): string {
    const scale = (size / perEm).toFixed(7);
    let from = { x: 0, y: 0 };
    const painted = letters.map(({ outline, x: toX, y: toY }) => {
      const form = this.#formOf(outline);
      this.#onPage.add(form);
      const to = { x: pdfNumber(toX * perEm), y: pdfNumber(toY * perEm) };
      const move = `1 0 0 1 ${pdfNumber(to.x - from.x)} ${pdfNumber(to.y - from.y)} cm`;
      from = to;
      return `${move} /${form.name} Do`;
    });
    const start = `q ${colourOperands(fill)} rg ${scale} 0 0 ${scale} ${pdfNumber(x)} ${pdfNumber(y)} cm`;
    return [start, ...painted, 'Q'].join('\n');
  }

  /** Declares the forms of which `operators` has spoken since the last page. */
  addTo(page: Pdf.PDFPage): void {
    for (const { name, ref } of this.#onPage) page.node.setXObject(this.#library.PDFName.of(name), ref);
    this.#onPage.clear();
  }

  #formOf(outline: CurvePath): GlyphForm {
    const known = this.#forms.get(outline);
    if (known) return known;
    const scaled = transformCurves(outline, { a: perEm, b: 0, c: 0, d: perEm, e: 0, f: 0 });
    const { minX, minY, maxX, maxY } = curveBounds(scaled) ?? { minX: 0, minY: 0, maxX: 0, maxY: 0 };
    const content = [...pathOperators(scaled), 'f'].join('\n');
    const { context } = this.#pdf;
    const stream = context.stream(zlibSync(new TextEncoder().encode(content)), {
      Type: 'XObject',
      Subtype: 'Form',
      BBox: [Math.floor(minX), Math.floor(minY), Math.ceil(maxX), Math.ceil(maxY)],
      Filter: 'FlateDecode',
    });
    const form = { name: `Glyph${this.#forms.size + 1}`, ref: context.register(stream) };
    this.#forms.set(outline, form);
    return form;
  }
}
