/**
 * Proof: the page that a customer approves, with the tag as it will look, its words as they are spelt, its size, and
 * room to sign. It leaves out how the tag is made, and the workshop's terms.
 */

import { assembliesOf } from '../pictures/assemblies.ts';
import { explodedDrawing } from '../pictures/exploded-drawing.ts';
import { Flow, papers } from '../page/flow.ts';
import type { CaptionFaces } from '../page/flow.ts';
import { capitalised, listed } from '../../core/names.ts';
import { counted } from '../../core/units.ts';
import { draftNote, isDraft } from '../job/job.ts';
import type { Job, Tools } from '../job/job.ts';
import { movedUp } from '../page/page.ts';
import { wordsOn } from '../words/words-on.ts';
import { union } from '../../geometry/clipper.ts';
import type { Page } from '../page/page.ts';
import { drawLetters, drawWords } from './proof-words.ts';
import { proofFacts } from './proof-facts.ts';
import type { ProofFact } from './proof-facts.ts';
import { drawTrueSize, proofPicture } from '../pictures/proof-picture.ts';
import type { Units } from '../../core/units.ts';
import { lookOfStock } from '../../look/stock-look.ts';
import { byStock } from '../../tag/by-stock.ts';
import type { Tag } from '../../tag/tag.ts';

const marginMm = 18;

/** Width of the name column, in mm. */
const columnMm = 30;

const quiet = '#666666';
const red = '#B00020';

/** Height of the picture, least and most, in mm. */
const leastPictureMm = 48;
const mostPictureMm = 120;
const leastLayersMm = 40;
const mostLayersMm = 62;
/** Below the picture: its scale, and what sets it apart. */
const scaleMm = 9;

/** A tag smaller than this on paper, in mm, is shown enlarged, up to the given factor, with its true size beside it. */
const smallMm = { width: 70, height: 50 } as const;
const mostEnlarged = 4;
const smallStripMm = 2 + smallMm.height + 10;

/** Largest scale on a PNG, which has no true size. */
const mostOnPicture = 3;

/** Scale bars to check with a ruler, because printers shrink pages. */
const bars = { mm: { mm: 50, text: '50 mm' }, in: { mm: 50.8, text: '2 in' } } as const;

/** `cropped`: only as high as its contents, for a PNG. */
export async function proofPage(job: Job, tools: Tools, cropped = false): Promise<Page> {
  const { tag } = job;
  const paper = papers[tag.units];
  const width = paper.width - 2 * marginMm;
  const faces: CaptionFaces = { plain: await tools.captions(600), bold: await tools.captions(800) };
  const begin = () => new Flow(faces, marginMm, width);
  const head = begin();
  writeHead(head, job);
  const rest = begin();
  drawWords(rest, job);
  writeFacts(rest, proofFacts(tag));
  const foot = begin();
  writeFoot(foot, tag, isDraft(job));
  const taken = [head, rest, foot].reduce((sum, { height }) => sum + height, 0);
  const below = scaleMm + (isSmall(tag) ? smallStripMm : 0);
  const free = paper.height - 2 * marginMm - taken - below;
  const layers = layersIn(begin, tag, cropped ? Infinity : free - leastPictureMm);
  const picture = begin();
  const room = cropped ? mostPictureMm : Math.min(mostPictureMm, Math.max(leastPictureMm, free - layers.height));
  drawPicture(picture, tag, room, cropped);
  return stacked([head, picture, layers, rest], foot, paper, cropped);
}

/**
 * Stacks blocks from the top, with the footer at the bottom. A page that overflows grows, so that nothing is cut off.
 */
function stacked(flows: readonly Flow[], foot: Flow, paper: { width: number; height: number }, cropped: boolean): Page {
  const high = [...flows, foot].reduce((sum, { height }) => sum + height, 0) + 2 * marginMm;
  const height = cropped ? high : Math.max(paper.height, high);
  let top = height - marginMm;
  const parts = flows.map((flow) => {
    const part = movedUp(flow.page, top);
    top -= flow.height;
    return part;
  });
  parts.push(movedUp(foot.page, marginMm + foot.height));
  return {
    width: paper.width,
    height,
    drawings: parts.flatMap(({ drawings }) => drawings),
    words: parts.flatMap(({ words }) => words),
  };
}

function writeHead(flow: Flow, job: Job): void {
  const { title } = job.tag;
  flow.write('Proof', { size: 3.2, fill: quiet });
  const size = title.length > 60 ? 5 : 7.5;
  if (flow.canWrite(title)) flow.write(title, { size, bold: true });
  else drawTitle(flow, job, size);
  if (isDraft(job)) flow.write(draftNote, { fill: red, bold: true });
  flow.skip(4);
}

/** In the letters of the tag, where its title is the words on it. */
function drawTitle(flow: Flow, job: Job, size: number): void {
  const { title } = job.tag;
  const own = wordsOn(job).find(({ lines }) => lines.join(' ') === title)?.lettering;
  if (own) drawLetters(flow, union(own.toRead()), size);
}

function isSmall({ pieces }: Tag): boolean {
  return assembliesOf(pieces).every(({ bounds: { minX, maxX, minY, maxY } }) => {
    return maxX - minX < smallMm.width && maxY - minY < smallMm.height;
  });
}

function drawPicture(flow: Flow, tag: Tag, height: number, cropped: boolean): void {
  const { page, left, width, faces } = flow;
  const boxes = assembliesOf(tag.pieces).map(({ bounds }) => bounds);
  const most = cropped ? mostOnPicture : isSmall(tag) ? mostEnlarged : 1;
  const picture = proofPicture(tag, { width, height, most });
  if (!picture) return;
  picture.draw(page, left, flow.y, faces.plain);
  flow.skip(picture.height);
  // Enlarged tags are also shown at true size if all of them fit side by side.
  const widths = boxes.reduce((sum, { minX, maxX }) => sum + maxX - minX + 6, 6);
  const twice = !cropped && picture.scale > 1 && widths < width;
  if (twice) {
    flow.skip(2);
    flow.skip(drawTrueSize(page, tag, left, flow.y, width));
  }
  if (!cropped) drawScale(flow, twice ? 1 : picture.scale, tag.units, twice);
  flow.skip(4);
}

/** States the scale of the picture, with a bar to check that the printer kept it. */
function drawScale(flow: Flow, scale: number, units: Units, below: boolean): void {
  const { page, left, width, faces } = flow;
  flow.skip(4.5);
  const { y } = flow;
  const say = (text: string) => {
    page.caption(text, faces.plain, { x: left + width, y, size: 2.8, at: 'right', fill: quiet });
  };
  if (Math.abs(scale - 1) < 1e-9) {
    const text = drawBar(flow, units);
    say(`${below ? 'Enlarged, and below at' : 'Shown at'} true size when the bar is ${text} long.`);
  } else if (scale > 1) say(`Shown ${Number(scale.toFixed(1))} times as large as it is.`);
  else say(`Shown smaller than it is, at ${(100 * scale).toFixed(0)} %.`);
}

/** A bar at the left, just above where the flow stands; returns how long it is. */
export function drawBar({ page, left, y, faces }: Flow, units: Units): string {
  const { mm, text } = bars[units];
  page.line([left, y + 1], [left + mm, y + 1], quiet, 0.3);
  for (const x of [left, left + mm]) page.line([x, y], [x, y + 2], quiet, 0.3);
  page.caption(text, faces.plain, { x: left + mm + 2, y, size: 2.8, fill: quiet });
  return text;
}

/** As large as leaves the picture its room, but no smaller than can be read. */
function layersIn(begin: () => Flow, tag: Tag, room: number): Flow {
  for (let height = mostLayersMm; ; height -= 1) {
    const flow = begin();
    drawLayers(flow, tag, height);
    if (flow.height <= room || height <= leastLayersMm) return flow;
  }
}

/** An exploded drawing of each assembly with several layers. */
function drawLayers(flow: Flow, tag: Tag, height: number): void {
  for (const assembly of assembliesOf(tag.pieces)) {
    const count = assembly.layers.length;
    if (count === 1) continue;
    const nameOf = (layer: number) => {
      const titles = listed([...new Set(assembly.layers[layer]!.map(({ title }) => title))]);
      const [where, own] =
        layer === 0
          ? (['At the back', /\bback(ing)?\b/i] as const)
          : layer === count - 1
            ? (['In front', /\bfront\b/i] as const)
            : (['Between', /\b(between|middle)\b/i] as const);
      // A piece called “back” is said to be at the back by its name.
      return own.test(titles) ? capitalised(titles) : `${where}: ${titles}`;
    };
    flow.write(`Made of ${counted(count, 'layer')}, glued together`, { bold: true });
    flow.skip(1.5);
    const drawing = explodedDrawing(assembly, tag, { width: flow.width, height }, nameOf);
    drawing.draw(flow.page, flow.left, flow.y, flow.faces.plain);
    flow.skip(drawing.height + 4);
  }
}

/** Each in its line, with room to write in what is not known. */
export function writeFacts(flow: Flow, facts: readonly ProofFact[]): void {
  for (const { name, value } of facts) {
    if (value === undefined) {
      flow.fact(name, ' ', columnMm);
      flow.page.line([flow.left + columnMm, flow.y + 0.4], [flow.left + columnMm + 30, flow.y + 0.4], quiet, 0.2);
    } else flow.fact(name, value, columnMm);
    flow.skip(0.6);
  }
}

/** Room to sign, but not on a draft, and what the colours are worth. */
export function writeFoot(flow: Flow, tag: Tag, isOfDraft: boolean): void {
  flow.skip(3);
  if (!isOfDraft) {
    flow.write('Please check every letter, the size and the picture. If everything is as you want it, sign here.', {
      size: 3.4,
    });
    flow.skip(11);
    const { left, width, y, page, faces } = flow;
    const middle = left + 0.62 * width;
    for (const [from, to, name] of [
      [left, middle - 6, 'Name'],
      [middle, left + width, 'Date'],
    ] as const) {
      page.line([from, y], [to, y], '#222222', 0.25);
      page.caption(name, faces.plain, { x: from, y: y - 4, size: 2.8, fill: quiet });
    }
    flow.skip(8);
  }
  flow.write(coloursNote(tag), { size: 2.8, fill: quiet });
}

function coloursNote(tag: Tag): string {
  return byStock(tag).every(({ stock }) => lookOfStock(stock).grain === undefined)
    ? 'Colours are a close likeness only: the material, screens and printers all differ a little.'
    : 'Colours and grain are a close likeness only: no two pieces of wood are the same, and screens and printers differ.';
}
