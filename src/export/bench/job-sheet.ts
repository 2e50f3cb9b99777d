/** Job sheet: everything the bench needs to know about a tag, in the order in which it is needed. */

import { flattenContour } from '../../geometry/contour.ts';
import { boundsOf } from '../../geometry/measure.ts';
import { byStock } from '../../tag/by-stock.ts';
import type { Stock } from '../../spec/model/workshop-model.ts';
import type { Tag } from '../../tag/tag.ts';
import { assembliesOf } from '../pictures/assemblies.ts';
import { assemblySteps } from './assembly-steps.ts';
import { approvalInWords } from '../words/approval-in-words.ts';
import { cautionsOf } from '../words/cautions.ts';
import { Flow, papers } from '../page/flow.ts';
import type { CaptionFaces } from '../page/flow.ts';
import { lengthIn } from '../../core/in-words.ts';
import { errorNote, jobsByStock, kerfNote } from '../job/job.ts';
import type { Job, JobIssue, Tools } from '../job/job.ts';
import { estimateOfTag } from '../job/known-estimates.ts';
import { curvesOf, wrapped } from '../page/page.ts';
import type { Page } from '../page/page.ts';
import { paged } from '../page/paged.ts';
import { pdfOf } from '../pdf/pdf.ts';
import { hangingInWords, sizeOf, titleOf } from '../proof/proof-facts.ts';
import { styleOf } from '../page/styles.ts';
import { estimateFacts } from '../words/estimate-facts.ts';
import type { Fact } from '../words/estimate-facts.ts';
import { stockFacts } from '../words/stock-facts.ts';
import { writeWork } from './work-table.ts';
import { wordsOn } from '../words/words-on.ts';

const marginMm = 15;
const columnMm = 34;
const factMm = 3.4;
const drawingMm = 58;
const paddingMm = 6;

const quiet = '#666666';
const inks = { error: '#B00020', warning: '#8A5200', info: '#444444' } as const;
const severities = { error: 'Error', warning: 'Warning', info: 'Note' } as const;

export async function toJobSheet(job: Job, tools: Tools): Promise<Uint8Array> {
  return pdfOf(await jobPages(job, tools), job.tag, errorNote(job) ?? kerfNote(job.tag));
}

export async function jobPages(job: Job, tools: Tools): Promise<Page[]> {
  const { tag } = job;
  const paper = papers[tag.units];
  const faces: CaptionFaces = { plain: await tools.captions(600), bold: await tools.captions(800) };
  const begin = () => new Flow(faces, marginMm, paper.width - 2 * marginMm);
  const blocks = [
    head(begin(), job),
    ...section(begin, 'Look at these first', (add) => {
      for (const issue of job.issues) writeIssue(add(), issue);
    }),
    ...jobsByStock(job).flatMap(({ job: part }, _, all) =>
      section(begin, all.length > 1 ? `Work in this order: ${stockName(part.tag)}` : 'Work in this order', (add) => {
        writeWork(add(), part);
      }),
    ),
    ...facts(begin, 'Job estimate', takenBeside(job)),
    ...byStock(tag).flatMap((part, _, all) =>
      facts(begin, all.length > 1 ? `Material: ${stockName(part)}` : 'Material', [
        ...stockFacts(part),
        ...sheetSize(part),
      ]),
    ),
    ...facts(
      begin,
      'Measure when it is cut',
      sizes(job, (text) => begin().canWrite(text)),
    ),
    ...section(begin, 'Put together', (add) => {
      for (const { number, what } of assemblySteps(tag)) add().fact(`${number}`, what, 7);
    }),
    ...safety(
      begin,
      byStock(tag).map(({ stock }) => stock),
    ),
  ];
  return paged(blocks, { ...paper, margin: marginMm }, `Job sheet: ${tag.title}`);
}

/** A heading kept together with its first block; empty if it has no blocks. */
export function section(begin: () => Flow, title: string, fill: (add: () => Flow) => void): Flow[] {
  const blocks: Flow[] = [];
  fill(() => {
    const flow = begin();
    if (blocks.length === 0) {
      flow.skip(3);
      flow.write(title, { bold: true, size: 4 });
      flow.skip(0.5);
    }
    blocks.push(flow);
    return flow;
  });
  return blocks;
}

/** Short ones stand side by side, two in a row. */
export function facts(begin: () => Flow, title: string, all: readonly Fact[]): Flow[] {
  const waiting = [...all];
  return section(begin, title, (add) => {
    while (waiting.length > 0) {
      const flow = add();
      const [top, half] = [flow.y, flow.width / 2];
      const isShort = ({ value }: Fact) => wrapped(value, flow.faces.plain, factMm, half - columnMm - 3).length === 1;
      const row = waiting.splice(0, waiting.length > 1 && waiting.slice(0, 2).every(isShort) ? 2 : 1);
      for (const [index, { name, value }] of row.entries()) {
        flow.y = top;
        flow.fact(name, value, columnMm, { indent: index * half, size: factMm });
      }
    }
  });
}

export function safety(begin: () => Flow, stocks: readonly Stock[]): Flow[] {
  return section(begin, 'Safety', (add) => {
    for (const caution of cautionsOf(stocks)) add().fact('·', caution, 5);
  });
}

function head(flow: Flow, job: Job): Flow {
  const { tag } = job;
  flow.write('Job sheet, for the bench', { size: 3, fill: quiet });
  const title = flow.canWrite(tag.title) ? tag.title : otherLetters;
  flow.write(title, { size: title.length > 60 ? 4.5 : 6, bold: true });
  const note = errorNote(job);
  if (note) flow.write(note, { fill: inks.error, bold: true });
  const approved = approvalInWords(job, (text) => flow.canWrite(text));
  if (approved) flow.write(approved);
  flow.skip(2);
  flow.skip(drawPlan(flow, job));
  return flow;
}

/**
 * Draws the cut page at small scale: the paths in the colours of the cut files, and the numbers for assembly. Returns
 * its height in mm.
 */
function drawPlan({ page, left, width, y, faces }: Flow, { tag, plan }: Job): number {
  const { maxX, maxY } = plan.bounds;
  const scale = Math.min(1, (width - 2 * paddingMm) / maxX, (drawingMm - 2 * paddingMm) / maxY);
  const high = maxY * scale + 2 * paddingMm;
  page.box(left, y - high, width, high, { stroke: '#cccccc', lineWidth: 0.2 });
  const [x, bottom] = [left + (width - maxX * scale) / 2, y - high + paddingMm];
  for (const { operation, layer, paths } of plan.steps) {
    const { color } = styleOf(tag, operation, layer);
    for (const { contours, alongLines } of paths)
      page.draw(
        curvesOf(contours, scale, x, bottom),
        operation === 'engrave' && !alongLines ? { fill: color } : { stroke: color, lineWidth: 0.2 },
      );
  }
  for (const { number, piece } of assemblySteps(tag)) {
    const outlines = plan.steps.flatMap(({ paths }) => paths.filter((path) => path.piece === piece.id));
    const box = boundsOf(outlines.flatMap(({ contours }) => contours.map((contour) => flattenContour(contour))));
    if (!box) continue;
    const place = { x: x + box.minX * scale, y: bottom + box.maxY * scale + 1.5, size: 3.4 };
    page.caption(String(number), faces.bold, place);
  }
  return high;
}

/** Facts that are not in the work table, with reasons for those that are unknown. */
function takenBeside({ tag }: Job): Fact[] {
  // Defined, because the job has a plan.
  const estimate = estimateOfTag(tag)!;
  const inTable = ['Cut', 'Score', 'Travel', 'Engraved', 'Machine'];
  const known = estimateFacts(estimate, tag.units).filter(({ name }) => !inTable.includes(name));
  const unknown: Fact[] = [];
  if ('missing' in estimate.time) {
    const what = estimate.time.missing.map((key) => (key === 'machine' ? key : `machine: ${key}`)).join(', ');
    unknown.push({ name: 'Machine', value: `time unknown; the spec has no “${what}”.` });
  }
  if (estimate.weight === undefined)
    unknown.push({ name: 'Weight', value: 'unknown; the spec gives no thickness, or no density.' });
  if (!estimate.cost) unknown.push({ name: 'Material cost', value: 'unknown; the spec gives no price.' });
  return [...known, ...unknown];
}

/** Name on the sheet that the bench takes from the shelf. */
function stockName({ stock: { name, material } }: Tag): string {
  return name ?? material ?? 'the tag’s own stock';
}

function sheetSize({ sheet, units }: Tag): Fact[] {
  if (!sheet) return [];
  return [{ name: 'Sheet size', value: `${lengthIn(sheet.width, units)} × ${lengthIn(sheet.height, units)}` }];
}

/** For text that the caption font has no glyphs for. */
const otherLetters = 'in letters that this sheet’s own font does not have';

function sizes(job: Job, canWrite: (text: string) => boolean): Fact[] {
  const { tag } = job;
  const assemblies = assembliesOf(tag.pieces);
  const hangingText = hangingInWords(tag);
  return [
    ...assemblies.map((assembly) => {
      return { name: assemblies.length > 1 ? titleOf(assembly) : 'Finished size', value: sizeOf(assembly, tag) };
    }),
    ...(hangingText === undefined ? [] : [{ name: tag.tie ? 'Hangs on' : 'Hangs by', value: hangingText }]),
    ...wordsOn(job).map(({ lines, way, font }) => ({
      name: 'Words',
      value: `${canWrite(lines.join('')) ? `“${lines.join(' / ')}”` : otherLetters}, ${way}, in ${font}`,
    })),
  ];
}

function writeIssue(flow: Flow, { severity, message, line, label }: JobIssue): void {
  const place = [label, line === undefined ? undefined : `line ${line}`]
    .filter((part) => part !== undefined)
    .join(', ');
  const name = place === '' ? severities[severity] : `${severities[severity]}, ${place}`;
  flow.fact(name, message, columnMm, { fill: inks[severity] });
  flow.skip(0.5);
}
