/** `tagwright check`: reports the problems of specs, for people or as JSON. */

import { mostNames, ofBatch, rowCount, withLabel } from '../engine/batch.ts';
import type { RowIssues } from '../engine/batch.ts';
import type { Engine, Report } from '../engine/engine.ts';
import { findFixes } from '../fixes/find-fixes.ts';
import type { Fix, Issue } from '../core/issue.ts';
import { reportJson } from './report-json.ts';
import { eachFile } from './each-file.ts';
import { newEngine } from './files.ts';
import type { SpecFile } from './files.ts';
import { issuesOfRow } from './row-work.ts';
import { eachTag } from './rows.ts';
import { exitCodes } from './usage.ts';

export async function check(
  specs: readonly SpecFile[],
  { json, strict, withFixes }: { json: boolean; strict: boolean; withFixes: boolean },
): Promise<number> {
  const engine = newEngine({ isOnce: true });
  const objects: object[] = [];
  const code = await eachFile(specs, async (spec) => {
    const { file, options } = spec;
    const { report, rows } = await checkSpec(engine, spec, json);
    if (json) {
      const fixes = new Map<Issue, readonly Fix[]>();
      if (withFixes)
        for (const issue of report.issues) fixes.set(issue, await findFixes(engine, report, issue, options));
      objects.push(reportJson(file, report, fixes, rows));
    } else printReport(file, report);
    return exitCodeOf(report, strict);
  });
  if (json) console.log(JSON.stringify(objects, null, 2));
  return code;
}

/** Includes the problems of all tags of a batch. `rows`: each tag as JSON, if requested. */
async function checkSpec(
  engine: Engine,
  spec: SpecFile,
  json: boolean,
): Promise<{ readonly report: Report; readonly rows: readonly object[] }> {
  const [all, rows]: [RowIssues[], object[]] = [[], []];
  let report: Report | undefined;
  for await (const { first, made } of eachTag(engine, spec, { what: json ? 'json' : 'issues' })) {
    report = first;
    all.push(issuesOfRow(first, made));
    if (first.batch && made.json) rows.push(made.json);
  }
  // A spec has one tag at least.
  const first = report!;
  return {
    report: rowCount(first) === 1 ? first : ofBatch(first, all, { ...spec.options, joined: true }),
    rows,
  };
}

export function exitCodeOf({ issues }: Report, strict = false): number {
  const failing = strict ? ['error', 'warning'] : ['error'];
  return issues.some(({ severity }) => failing.includes(severity)) ? exitCodes.errors : exitCodes.clean;
}

export function printReport(
  file: string,
  { issues, accepted, source }: Pick<Report, 'issues' | 'accepted' | 'source'>,
): void {
  for (const { severity, code, message, range, names: [name] = [], row } of issues) {
    const { line, column } = source.position(range.start);
    // Of a batch, the message of the first tag does not name it.
    const said = name === undefined || row !== undefined ? message : withLabel(name, message);
    console.log(`${file}:${line}:${column}: ${severity}: ${said} [${code}]`);
  }
  // The first of the names is not counted.
  if (issues.some(({ names = [] }) => names.length - 1 > mostNames + 1))
    console.log(`${file}: “check --json --no-fixes” lists every name of a problem, under “names”.`);
  const also = accepted.length === 0 ? '' : ` (${accepted.length} accepted)`;
  if (issues.length === 0) console.log(`${file}: no problems${also}`);
}
