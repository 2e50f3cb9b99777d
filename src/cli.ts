/** The engine without an editor: `tagwright check|export`. */

import { mkdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { Engine } from './engine.ts';
import type { Report } from './engine.ts';
import { findFixes } from './fixes/find-fixes.ts';
import type { Issue } from './issue.ts';
import { formats, isFormat } from './output/formats.ts';
import { reportJson } from './report-json.ts';
import { nodeFontFiles } from './text/node-font-files.ts';

const usage = `Usage:
  tagwright check FILE… [--json] [--strict]
  tagwright export FILE… --to ${Object.keys(formats).join(',')} --out DIR [--force]

Exit code: 0 clean or warnings only (with --strict, warnings fail too), 1 errors, 2 wrong usage.`;

const exitCodes = { clean: 0, errors: 1, usage: 2 } as const;

class UsageError extends Error {}

async function main(args: readonly string[]): Promise<number> {
  const [command, ...rest] = args;
  if (command === '--help' || command === '-h') {
    console.log(usage);
    return exitCodes.clean;
  }
  const { values, positionals } = parseArgs({
    args: rest,
    allowPositionals: true,
    options: {
      json: { type: 'boolean', default: false },
      strict: { type: 'boolean', default: false },
      force: { type: 'boolean', default: false },
      to: { type: 'string' },
      out: { type: 'string' },
    },
  });
  if (command !== 'check' && command !== 'export') throw new UsageError(`Unknown command ${command ?? ''}`.trim());
  if (positionals.length === 0) throw new UsageError('Which files?');
  const reports = await reportAll(positionals, command === 'check' && values.json);
  if (command === 'check') return check(reports, values);
  if (values.to === undefined || values.out === undefined) throw new UsageError('export needs --to and --out.');
  return exportAll(reports, values.to.split(','), values.out, values.force);
}

interface FileReport {
  readonly file: string;
  readonly report: Report;
}

/** `withFixes`: each issue with the fixes that were tried and work, which takes several computations an issue. */
async function reportAll(files: readonly string[], withFixes: boolean): Promise<FileReport[]> {
  const fonts = join(dirname(fileURLToPath(import.meta.url)), 'fonts');
  const engine = new Engine(nodeFontFiles(fonts));
  const reports: FileReport[] = [];
  for (const file of files) {
    let text: string;
    try {
      text = await readFile(file, 'utf8');
    } catch {
      throw new UsageError(`${file} cannot be read.`);
    }
    const folder = dirname(resolve(file));
    const options = { locate: (relative: string) => resolve(folder, relative) };
    const report = await engine.compute(text, options);
    if (!withFixes) {
      reports.push({ file, report });
      continue;
    }
    const issues: Issue[] = [];
    for (const issue of report.issues)
      issues.push({ ...issue, fixes: await findFixes(engine, report, issue, options) });
    reports.push({ file, report: { ...report, issues } });
  }
  return reports;
}

function check(reports: readonly FileReport[], { json, strict }: { json: boolean; strict: boolean }): number {
  if (json)
    console.log(
      JSON.stringify(
        reports.map(({ file, report }) => reportJson(file, report)),
        null,
        2,
      ),
    );
  else reports.forEach(printReport);
  const failing = strict ? ['error', 'warning'] : ['error'];
  const failed = reports.some(({ report }) => report.issues.some((issue) => failing.includes(issue.severity)));
  return failed ? exitCodes.errors : exitCodes.clean;
}

function printReport({ file, report }: FileReport): void {
  for (const { severity, code, message, range } of report.issues) {
    const { line, column } = report.source.position(range.start);
    console.log(`${file}:${line}:${column}: ${severity}: ${message} [${code}]`);
  }
  if (report.issues.length === 0) console.log(`${file}: no problems`);
}

async function exportAll(
  reports: readonly FileReport[],
  wanted: readonly string[],
  folder: string,
  force: boolean,
): Promise<number> {
  const unknown = wanted.find((format) => !isFormat(format));
  if (unknown !== undefined) throw new UsageError(`Unknown format “${unknown}”.`);
  await mkdir(folder, { recursive: true });
  let code: number = exitCodes.clean;
  for (const { file, report } of reports) {
    const errors = report.issues.filter((issue) => issue.severity === 'error');
    if (errors.length > 0) {
      printReport({ file, report: { ...report, issues: errors } });
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
      const target = join(folder, `${basename(file).replace(/(\.tag)?\.ya?ml$/i, '')}.${format}`);
      await writeWhole(target, content);
      console.log(target);
    }
  }
  return code;
}

/** All of the file or nothing: a machine must never be handed half a path. */
async function writeWhole(target: string, content: string): Promise<void> {
  const partial = `${target}.${process.pid}.part`;
  try {
    await writeFile(partial, content, { flag: 'wx' });
    await rename(partial, target);
  } catch (error) {
    await rm(partial, { force: true });
    throw error;
  }
}

try {
  process.exitCode = await main(process.argv.slice(2));
} catch (error) {
  const wrongUsage = error instanceof UsageError || (error as { code?: string }).code?.startsWith('ERR_PARSE_ARGS');
  console.error(error instanceof Error ? error.message : String(error));
  if (wrongUsage) console.error(usage);
  process.exitCode = wrongUsage ? exitCodes.usage : exitCodes.errors;
}
