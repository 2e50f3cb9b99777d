/** The file formats a tag can be written in, by their file extension. */

import { toDxf } from './dxf.ts';
import type { Job, Tools } from './job.ts';
import { toPdf } from './pdf.ts';
import { toPng } from './png.ts';
import { toSvg } from './svg.ts';

export type Format = 'svg' | 'dxf' | 'pdf' | 'png';

/** Each gives the whole file. */
type Writer = (job: Job, tools: Tools) => string | Uint8Array | Promise<string | Uint8Array>;

export const formats: Readonly<Record<Format, Writer>> = { svg: toSvg, dxf: toDxf, pdf: toPdf, png: toPng };

export function isFormat(name: string): name is Format {
  return Object.hasOwn(formats, name);
}
