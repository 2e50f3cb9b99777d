/** Assembly sheet for the bench: how the layers are put together, as pictures and as steps in working order. */

import { listedQuoted } from '../../core/names.ts';
import type { Units } from '../../core/units.ts';
import { stockOf } from '../../tag/by-stock.ts';
import type { Piece, Tag } from '../../tag/tag.ts';
import { assembliesOf } from '../pictures/assemblies.ts';
import { assemblySteps, beforeGluing } from './assembly-steps.ts';
import type { AssemblyStep } from './assembly-steps.ts';
import { explodedDrawing } from '../pictures/exploded-drawing.ts';
import { Flow, papers } from '../page/flow.ts';
import type { CaptionFaces } from '../page/flow.ts';
import { lengthIn } from '../../core/in-words.ts';
import { errorNote } from '../job/job.ts';
import type { Job, Tools } from '../job/job.ts';
import { section } from './job-sheet.ts';
import type { Page } from '../page/page.ts';
import { pagedTogether } from '../page/paged.ts';
import { pdfOf } from '../pdf/pdf.ts';
import { frontViews, viewsByName } from './placement-maps.ts';
import type { AlikeTags } from './placement-maps.ts';

const marginMm = 15;
const explodedMm = 95;
const numberMm = 7;
/** Further names are given as a count: all of them are beside the drawings. */
const mostShown = 3;

const quiet = '#666666';
const red = '#B00020';

/** Whether there is anything to assemble. */
export function isLayered(tag: Tag): boolean {
  return assembliesOf(tag.pieces).some(({ layers }) => layers.length > 1);
}

/** Assembly sheet of a layered tag, as a PDF. */
export async function toAssemblySheet(job: Job, tools: Tools): Promise<Uint8Array> {
  return pdfOf(await assemblyPages(job, tools), job.tag, errorNote(job) ?? 'Assembly sheet');
}

type Assembled = Pick<Job, 'tag' | 'issues'> & {
  /** Tags of the same spec by their layers, the one that is shown first. */
  readonly alike?: readonly AlikeTags[];
};

export async function assemblyPages(job: Assembled, tools: Tools): Promise<Page[]> {
  return pagesOfAssemblies([job], job.tag.units, tools);
}

/** Each begins on a page of its own. */
export async function pagesOfAssemblies(
  jobs: readonly Assembled[],
  units: Units,
  tools: Pick<Tools, 'captions'>,
): Promise<Page[]> {
  const paper = papers[units];
  const faces: CaptionFaces = { plain: await tools.captions(600), bold: await tools.captions(800) };
  const begin = () => new Flow(faces, marginMm, paper.width - 2 * marginMm);
  const chapters = jobs.map((job) => ({ blocks: blocksOf(begin, job), title: `Assembly: ${job.tag.title}` }));
  return pagedTogether(chapters, { ...paper, margin: marginMm });
}

function blocksOf(begin: () => Flow, job: Assembled): Flow[] {
  const { tag, alike = [] } = job;
  const steps = assemblySteps(tag);
  return [
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
    ...(alike.length > 1 ? viewsByName(begin, alike) : frontViews(begin, tag)),
  ];
}

function head(flow: Flow, job: Assembled): Flow {
  const { title } = job.tag;
  flow.write('Assembly sheet, for the bench', { size: 3, fill: quiet });
  if (flow.canWrite(title)) flow.write(title, { size: title.length > 60 ? 4.5 : 6, bold: true });
  const note = errorNote(job);
  if (note) flow.write(note, { fill: red, bold: true });
  const [shown, ...others] = job.alike ?? [];
  if (shown && others.length > 0)
    flow.write(
      `The steps are those of ${shown.names.length === 0 ? 'the first tag' : listedQuoted(shown.names, mostShown)}; below is where the layers of each go, and what differs.`,
      { fill: quiet },
    );
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
        assembly.layers[layer]!.map((piece) => layerInWords(numberOf(piece, steps), piece, tag)).join('; ');
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
  flow.write(layerInWords(number, piece, tag), { bold: true });
  for (const sentence of [...machine, ...beforeGluing(piece, tag)]) flow.write(sentence, { indent: numberMm });
  flow.skip(1);
}

/** Says what the number is, as “2 letters” is read as a count. */
function layerInWords(number: number, piece: Piece, tag: Tag): string {
  return `Layer ${number}: ${piece.title}, ${stockInWords(piece, tag)}`;
}

const operationDone = (operation: 'engrave' | 'score'): string => (operation === 'score' ? 'scored' : 'engraved');

function stockInWords(piece: Piece, tag: Tag): string {
  const { name, material, thickness } = stockOf(piece, tag);
  const what = material ?? name ?? 'its own stock';
  return thickness === undefined ? what : `${what} ${lengthIn(thickness, tag.units)}`;
}

function numberOf(piece: Piece, steps: readonly AssemblyStep[]): number {
  return steps.find((step) => step.piece === piece)!.number;
}
