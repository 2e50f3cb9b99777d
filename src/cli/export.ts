/** `tagwright export`: writes files for the machine and the customer. */

import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { isFormat, sheetFormats } from '../export/formats.ts';
import type { Format, SheetFormat } from '../export/formats.ts';
import { eachFile } from './each-file.ts';
import { newEngine } from './files.ts';
import type { SpecFile } from './files.ts';
import { Progress } from './progress.ts';
import { TagJobs } from './tag-jobs.ts';
import { exitCodes, UsageError } from './usage.ts';
import { Writer } from './writer.ts';

interface ExportOptions {
  readonly to: string | undefined;
  readonly out: string | undefined;
  /** Exports tags with errors too. */
  readonly force: boolean;
  /** Replaces existing files with different content. */
  readonly overwrite: boolean;
  /** Width of pictures in pixels; by default from the spec. */
  readonly width: string | undefined;
  /** Tells how far it is where nobody sees it on a terminal, too. */
  readonly progress: boolean;
}

export async function exportAll(specs: readonly SpecFile[], options: ExportOptions): Promise<number> {
  const { to, out, force, overwrite } = options;
  const pictureWidth = pixels(options.width);
  if (to === undefined || out === undefined) throw new UsageError('export needs --to and --out.');
  const wanted = formatsOf(to);
  await mkdir(out, { recursive: true });
  const progress = new Progress(options.progress);
  const jobs = new TagJobs(newEngine({ isOnce: true }), force, progress);
  const writer = new Writer(overwrite);
  const code = await eachFile(specs, async (spec) => {
    for await (const files of jobs.files(spec, wanted, pictureWidth))
      for (const [file, content] of Object.entries(files)) await writer.write(join(out, file), content);
    return exitCodes.clean;
  }).finally(() => {
    progress.end();
  });
  return (await writer.end()) && jobs.complete ? code : exitCodes.errors;
}

/** Parses a comma-separated list, without duplicates. */
export function formatsOf(to: string): Format[] {
  const wanted = [...new Set(to.split(','))];
  const unknown = wanted.find((format) => !isFormat(format));
  if (unknown !== undefined) throw new UsageError(`Unknown format “${unknown}”.`);
  return wanted.filter(isFormat);
}

/** The same for sheets. */
export function sheetFormatsOf(to: string): SheetFormat[] {
  const wanted = formatsOf(to);
  const other = wanted.find((format) => !sheetFormats.some((each) => each === format));
  if (other !== undefined) throw new UsageError(`Sheets are written as ${sheetFormats.join(', ')}, not as “${other}”.`);
  return sheetFormats.filter((format) => wanted.includes(format));
}

function pixels(given: string | undefined): number | undefined {
  if (given === undefined) return undefined;
  const width = Number(given);
  if (!Number.isInteger(width) || width < 100 || width > 8000)
    throw new UsageError('--width must be a whole number of pixels from 100 to 8000.');
  return width;
}
