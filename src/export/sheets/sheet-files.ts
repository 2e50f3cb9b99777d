/** Files of sheets: one for each sheet for the machine, one of all sheets for people. */

import { toDxf } from '../dxf.ts';
import type { SheetFormat } from '../formats.ts';
import { errorNote, kerfNote } from '../job/job.ts';
import type { Job, Tools } from '../job/job.ts';
import type { Page } from '../page/page.ts';
import { bytesOf } from '../pack.ts';
import type { Files } from '../pack.ts';
import { cutPage, pdfOf } from '../pdf/pdf.ts';
import { pngOf } from '../proof/png.ts';
import type { SheetJobs } from './sheet-job.ts';
import { sheetPage } from './sheet-page.ts';
import { toSvg } from '../svg.ts';

/** `name`: start of all file names. `checkpoint` is awaited between files and may throw to stop. */
export async function sheetFiles(
  sheets: SheetJobs,
  name: string,
  formats: readonly SheetFormat[],
  tools: Tools,
  checkpoint: () => void | Promise<void> = () => undefined,
): Promise<Files> {
  const files: Record<string, Uint8Array> = {};
  const { jobs } = sheets;
  const [first] = jobs;
  if (!first) return files;
  for (const [index, job] of jobs.entries()) {
    await checkpoint();
    const file = `${name}-sheet-${index + 1}`;
    if (formats.includes('svg')) files[`${file}.svg`] = bytesOf(toSvg(job));
    if (formats.includes('dxf')) files[`${file}.dxf`] = await toDxf(job);
  }
  if (!formats.includes('pdf') && !formats.includes('png')) return files;
  const overview = await sheetPage(sheets, tools);
  if (formats.includes('png')) files[`${name}-sheets.png`] = await pngOf(overview, first, tools);
  if (formats.includes('pdf')) {
    const subject = errorNote(first) ?? kerfNote(first.tag);
    files[`${name}-sheets.pdf`] = await pdfOf(pagesOf(overview, jobs, tools, checkpoint), sheets, subject);
  }
  return files;
}

/** One after the other: the cut pages of all sheets would fill the memory. */
async function* pagesOf(
  overview: Page,
  jobs: readonly Job[],
  tools: Tools,
  checkpoint: () => void | Promise<void>,
): AsyncGenerator<Page> {
  yield overview;
  for (const job of jobs) {
    await checkpoint();
    yield cutPage(job, tools);
  }
}
