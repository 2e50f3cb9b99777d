/** Pick list and packing labels: the contents of each parcel by order, and a label for each. */

import { counted } from '../../core/units.ts';
import { clip } from '../../core/length.ts';
import { listed } from '../../core/names.ts';
import { rushSign } from '../../look/signs.ts';
import { Flow, papers } from '../../export/page/flow.ts';
import type { CaptionFaces } from '../../export/page/flow.ts';
import type { Tools } from '../../export/job/job.ts';
import { minutes, money } from '../../core/in-words.ts';
import { PageBuilder, wrapped } from '../../export/page/page.ts';
import type { Page } from '../../export/page/page.ts';
import { columnWidth, paged } from '../../export/page/paged.ts';
import { tableText } from '../../spec/files/table.ts';
import { byOrder } from './by-order.ts';
import type { PickedOrder, PickedTag } from './by-order.ts';
import type { LaidOutJob } from '../job.ts';
import { sharesOf } from '../shares.ts';
import type { Share, SharesOf } from '../shares.ts';

const marginMm = 15;
const quiet = '#666666';
const missingInk = '#B00020';
const columns = 2;

/** A block longer than this goes on in the next column, in mm. */
const longMm = 120;

export async function pickList(job: LaidOutJob, tools: Pick<Tools, 'captions'>): Promise<Page[]> {
  const faces = await facesOf(tools);
  const paper = { ...papers[job.model.units], margin: marginMm };
  const begin = () => new Flow(faces, marginMm, columnWidth(paper, columns));
  const head = begin();
  head.write('Pick list, for packing', { size: 3, fill: quiet });
  head.write(job.title, { size: job.title.length > 40 ? 4.5 : 6, bold: true });
  const shares = sharesOf(job);
  const all = shareInWords(shares(job.pieces.tags));
  if (all !== '') head.write(`All of it: ${all}`, { fill: quiet, size: 3 });
  return paged(
    [head, ...byOrder(job).flatMap((order) => orderBlocks(begin, order, shares))],
    paper,
    `Pick list: ${job.title}`,
    columns,
  );
}

/** An order stays together unless it is long; its head never stands alone. */
function orderBlocks(begin: () => Flow, order: PickedOrder, shares: SharesOf): Flow[] {
  const blocks = [begin()];
  orderHead(blocks[0]!, order, shares);
  const next = (): Flow => {
    if (blocks.at(-1)!.height >= longMm) blocks.push(begin());
    return blocks.at(-1)!;
  };
  for (const tag of order.tags) tagBlock(next(), tag, order.tags.length > 1 ? shareInWords(shares(tag.made)) : '');
  for (const each of order.leftOut) leftOutBlock(next(), each);
  return blocks;
}

async function facesOf(tools: Pick<Tools, 'captions'>): Promise<CaptionFaces> {
  return { plain: await tools.captions(600), bold: await tools.captions(800) };
}

function orderHead(flow: Flow, order: PickedOrder, shares: SharesOf): void {
  flow.skip(4);
  const name = order.order === '' ? 'Without an order' : `Order ${clip(order.order, 60)}`;
  flow.write(`${name}${order.rush ? ` · rush ${rushSign}` : ''}`, { bold: true, size: 4.4 });
  if (order.tags.length === 0) return;
  const missing = missingIn(order);
  if (missing !== '') flow.write(`Not complete: without ${missing}`, { bold: true, size: 3.1, fill: missingInk });
  const share = shareInWords(shares(order.tags.flatMap(({ made }) => made)));
  flow.write(share === '' ? inShort(order) : `${inShort(order)} · ${share}`, { fill: quiet, size: 3 });
}

/** “material 0.42 EUR, machine 2 min 15 s”; empty if nothing is known. */
function shareInWords({ cost, seconds }: Share): string {
  return [
    ...(cost ? [`material ${money(cost)}`] : []),
    ...(seconds === undefined ? [] : [`machine ${minutes(seconds)}`]),
  ].join(', ');
}

/** A box to tick, the quantity and name, the numbers on the map, and what it costs. */
function tagBlock(flow: Flow, tag: PickedTag, share: string): void {
  flow.page.box(flow.left, flow.y - 4.3, 3, 3, { stroke: '#222222', lineWidth: 0.25 });
  flow.write(`${tag.copies} × ${clip(tag.name, 60)}`, { indent: 6, bold: true });
  const kinds = [...new Set(tag.pieces.map(({ piece }) => piece))];
  for (const kind of kinds) {
    const rows = tag.pieces.filter(({ piece }) => piece === kind);
    const sheets = [...new Set(rows.map(({ sheet }) => sheet))];
    const places = sheets.map((sheet) => {
      const numbers = rows.filter((row) => row.sheet === sheet).flatMap(({ number }) => number ?? []);
      const count = rows.filter((row) => row.sheet === undefined).length;
      return sheet === undefined ? `${count} on no sheet` : `${numbers.join(', ')} (${sheet})`;
    });
    const what = kinds.length > 1 ? `${kind}: ` : '';
    flow.write(`${what}${places.join('; ')}`, { indent: 6, size: 3.1 });
  }
  if (share !== '') flow.write(share, { indent: 6, size: 3, fill: quiet });
}

function leftOutBlock(flow: Flow, { quantity, name, why }: PickedOrder['leftOut'][number]): void {
  const count = quantity === undefined ? '' : `${quantity} × `;
  flow.write(`Not made: ${count}${clip(name, 60)}: ${why}`, { indent: 6, size: 3.1, fill: missingInk });
}

/** What of an order is not in its parcel; empty if nothing is. */
function missingIn({ tags, leftOut }: PickedOrder): string {
  const notMade = leftOut.map(({ quantity, name }) => `${quantity === undefined ? '' : `${quantity} × `}${name}`);
  const onNone = tags.flatMap(({ pieces }) => pieces).filter(({ sheet }) => sheet === undefined).length;
  return listed([...notMade, ...(onNone > 0 ? [`${counted(onNone, 'piece')} on no sheet`] : [])]);
}

function inShort({ tags }: PickedOrder): string {
  const count = tags.reduce((sum, { copies }) => sum + copies, 0);
  const pieces = tags.reduce((sum, tag) => sum + tag.pieces.length, 0);
  return `${counted(count, 'tag')}, ${counted(pieces, 'piece')}`;
}

/** Labels on a page, as label sheets are sold (common practice, no source). */
const grid = { columns: 3, rows: 8 } as const;
const insetMm = 4;

/** One for each order with any tags. */
export async function packingLabels(job: LaidOutJob, tools: Pick<Tools, 'captions'>): Promise<Page[]> {
  const faces = await facesOf(tools);
  const { width, height } = papers[job.model.units];
  const orders = byOrder(job).filter(({ order, tags }) => order !== '' && tags.length > 0);
  const perPage = grid.columns * grid.rows;
  return Array.from({ length: Math.ceil(orders.length / perPage) }, (_, index) => {
    const page = new PageBuilder();
    const size = { width: width / grid.columns, height: height / grid.rows };
    orders.slice(index * perPage, (index + 1) * perPage).forEach((order, at) => {
      const x = (at % grid.columns) * size.width;
      const y = height - (Math.floor(at / grid.columns) + 1) * size.height;
      page.box(x, y, size.width, size.height, { stroke: '#DDDDDD', lineWidth: 0.1 });
      drawLabel(page, order, job.title, { x, y, ...size }, faces);
    });
    return page.page(width, height);
  });
}

interface LabelBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

function drawLabel(
  page: PageBuilder,
  order: PickedOrder,
  title: string,
  box: LabelBox,
  { plain, bold }: CaptionFaces,
): void {
  const left = box.x + insetMm;
  const across = box.width - 2 * insetMm;
  let y = box.y + box.height - insetMm;
  const write = (text: string, face: CaptionFaces['plain'], size: number, fill: string, most: number) => {
    const lines = wrapped(text, face, size, across);
    for (const [index, line] of lines.slice(0, most).entries()) {
      y -= 1.25 * size;
      if (y < box.y + insetMm / 2) return;
      const cut = index === most - 1 && lines.length > most;
      page.caption(cut ? `${line.slice(0, -1)}…` : line, face, { x: left, y: y + 0.25 * size, size, fill });
    }
  };
  write(clip(title, 40), plain, 2.4, quiet, 1);
  write(clip(order.order, 40), bold, order.order.length > 14 ? 4 : 6, '#222222', 2);
  write(`${inShort(order)}${order.rush ? ` · rush ${rushSign}` : ''}`, plain, 2.6, quiet, 1);
  const missing = missingIn(order);
  // Before what is in it: whoever packs must not take the parcel for all of the order.
  if (missing !== '') write(`Not complete: without ${missing}`, bold, 2.8, missingInk, 2);
  write(contents(order), plain, 3, '#222222', 4);
}

function contents({ tags }: PickedOrder): string {
  return tags.map((tag) => `${tag.copies} × ${tag.name}`).join(', ');
}

/** The labels as a table, for a label printer. */
export function labelTable(job: LaidOutJob): string {
  const orders = byOrder(job).filter(({ order, tags }) => order !== '' && tags.length > 0);
  const rows = orders.map((order) => {
    const count = order.tags.reduce((sum, { copies }) => sum + copies, 0);
    const pieces = order.tags.reduce((sum, tag) => sum + tag.pieces.length, 0);
    return [order.order, order.rush ? 'yes' : '', count, pieces, contents(order), missingIn(order)];
  });
  return tableText(['order', 'rush', 'tags', 'pieces', 'contents', 'missing'], rows);
}
