/** `tagwright check`: what is wrong with specs, for people or as JSON. */

import { checkBatch } from '../engine/batch.ts';
import type { Report } from '../engine/engine.ts';
import { findFixes } from '../fixes/find-fixes.ts';
import type { Fix, Issue } from '../core/issue.ts';
import { reportJson } from './report-json.ts';
import { newEngine } from './files.ts';
import type { SpecFile } from './files.ts';
import { exitCodes } from './usage.ts';

export async function check(
  specs: readonly SpecFile[],
  { json, strict }: { json: boolean; strict: boolean },
): Promise<number> {
  const engine = newEngine();
  const objects: object[] = [];
  let code: number = exitCodes.clean;
  for (const { file, text, options } of specs) {
    const { report, all } = await checkBatch(engine, await engine.compute(text, options), options);
    if (json) {
      const fixes = new Map<Issue, readonly Fix[]>();
      for (const issue of report.issues) fixes.set(issue, await findFixes(engine, report, issue, options));
      objects.push(reportJson(file, report, fixes, all));
    } else printReport(file, report);
    code = Math.max(code, exitCodeOf(report, strict));
  }
  if (json) console.log(JSON.stringify(objects, null, 2));
  return code;
}

export function exitCodeOf({ issues }: Report, strict = false): number {
  const failing = strict ? ['error', 'warning'] : ['error'];
  return issues.some(({ severity }) => failing.includes(severity)) ? exitCodes.errors : exitCodes.clean;
}

export function printReport(
  file: string,
  { issues, accepted, source }: Pick<Report, 'issues' | 'accepted' | 'source'>,
): void {
  for (const { severity, code, message, range } of issues) {
    const { line, column } = source.position(range.start);
    console.log(`${file}:${line}:${column}: ${severity}: ${message} [${code}]`);
  }
  const also = accepted.length === 0 ? '' : ` (${accepted.length} accepted)`;
  if (issues.length === 0) console.log(`${file}: no problems${also}`);
}
