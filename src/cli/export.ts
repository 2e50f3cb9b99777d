/** `tagwright export`: writes files for the machine and the customer. */

import { mkdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { isFormat, sheetFormats } from '../export/formats.ts';
import type { Format, SheetFormat } from '../export/formats.ts';
import { writeWhole } from '../export/node-write-whole.ts';
import { newEngine } from './files.ts';
import type { SpecFile } from './files.ts';
import { TagJobs } from './tag-jobs.ts';
import { exitCodes, UsageError } from './usage.ts';

interface ExportOptions {
  readonly to: string | undefined;
  readonly out: string | undefined;
  /** Exports tags with errors too. */
  readonly force: boolean;
  /** Replaces existing files with different content. */
  readonly overwrite: boolean;
  /** Width of pictures in pixels; by default from the spec. */
  readonly width: string | undefined;
}

export async function exportAll(specs: readonly SpecFile[], options: ExportOptions): Promise<number> {
  const { to, out, force, overwrite } = options;
  const pictureWidth = pixels(options.width);
  if (to === undefined || out === undefined) throw new UsageError('export needs --to and --out.');
  const wanted = formatsOf(to);
  await mkdir(out, { recursive: true });
  const jobs = new TagJobs(newEngine({ isOnce: true }), force);
  let isWhole = true;
  for (const spec of specs) {
    for await (const files of jobs.files(spec, wanted, pictureWidth))
      for (const [file, content] of Object.entries(files))
        isWhole = (await write(join(out, file), content, overwrite)) && isWhole;
  }
  return jobs.complete && isWhole ? exitCodes.clean : exitCodes.errors;
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

/**
 * Prints what it has written. Returns false, with a message, if the file exists with different content and may not be
 * replaced.
 */
export async function write(target: string, content: string | Uint8Array, overwrite: boolean): Promise<boolean> {
  const there = await readFile(target).catch(() => undefined);
  if (there && !overwrite && !there.equals(Buffer.from(content))) {
    console.error(`${target}: exists and differs; --overwrite replaces it.`);
    return false;
  }
  if (!there?.equals(Buffer.from(content))) await writeWhole(target, content);
  console.log(target);
  return true;
}
