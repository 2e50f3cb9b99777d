/** Writes the proof, or the tag alone, as a PNG. The only file that uses resvg, which renders it from SVG without any system fonts. */

import type { Job, Tools } from '../job/job.ts';
import type { Page } from '../page/page.ts';
import { pageSvg } from '../page/page-svg.ts';
import { coverPage } from '../pictures/cover-picture.ts';
import { proofPage } from './proof.ts';

/** The WebAssembly can be initialised only once. */
let ready: Promise<void> | undefined;

/** Width in pixels is the spec's `picture_width`. */
export async function toPng(job: Job, tools: Tools): Promise<Uint8Array> {
  return pngOf(await proofPage(job, tools, true), job, tools);
}

/** For a listing: the tag alone, on white. Its longer side has the pixels of `picture_width`. */
export async function toCover(job: Job, tools: Tools): Promise<Uint8Array> {
  const page = await coverPage(job, tools);
  return pngOf(page, job, tools, page.height > page.width ? 'height' : 'width');
}

export async function pngOf(
  page: Page,
  job: Job,
  tools: Tools,
  mode: 'width' | 'height' = 'width',
): Promise<Uint8Array> {
  const { initWasm, Resvg } = await import('@resvg/resvg-wasm');
  ready ??= tools.rasteriser().then((bytes) => initWasm(bytes));
  await ready;
  const svg = pageSvg(page);
  const image = new Resvg(svg, {
    fitTo: { mode, value: job.tag.output.pictureWidth },
    background: '#FFFFFF',
    font: { loadSystemFonts: false },
  });
  const picture = image.render();
  const bytes = picture.asPng();
  picture.free();
  image.free();
  return bytes;
}
