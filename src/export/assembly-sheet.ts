/** Assembly sheet for the bench: how the layers are put together, as pictures and as steps in working order. */

import { applyTo } from '../geometry/affine.ts';
import { difference, union } from '../geometry/clipper.ts';
import { transformCurves } from '../geometry/curves.ts';
import type { CurvePath } from '../geometry/curves.ts';
import { fitContours } from '../geometry/fit-contours.ts';
import { boundsOf } from '../geometry/measure.ts';
import { poleOf } from '../geometry/pole.ts';
import type { Affine, Region } from '../geometry/types.ts';
import { lookOfStock } from '../look/stock-look.ts';
import { stockOf } from '../tag/by-stock.ts';
import type { Piece, Tag } from '../tag/tag.ts';
import { assembliesOf } from './assemblies.ts';
import { assemblySteps, beforeGluing, gluedOn } from './assembly-steps.ts';
import type { AssemblyStep } from './assembly-steps.ts';
import { explodedDrawing } from './exploded-drawing.ts';
import { Flow, papers } from './flow.ts';
import type { CaptionFaces } from './flow.ts';
import { lengthIn } from './in-words.ts';
import { errorNote } from './job.ts';
import type { Job, Tools } from './job.ts';
import { section } from './job-sheet.ts';
import { curvesOf } from './page.ts';
import type { Page } from './page.ts';
import { paged } from './paged.ts';
import { pdfOf } from './pdf.ts';

const marginMm = 15;
const explodedMm = 95;
const mapMm = 75;
const numberMm = 7;

const quiet = '#666666';
const red = '#B00020';
/** Colours of the map: score lines that get covered, score lines that stay in sight, and layers glued on. */
const inks = { hidden: '#8a8a8a', seen: '#D55E00', layer: '#0072B2', laid: '#dce9f2' } as const;

/** Whether there is anything to assemble. */
export function isLayered(tag: Tag): boolean {
  return assemblySteps(tag).length > 0;
}

/** Assembly sheet of a layered tag, as a PDF. */
export async function toAssemblySheet(job: Job, tools: Tools): Promise<Uint8Array> {
  return pdfOf(await assemblyPages(job, tools), job.tag, errorNote(job) ?? 'Assembly sheet');
}

export async function assemblyPages(job: Job, tools: Tools): Promise<Page[]> {
  const { tag } = job;
  const paper = papers[tag.units];
  const faces: CaptionFaces = { plain: await tools.captions(600), bold: await tools.captions(800) };
  const begin = () => new Flow(faces, marginMm, paper.width - 2 * marginMm);
  const steps = assemblySteps(tag);
  const blocks = [
    head(begin(), job),
    ...explodedViews(begin, tag, steps),
    ...section(begin, 'Before you glue', (add) => {
      for (const { number, piece } of steps) writeBefore(add(), number, piece, tag);
    }),
    ...section(begin, 'Put together', (add) => {
      for (const { number, what } of steps) add().fact(`${number}`, what, numberMm);
      add().fact(
        '·',
        'Press flat under a weight on a level board until the glue has set, and wipe off what comes out at once.',
        numberMm,
      );
      add().fact('·', 'What is said here of glue is common practice, no source.', numberMm);
    }),
    ...frontViews(begin, tag, steps),
  ];
  return paged(blocks, { ...paper, margin: marginMm }, `Assembly: ${tag.title}`);
}

function head(flow: Flow, job: Job): Flow {
  const { title } = job.tag;
  flow.write('Assembly sheet, for the bench', { size: 3, fill: quiet });
  if (flow.canWrite(title)) flow.write(title, { size: title.length > 60 ? 4.5 : 6, bold: true });
  const note = errorNote(job);
  if (note) flow.write(note, { fill: red, bold: true });
  flow.skip(2);
  return flow;
}

/** An exploded view of each assembly, numbered from the back. */
function explodedViews(begin: () => Flow, tag: Tag, steps: readonly AssemblyStep[]): Flow[] {
  return assembliesOf(tag.pieces)
    .filter(({ layers }) => layers.length > 1)
    .map((assembly) => {
      const flow = begin();
      const nameOf = (layer: number) =>
        assembly.layers[layer]!.map(
          (piece) => `${numberOf(piece, steps)} ${piece.title}, ${stockInWords(piece, tag)}`,
        ).join('; ');
      const drawing = explodedDrawing(assembly, tag, { width: flow.width, height: explodedMm }, nameOf);
      drawing.draw(flow.page, flow.left, flow.y, flow.faces.bold);
      flow.skip(drawing.height + 2);
      return flow;
    });
}

function writeBefore(flow: Flow, number: number, piece: Piece, tag: Tag): void {
  const marks = [...new Set(piece.marks.map(({ operation }) => operation))];
  const machine =
    marks.length === 0 ? [] : [`Comes off the machine ${['cut', ...marks.map(operationDone)].join(' and ')}.`];
  flow.fact(`${number}`, `${piece.title}, ${stockInWords(piece, tag)}`, numberMm, { bold: true });
  for (const sentence of [...machine, ...beforeGluing(piece, tag)]) flow.write(sentence, { indent: numberMm });
  flow.skip(1);
}

const operationDone = (operation: 'engrave' | 'score'): string => (operation === 'score' ? 'scored' : 'engraved');

function stockInWords(piece: Piece, tag: Tag): string {
  const { name, material, thickness } = stockOf(piece, tag);
  const what = material ?? name ?? 'its own stock';
  return thickness === undefined ? what : `${what} ${lengthIn(thickness, tag.units)}`;
}

/** A front view of each piece that something is glued on: where the layers go, and which score lines stay in sight. */
function frontViews(begin: () => Flow, tag: Tag, steps: readonly AssemblyStep[]): Flow[] {
  const under = steps.filter(({ piece }) => tag.pieces.some(({ glueTo }) => glueTo === piece.id));
  return section(begin, 'Where the layers go', (add) => {
    for (const { number, piece } of under) drawMap(add(), number, piece, tag, steps);
  });
}

function drawMap(flow: Flow, number: number, piece: Piece, tag: Tag, steps: readonly AssemblyStep[]): void {
  const on = steps.filter(({ piece: { glueTo } }) => glueTo === piece.id);
  // A piece glued on may be larger than the one below.
  const box = boundsOf([piece, ...on.map((each) => each.piece)].flatMap(({ region }) => region))!;
  const [wide, high] = [box.maxX - box.minX, box.maxY - box.minY];
  const scale = Math.min(1, flow.width / wide, mapMm / high);
  const [left, bottom] = [flow.left, flow.y - 2 - high * scale];
  const toPaper: Affine = { a: scale, b: 0, c: 0, d: scale, e: left - box.minX * scale, f: bottom - box.minY * scale };
  const paths = (region: Region): CurvePath => transformCurves(curvesOf(fitContours(region)), toPaper);
  const { page, faces } = flow;
  page.draw(paths(piece.region), { fill: lookOfStock(stockOf(piece, tag)).wood, stroke: '#444444', lineWidth: 0.2 });
  for (const each of on) page.draw(paths(each.piece.region), { fill: inks.laid, stroke: inks.layer, lineWidth: 0.3 });
  const scored = piece.marks.filter(({ operation }) => operation === 'score').map(({ region }) => paths(region));
  for (const path of scored) page.draw(path, { stroke: inks.hidden, lineWidth: 0.2 });
  const open = paths(difference(piece.region, [gluedOn(piece, tag)]));
  page.clipped(
    open,
    scored.map((path) => ({ path, stroke: inks.seen, lineWidth: 0.6 })),
  );
  for (const each of on) {
    const at = poleOf(union([each.piece.region]), 0.2);
    if (!at) continue;
    const { x, y } = applyTo(at, toPaper);
    page.caption(String(each.number), faces.bold, { x, y: y - 1.3, size: 3.6, at: 'middle', fill: inks.layer });
  }
  flow.y = bottom;
  const shown = Math.abs(scale - 1) < 1e-9 ? 'at true size' : `at ${(100 * scale).toFixed(0)} %`;
  const numbers = on.map((each) => each.number).join(', ');
  const lines = scored.length === 0 ? '' : ' Score lines in orange stay in sight; those in grey disappear.';
  flow.write(
    `${number} from the front, ${shown}: blue is where ${numbers} ${on.length === 1 ? 'goes' : 'go'}.${lines}`,
    {
      size: 2.8,
      fill: quiet,
    },
  );
  flow.skip(2);
}

function numberOf(piece: Piece, steps: readonly AssemblyStep[]): number {
  return steps.find((step) => step.piece === piece)!.number;
}
