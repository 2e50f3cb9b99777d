/** The file formats that a tag can be exported to. */

import { isLayered, toAssemblySheet } from './bench/assembly-sheet.ts';
import { toDxf } from './dxf.ts';
import { jobsByStock } from './job/job.ts';
import type { Job, Tools } from './job/job.ts';
import { toJobSheet } from './bench/job-sheet.ts';
import { toPdf, toProof } from './pdf/pdf.ts';
import { toCover, toPng } from './proof/png.ts';
import { toSvg } from './svg.ts';

/** `cover` is for a listing, `proof` for the customer only, `job` and `assembly` are for the bench. */
export type Format = 'svg' | 'dxf' | 'pdf' | 'png' | 'cover' | 'proof' | 'job' | 'assembly';

/** Returns the whole file. */
type Writer = (job: Job, tools: Tools) => string | Uint8Array | Promise<string | Uint8Array>;

export const formats: Readonly<Record<Format, Writer>> = {
  svg: toSvg,
  dxf: toDxf,
  pdf: toPdf,
  png: toPng,
  cover: toCover,
  proof: toProof,
  job: toJobSheet,
  assembly: toAssemblySheet,
};

export const allFormats = Object.keys(formats) as readonly Format[];

/** File name endings, after the tag's name. */
export const endings: Readonly<Record<Format, string>> = {
  svg: '.svg',
  dxf: '.dxf',
  pdf: '.pdf',
  png: '.png',
  cover: '-cover.png',
  proof: '-proof.pdf',
  job: '-job.pdf',
  assembly: '-assembly.pdf',
};

/**
 * The files of a job in one format, by name: cut files once for each stock, and no assembly sheet if nothing is glued.
 * `name`: without an ending.
 */
export async function filesIn(
  format: Format,
  job: Job,
  name: string,
  tools: Tools,
): Promise<Readonly<Record<string, string | Uint8Array>>> {
  if (format === 'assembly' && !isLayered(job.tag)) return {};
  const parts = format === 'svg' || format === 'dxf' ? jobsByStock(job) : [{ suffix: '', job }];
  const files: Record<string, string | Uint8Array> = {};
  for (const { suffix, job: part } of parts)
    files[name + suffix + endings[format]] = await formats[format](part, tools);
  return files;
}

export function isFormat(name: string): name is Format {
  return Object.hasOwn(formats, name);
}

/** Formats of sheets; proofs and job sheets exist only for tags. */
export const sheetFormats = ['svg', 'dxf', 'pdf', 'png'] as const satisfies readonly Format[];
export type SheetFormat = (typeof sheetFormats)[number];
