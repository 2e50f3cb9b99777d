/**
 * `tagwright fix`: fixes everything that can be fixed without changing the look of the tag, and reports what was done
 * and what is left.
 */

import { createTwoFilesPatch } from 'diff';
import { fixAll } from '../fixes/fix-all.ts';
import { isIssueCode } from '../core/issue-kinds.ts';
import { exitCodeOf, printReport } from './check.ts';
import { writeWhole } from '../export/node-write-whole.ts';
import { eachFile } from './each-file.ts';
import { newEngine } from './files.ts';
import type { SpecFile } from './files.ts';
import { UsageError } from './usage.ts';

/** Prints a unified diff of each file and what is left to do by hand; `dryRun` writes nothing. */
export async function fix(
  specs: readonly SpecFile[],
  { dryRun, only }: { dryRun: boolean; only: string | undefined },
): Promise<number> {
  if (only !== undefined && !isIssueCode(only)) throw new UsageError(`There is no problem called “${only}”.`);
  const engine = newEngine();
  return eachFile(specs, async ({ file, text, options }) => {
    const { text: fixed, made, left, report } = await fixAll(engine, text, options, only);
    for (const title of made) console.error(`${file}: ${title}`);
    if (fixed !== text) {
      console.log(createTwoFilesPatch(file, file, text, fixed, 'as it was', 'fixed').trimEnd());
      if (!dryRun) await writeWhole(file, fixed);
    }
    printReport(file, report);
    const whys = new Set(left.map(({ issue, why }) => `${file}: left as it is: ${issue.code}. ${why}`));
    for (const why of whys) console.error(why);
    return exitCodeOf(report);
  });
}
