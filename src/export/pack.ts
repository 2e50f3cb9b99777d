/** Pack: the files of a tag in one folder or archive, to sell or to send. What is for the workshop alone is not in it. */

import { zipSync } from 'fflate';
import { endings, filesIn } from './formats.ts';
import type { Format } from './formats.ts';
import type { Job, Tools } from './job/job.ts';
import { toCutPdf } from './pdf/pdf.ts';
import { packReadme } from './readme.ts';

/** Complete files, by name. */
export type Files = Readonly<Record<string, Uint8Array>>;

const packFormats: readonly Format[] = ['svg', 'dxf', 'cover', 'assembly'];

/** `name`: base name of the files. `checkpoint` is awaited between files and may throw to stop. */
export async function packOf(
  job: Job,
  name: string,
  tools: Tools,
  checkpoint: () => void | Promise<void> = () => undefined,
): Promise<Files> {
  const files: Record<string, Uint8Array> = {};
  for (const format of packFormats) {
    await checkpoint();
    for (const [file, content] of Object.entries(await filesIn(format, job, name, tools)))
      files[file] = bytesOf(content);
  }
  await checkpoint();
  files[name + endings.pdf] = await toCutPdf(job, tools);
  const { text, files: beside = {} } = job.along ?? {};
  if (text !== undefined) Object.assign(files, { [`${name}.tag.yaml`]: bytesOf(text) }, beside);
  files['README.txt'] = bytesOf(packReadme(job, name));
  return files;
}

/** The earliest date an archive can hold, in the local time zone, so that the same files always give the same bytes. */
const noTime = new Date(1980, 0, 1);

export function archiveOf(files: Files): Uint8Array {
  return zipSync(files, { mtime: noTime, level: 9 });
}

export function bytesOf(content: string | Uint8Array): Uint8Array {
  return typeof content === 'string' ? new TextEncoder().encode(content) : content;
}
