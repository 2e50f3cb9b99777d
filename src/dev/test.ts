/**
 * `npm test`: every step under a heading, all of them even when one fails, and at the end one line with the sum of the
 * tests of all runs. A step that fails otherwise than by a test (a type error, a crash) counts as one failed.
 *
 * Tests in a browser wait as often as they work, so what needs none runs beside them. What a step prints is shown when it
 * ends, whole.
 */

import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import type { Counts } from './counting-reporter.ts';

const root = join(import.meta.dirname, '..', '..');
const artefacts = join(root, 'test', 'artefacts');
const tsx = ['--import', 'tsx'];
const bin = (path: string): string => join(root, 'node_modules', path);
const mocha = [bin('mocha/bin/mocha.js'), '--reporter', './src/dev/counting-reporter.ts'];

interface Step {
  readonly title: string;
  /** Arguments of Node. */
  readonly command: readonly string[];
  readonly kind: 'check' | 'tests';
}

let passed = 0;
let failed = 0;
const failedSteps: string[] = [];
const secondAttempts: string[] = [];

async function run({ title, command, kind }: Step): Promise<boolean> {
  const countsFile = join(artefacts, `counts of ${title}.json`);
  rmSync(countsFile, { force: true });
  console.log(`.. ${title}`);
  const start = Date.now();
  const { status, output } = await finished(command, kind === 'tests' ? { TAGWRIGHT_COUNTS: countsFile } : {});
  const counts = existsSync(countsFile) ? (JSON.parse(readFileSync(countsFile, 'utf8')) as Counts) : undefined;
  // A run of tests that was none has checked nothing.
  const good = status === 0 && (kind === 'check' || (counts?.passes ?? 0) > 0);
  passed += counts?.passes ?? 0;
  failed += counts?.failures || (good ? 0 : 1);
  secondAttempts.push(...(counts?.secondAttempts ?? []));
  if (!good) failedSteps.push(title);
  const seconds = ((Date.now() - start) / 1000).toFixed(1);
  console.log(`\n== ${title}\n${output.trimEnd()}\n== ${title}: ${good ? 'good' : 'FAILED'}, ${seconds} s\n`);
  return good;
}

function finished(command: readonly string[], env: NodeJS.ProcessEnv): Promise<{ status: number; output: string }> {
  const colours = process.stdout.isTTY ? { FORCE_COLOR: '1' } : {};
  const child = spawn(process.execPath, command, {
    cwd: root,
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { ...process.env, TAGWRIGHT_BUILT: '1', ...colours, ...env },
  });
  let output = '';
  for (const stream of [child.stdout, child.stderr])
    stream.setEncoding('utf8').on('data', (text: string) => {
      output += text;
    });
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (status) => {
      resolve({ status: status ?? 1, output });
    });
  });
}

async function inTurn(steps: readonly Step[]): Promise<void> {
  for (const step of steps) await run(step);
}

/** Large files of tests tend to take long; begun last, one of them would be waited for alone. */
function largestFirst(folder: string): string[] {
  const names = readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' });
  const files = names.filter((name) => name.endsWith('.test.ts')).map((name) => join(folder, name));
  const size = (file: string): number => statSync(join(root, file)).size;
  return files.sort((one, other) => size(other) - size(one));
}

const check = (title: string, ...command: string[]): Step => ({ title, command, kind: 'check' });
const tests = (title: string, ...command: string[]): Step => ({ title, command, kind: 'tests' });

mkdirSync(artefacts, { recursive: true });
const built = await run(check('Build', ...tsx, 'src/dev/build.ts'));

const cores = availableParallelism();
const jobs = (count: number): string[] => ['--parallel', '--jobs', `${count}`];
const limitMs = ['--no-config', '--node-option', 'import=tsx', '--timeout', '180000'];
const withoutBrowser = [
  check('Types', bin('typescript/bin/tsc'), '--noEmit'),
  check('Lint', bin('eslint/bin/eslint.js'), '.'),
  check('Format', bin('prettier/bin/prettier.cjs'), '--check', '--log-level', 'warn', '.'),
  tests('Unit tests', ...mocha, ...limitMs, ...jobs(cores), ...largestFirst('test/unit')),
];
const inBrowser = [
  check('Editor', ...tsx, 'test/editor/install.ts'),
  tests('Tests of the page', ...mocha, ...limitMs, ...jobs(cores), ...largestFirst('test/page')),
  tests('Tests inside the editor', ...tsx, 'test/editor/run-suite.ts'),
  // An editor that another program holds up may be late once; it is said which were.
  tests(
    'Tests from end to end',
    ...[...mocha, ...limitMs, ...jobs(cores), '--retries', '1'],
    ...largestFirst('test/editor/e2e'),
  ),
];
// Without a build there is nothing that an editor could load.
await Promise.all([inTurn(withoutBrowser), built ? inTurn(inBrowser) : undefined]);

if (failedSteps.length > 0) console.log(`Failed: ${failedSteps.join(', ')}`);
if (secondAttempts.length > 0)
  console.log(`${secondAttempts.length} passed at the second attempt: ${secondAttempts.join('; ')}`);
console.log(`\n${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 ? 1 : 0;
