/** The command line: `tagwright check|fix|export|sheets|pack|job|approve|test-piece`. */

import { parseArgs } from 'node:util';
import { approveAll } from './approve.ts';
import { check } from './check.ts';
import { compileLess } from './compile-less.ts';
import { exportAll } from './export.ts';
import { readSpec } from './files.ts';
import type { SpecFile } from './files.ts';
import { fix } from './fix.ts';
import { jobAll } from './job.ts';
import { isOwnProcess } from './own-process.ts';
import { packAll } from './pack.ts';
import { servesRows } from './rows.ts';
import { sheetsAll } from './sheets.ts';
import { stopOnSignals } from './stop.ts';
import { exitCodes, severitiesOf, usage, UsageError } from './usage.ts';
import { testPieceAll } from './test-piece.ts';

const commands = ['check', 'fix', 'export', 'sheets', 'pack', 'job', 'approve', 'test-piece'] as const;

function isCommand(word: string | undefined): word is (typeof commands)[number] {
  return commands.some((command) => command === word);
}

/** @throws UsageError for options that there are not. */
function parsed(args: string[]) {
  try {
    return parseArgs({
      args,
      allowPositionals: true,
      options: {
        json: { type: 'boolean', default: false },
        'no-fixes': { type: 'boolean', default: false },
        strict: { type: 'boolean', default: false },
        force: { type: 'boolean', default: false },
        overwrite: { type: 'boolean', default: false },
        progress: { type: 'boolean', default: false },
        'dry-run': { type: 'boolean', default: false },
        severity: { type: 'string', multiple: true, default: [] },
        only: { type: 'string' },
        to: { type: 'string' },
        out: { type: 'string' },
        width: { type: 'string' },
        stock: { type: 'string' },
        font: { type: 'string' },
        powers: { type: 'string' },
        speeds: { type: 'string' },
        on: { type: 'string' },
        note: { type: 'string', default: '' },
      },
    });
  } catch (error) {
    // What follows the first sentence is advice on how to name files.
    throw new UsageError((error as Error).message.replace(/\. .*$/s, '.'));
  }
}

async function main(args: readonly string[]): Promise<number> {
  const [command, ...rest] = args;
  if (args.some((each) => each === '--help' || each === '-h')) {
    console.log(usage);
    return exitCodes.clean;
  }
  const { values, positionals } = parsed(rest);
  if (!isCommand(command)) throw new UsageError(`Unknown command ${command ?? ''}`.trim());
  if (positionals.length === 0) throw new UsageError('No files given.');
  const severities = severitiesOf(values.severity);
  const specs: SpecFile[] = [];
  for (const file of positionals) specs.push(await readSpec(file, severities));
  if (forSpecs.has(command)) {
    const job = positionals.find((file) => /\.job\.ya?ml$/i.test(file));
    if (job !== undefined) {
      const message = `${job} is a job: “tagwright job ${job} --out FOLDER” checks it and writes its files.`;
      throw new UsageError(message, { isEnough: true });
    }
  }
  switch (command) {
    case 'check':
      return check(specs, { json: values.json, strict: values.strict, withFixes: !values['no-fixes'] });
    case 'fix':
      return fix(specs, { dryRun: values['dry-run'], only: values.only });
    case 'export':
      return exportAll(specs, {
        to: values.to,
        out: values.out,
        force: values.force,
        overwrite: values.overwrite,
        width: values.width,
        progress: values.progress,
      });
    case 'sheets':
      return sheetsAll(specs, {
        to: values.to,
        out: values.out,
        force: values.force,
        overwrite: values.overwrite,
        progress: values.progress,
      });
    case 'job':
      return jobAll(
        specs,
        { out: values.out, json: values.json, overwrite: values.overwrite, progress: values.progress },
        severities,
      );
    case 'approve':
      return approveAll(specs, { on: values.on, note: values.note, overwrite: values.overwrite });
    case 'test-piece':
      return testPieceAll(
        specs,
        {
          only: values.only,
          stock: values.stock,
          font: values.font,
          powers: values.powers,
          speeds: values.speeds,
          to: values.to,
          out: values.out,
          overwrite: values.overwrite,
        },
        severities,
      );
    case 'pack':
      return packAll(specs, {
        out: values.out,
        force: values.force,
        overwrite: values.overwrite,
        progress: values.progress,
      });
  }
}

/** Commands that take only specs. */
const forSpecs: ReadonlySet<string> = new Set(['check', 'fix', 'export', 'sheets', 'pack', 'approve']);

/** Resolves with the exit code; all output has been printed by then. */
export async function run(args: readonly string[]): Promise<number> {
  try {
    return await main(args);
  } catch (error) {
    console.error(messageOf(error));
    if (!(error instanceof UsageError)) return exitCodes.errors;
    if (!error.isEnough) console.error(usage);
    return exitCodes.usage;
  }
}

function messageOf(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  const { code, syscall, path } = error as NodeJS.ErrnoException;
  const isFile = syscall === 'mkdir' && (code === 'EEXIST' || code === 'ENOTDIR');
  return isFile ? `${path} is no folder that files can be put in; name another with --out.` : error.message;
}

if (!servesRows() && isOwnProcess(import.meta.url)) {
  compileLess();
  stopOnSignals();
  process.exitCode = await run(process.argv.slice(2));
}
