/** All files of a job by name: for the machine, the bench and the packer. */

import { toDxf } from '../../export/dxf.ts';
import { freeFileName, plainName } from '../../export/file-names.ts';
import type { Job, Tools } from '../../export/job/job.ts';
import { kerfNote } from '../../export/job/job.ts';
import { bytesOf } from '../../export/pack.ts';
import type { Files } from '../../export/pack.ts';
import { pdfOf } from '../../export/pdf/pdf.ts';
import { toSvg } from '../../export/svg.ts';
import { jobAssembly } from './job-assembly.ts';
import { pieceTable } from './job-table.ts';
import type { LaidOutJob } from '../job.ts';
import type { JobSheet } from '../layout/layout.ts';
import { labelTable, packingLabels, pickList } from './pick-list.ts';
import { sheetMap } from './sheet-map.ts';
import { sheetTag } from '../totals.ts';

/** Base name of all files. */
export function jobFileName(name: string): string {
  return plainName(name.replace(/(\.job)?\.ya?ml$/i, ''));
}

/** Export job for one sheet, for the machine. */
export function sheetJob(sheet: JobSheet, title: string): Job {
  return { tag: sheetTag(sheet, `${title}: ${sheet.name}`), plan: sheet.plan, issues: [], fonts: [] };
}

/** `checkpoint` is awaited between files and may throw to stop. The same job gives the same bytes. */
export async function jobFiles(job: LaidOutJob, tools: Tools, checkpoint: () => Promise<void>): Promise<Files> {
  const base = jobFileName(job.name);
  const { sheets } = job.layout;
  const files: Record<string, Uint8Array> = {};
  const names = new Set<string>();
  for (const sheet of sheets) {
    await checkpoint();
    const file = freeFileName(`${base}-${sheet.name.replaceAll(' ', '-')}`, names);
    names.add(file);
    const work = sheetJob(sheet, job.title);
    files[`${file}.svg`] = bytesOf(toSvg(work));
    files[`${file}.dxf`] = await toDxf(work);
  }
  const [first] = sheets;
  if (!first) return files;
  const subject = kerfNote(sheetTag(first, job.title));
  await checkpoint();
  files[`${base}-sheets.pdf`] = await pdfOf(await sheetMap(job, tools), job, subject);
  await checkpoint();
  const assembly = await jobAssembly(job, tools);
  if (assembly.length > 0) files[`${base}-assembly.pdf`] = await pdfOf(assembly, job, 'Assembly sheets');
  await checkpoint();
  files[`${base}-pick-list.pdf`] = await pdfOf(await pickList(job, tools), job, 'Pick list');
  files[`${base}-pieces.csv`] = bytesOf(pieceTable(job));
  const labels = await packingLabels(job, tools);
  if (labels.length > 0) {
    files[`${base}-labels.pdf`] = await pdfOf(labels, job, 'Packing labels');
    files[`${base}-labels.csv`] = bytesOf(labelTable(job));
  }
  return files;
}
