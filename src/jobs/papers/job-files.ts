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

/** All at once. */
export async function jobFiles(...how: Parameters<typeof eachJobFile>): Promise<Files> {
  const files: Record<string, Uint8Array> = {};
  for await (const [name, content] of eachJobFile(...how)) files[name] = content;
  return files;
}

/**
 * By name, one after another: hundreds of sheets need not be held. `checkpoint` is awaited between files and may throw to
 * stop. The same job gives the same bytes.
 */
export async function* eachJobFile(
  job: LaidOutJob,
  tools: Tools,
  checkpoint: () => Promise<void>,
  progress?: (words: string) => void,
): AsyncGenerator<readonly [name: string, content: Uint8Array]> {
  const base = jobFileName(job.name);
  const { sheets } = job.layout;
  const names = new Set<string>();
  for (const [index, sheet] of sheets.entries()) {
    progress?.(`writing sheet ${index + 1} of ${sheets.length}`);
    await checkpoint();
    const file = freeFileName(`${base}-${sheet.name.replaceAll(' ', '-')}`, names);
    names.add(file);
    const work = sheetJob(sheet, job.title);
    yield [`${file}.svg`, bytesOf(toSvg(work))];
    yield [`${file}.dxf`, await toDxf(work)];
  }
  const [first] = sheets;
  if (!first) return;
  const subject = kerfNote(sheetTag(first, job.title));
  progress?.('writing the sheet map');
  await checkpoint();
  yield [`${base}-sheets.pdf`, await pdfOf(await sheetMap(job, tools), job, subject)];
  await checkpoint();
  const assembly = await jobAssembly(job, tools);
  if (assembly.length > 0) yield [`${base}-assembly.pdf`, await pdfOf(assembly, job, 'Assembly sheets')];
  progress?.('writing the pick list');
  await checkpoint();
  yield [`${base}-pick-list.pdf`, await pdfOf(await pickList(job, tools), job, 'Pick list')];
  yield [`${base}-pieces.csv`, bytesOf(pieceTable(job))];
  progress?.('writing the packing labels');
  const labels = await packingLabels(job, tools);
  if (labels.length > 0) {
    yield [`${base}-labels.pdf`, await pdfOf(labels, job, 'Packing labels')];
    yield [`${base}-labels.csv`, bytesOf(labelTable(job))];
  }
}
