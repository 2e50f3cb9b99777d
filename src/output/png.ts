/** The proof as a picture. The only file that knows resvg, which draws it from an SVG without any fonts of the computer's. */

import type { CurvePath } from '../geometry/curves.ts';
import { figure } from './job.ts';
import type { Job, Tools } from './job.ts';
import type { Page } from './page.ts';
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

function pageSvg({ width, height, drawings }: Page): string {
  const paths = drawings.map(({ path, fill, stroke, lineWidth, rule = 'evenodd' }) => {
    const line = stroke === undefined ? '' : ` stroke="${stroke}" stroke-width="${figure(lineWidth ?? 0.1)}"`;
    return `<path fill="${fill ?? 'none'}" fill-rule="${rule}"${line} d="${data(path, height)}"/>`;
  });
  const size = `width="${figure(width)}mm" height="${figure(height)}mm" viewBox="0 0 ${figure(width)} ${figure(height)}"`;
  return `<svg xmlns="http://www.w3.org/2000/svg" ${size}>${paths.join('')}</svg>`;
}

function data(path: CurvePath, top: number): string {
  const at = (x: number, y: number) => `${figure(x)} ${figure(top - y)}`;
  return path
    .map((command) => {
      switch (command.type) {
        case 'M':
        case 'L':
          return `${command.type}${at(command.x, command.y)}`;
        case 'Q':
          return `Q${at(command.x1, command.y1)} ${at(command.x, command.y)}`;
        case 'C':
          return `C${at(command.x1, command.y1)} ${at(command.x2, command.y2)} ${at(command.x, command.y)}`;
        case 'Z':
          return 'Z';
      }
    })
    .join('');
}
