/** `tagwright export`: files for the machine. */

import { mkdir } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { formats, isFormat } from '../output/formats.ts';
import { printReport } from './check.ts';
import { newEngine, writeWhole } from './files.ts';
import type { SpecFile } from './files.ts';
import { exitCodes, UsageError } from './usage.ts';

export async function exportAll(
  specs: readonly SpecFile[],
  { to, out, force }: { to: string | undefined; out: string | undefined; force: boolean },
): Promise<number> {
  if (to === undefined || out === undefined) throw new UsageError('export needs --to and --out.');
  const wanted = to.split(',');
  const unknown = wanted.find((format) => !isFormat(format));
  if (unknown !== undefined) throw new UsageError(`Unknown format “${unknown}”.`);
  await mkdir(out, { recursive: true });
  const engine = newEngine();
  let code: number = exitCodes.clean;
  for (const { file, text, options } of specs) {
    const report = await engine.compute(text, options);
    const errors = report.issues.filter(({ severity }) => severity === 'error');
    if (errors.length > 0) {
      printReport(file, { ...report, issues: errors });
      code = exitCodes.errors;
      if (!force) {
        console.error(`${file}: not exported, it has errors.`);
        continue;
      }
    }
    for (const format of wanted.filter(isFormat)) {
      const content = report.tag && formats[format](report.tag);
      if (content === undefined) {
        console.error(`${file}: there is nothing to cut.`);
        code = exitCodes.errors;
        continue;
      }
      const target = join(out, `${basename(file).replace(/(\.tag)?\.ya?ml$/i, '')}.${format}`);
      await writeWhole(target, content);
      console.log(target);
    }
  }
  return code;
}
