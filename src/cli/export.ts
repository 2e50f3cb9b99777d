/** `tagwright export`: files for the machine and the customer. */

import { mkdir, readFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import type { Report } from '../engine.ts';
import { formats, isFormat } from '../output/formats.ts';
import { jobOf } from '../output/job.ts';
import { printReport } from './check.ts';
import { writeWhole } from '../output/node-write-whole.ts';
import { newEngine } from './files.ts';
import type { SpecFile } from './files.ts';
import { toolsOf } from './tools.ts';
import { exitCodes, UsageError } from './usage.ts';

interface ExportOptions {
  readonly to: string | undefined;
  readonly out: string | undefined;
  /** Also what has errors. */
  readonly force: boolean;
  /** Also over files that hold something else. */
  readonly overwrite: boolean;
  /** Of pictures, in pixels; as the spec says unless given. */
  readonly width: string | undefined;
}

export async function exportAll(specs: readonly SpecFile[], options: ExportOptions): Promise<number> {
  const { to, out, force, overwrite } = options;
  const pictureWidth = pixels(options.width);
  if (to === undefined || out === undefined) throw new UsageError('export needs --to and --out.');
  const wanted = [...new Set(to.split(','))];
  const unknown = wanted.find((format) => !isFormat(format));
  if (unknown !== undefined) throw new UsageError(`Unknown format “${unknown}”.`);
  await mkdir(out, { recursive: true });
  const engine = newEngine();
  const tools = toolsOf(engine);
  let code: number = exitCodes.clean;
  for (const { file, text, options: computing } of specs) {
    const report = await engine.compute(text, computing);
    if (!sound(file, report)) {
      code = exitCodes.errors;
      if (!force) continue;
    }
    const job = jobOf(pictureWidth === undefined ? report : withPictures(report, pictureWidth));
    if (!job) {
      console.error(`${file}: there is nothing to cut.`);
      code = exitCodes.errors;
      continue;
    }
    for (const format of wanted.filter(isFormat)) {
      const target = join(out, `${specName(file)}.${format}`);
      const content = await formats[format](job, tools);
      if (await write(target, content, overwrite)) console.log(target);
      else {
        console.error(`${target}: exists and differs; --overwrite replaces it.`);
        code = exitCodes.errors;
      }
    }
  }
  return code;
}

function pixels(given: string | undefined): number | undefined {
  if (given === undefined) return undefined;
  const width = Number(given);
  if (!Number.isInteger(width) || width < 100 || width > 8000)
    throw new UsageError('--width is a whole number of pixels, from 100 to 8000.');
  return width;
}

function withPictures(report: Report, pictureWidth: number): Report {
  const { tag } = report;
  return tag ? { ...report, tag: { ...tag, output: { ...tag.output, pictureWidth } } } : report;
}

/** False, once its errors have been told, for a spec that has any. */
export function sound(file: string, report: Report): boolean {
  const errors = report.issues.filter(({ severity }) => severity === 'error');
  if (errors.length === 0) return true;
  printReport(file, { ...report, issues: errors });
  console.error(`${file}: has errors, and is left out unless --force is given.`);
  return false;
}

/** A spec's name without what says that it is one. */
export function specName(file: string): string {
  return basename(file).replace(/(\.tag)?\.ya?ml$/i, '');
}

/** False where the file is there with another content and may not be replaced. */
export async function write(target: string, content: string | Uint8Array, overwrite: boolean): Promise<boolean> {
  const there = await readFile(target).catch(() => undefined);
  if (there?.equals(Buffer.from(content))) return true;
  if (there && !overwrite) return false;
  await writeWhole(target, content);
  return true;
}
