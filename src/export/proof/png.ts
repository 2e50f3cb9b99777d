/** Writes the proof as a PNG. The only file that uses resvg, which renders it from SVG without any system fonts. */

import type { Job, Tools } from '../job/job.ts';
import type { Page } from '../page/page.ts';
import { pageSvg } from '../page/page-svg.ts';
import { proofPage } from './proof.ts';

/** The WebAssembly can be initialised only once. */
let ready: Promise<void> | undefined;

/** Width in pixels is the spec's `picture_width`. */
export async function toPng(job: Job, tools: Tools): Promise<Uint8Array> {
  return pngOf(await proofPage(job, tools, true), job, tools);
}

export async function pngOf(page: Page, job: Job, tools: Tools): Promise<Uint8Array> {
  const { initWasm, Resvg } = await import('@resvg/resvg-wasm');
  ready ??= tools.rasteriser().then((bytes) => initWasm(bytes));
  await ready;
  const svg = pageSvg(page);
  const image = new Resvg(svg, {
    fitTo: { mode: 'width', value: job.tag.output.pictureWidth },
    background: '#FFFFFF',
    font: { loadSystemFonts: false },
  });
  const picture = image.render();
  const bytes = picture.asPng();
  picture.free();
  image.free();
  return bytes;
}
