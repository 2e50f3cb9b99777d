/** The proof as a picture. The only file that knows resvg, which draws it from an SVG without any fonts of the computer's. */

import type { Job, Tools } from './job.ts';
import type { Page } from './page.ts';
import { pageSvg } from './page-svg.ts';
import { proofPage } from './proof.ts';

/** Its WebAssembly may be set up once only. */
let ready: Promise<void> | undefined;

/** As wide as the spec's `picture_width` says, in pixels. */
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
