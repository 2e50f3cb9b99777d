/** Cover picture for whoever looks through a shop: the tag alone on white, as large as the picture. */

import { draftNote, isDraft } from '../job/job.ts';
import type { Job, Tools } from '../job/job.ts';
import { PageBuilder } from '../page/page.ts';
import type { Page } from '../page/page.ts';
import { assembliesOf } from './assemblies.ts';
import type { Assembly } from './assemblies.ts';
import { drawAssembly } from './proof-picture.ts';

const white = '#FFFFFF';

/** The longer side of what is drawn, on paper, and the largest scale, as on a proof: lines are as fine as there. */
const longMm = 170;
const mostScale = 3;

/** White around it, and between what is not glued together, as shares of the longer side (our own judgement). */
const aroundShare = 0.07;
const betweenShare = 0.05;

export async function coverPage(job: Job, tools: Pick<Tools, 'captions'>): Promise<Page> {
  const { tag } = job;
  const assemblies = assembliesOf(tag.pieces);
  const block = assemblies
    .map((_, index) => blockOf(assemblies, Math.ceil(assemblies.length / (index + 1))))
    .reduce((best, each) => (longSide(each) < longSide(best) ? each : best));
  const scale = Math.min(mostScale, longMm / longSide(block));
  const margin = aroundShare * longSide(block) * scale;
  const [width, height] = [block.width * scale + 2 * margin, block.height * scale + 2 * margin];
  const page = new PageBuilder();
  for (const { assembly, x, y } of block.places) {
    const { minX, minY } = assembly.bounds;
    const place = { scale, dx: margin + (x - minX) * scale, dy: margin + (y - minY) * scale };
    drawAssembly(page, assembly, tag, place, white);
  }
  if (isDraft(job)) {
    const size = margin / 3;
    page.caption(draftNote, await tools.captions(800), { x: margin / 2, y: margin / 3, size, fill: '#B00020' });
  }
  return page.page(width, height);
}

interface Block {
  readonly width: number;
  readonly height: number;
  /** Lower left corners in the block, in mm of the tag. */
  readonly places: readonly { readonly assembly: Assembly; readonly x: number; readonly y: number }[];
}

function longSide({ width, height }: Pick<Block, 'width' | 'height'>): number {
  return Math.max(width, height);
}

/** In rows from the top, each in the middle. */
function blockOf(assemblies: readonly Assembly[], perRow: number): Block {
  const size = ({ bounds: { minX, maxX, minY, maxY } }: Assembly) => ({ width: maxX - minX, height: maxY - minY });
  const gap = betweenShare * Math.max(...assemblies.map((each) => longSide(size(each))));
  const rows: Assembly[][] = [];
  for (let at = 0; at < assemblies.length; at += perRow) rows.push(assemblies.slice(at, at + perRow));
  const wide = (row: readonly Assembly[]) => row.reduce((sum, each) => sum + size(each).width + gap, -gap);
  const high = (row: readonly Assembly[]) => Math.max(...row.map((each) => size(each).height));
  const width = Math.max(...rows.map(wide));
  const height = rows.reduce((sum, row) => sum + high(row) + gap, -gap);
  let top = height;
  const places = rows.flatMap((row) => {
    let x = (width - wide(row)) / 2;
    const middle = top - high(row) / 2;
    top -= high(row) + gap;
    return row.map((assembly) => {
      const place = { assembly, x, y: middle - size(assembly).height / 2 };
      x += size(assembly).width + gap;
      return place;
    });
  });
  return { width, height, places };
}
