/**
 * Steps of a test run: each under its heading, with its output printed in full when it ends, and a line with the total
 * at the end.
 */

import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import type { Counts, FailedTest } from './counting-reporter.ts';

export const root = join(import.meta.dirname, '..', '..');
const artefacts = join(root, 'test', 'artefacts');

export interface TestStep {
  readonly title: string;
  /** Arguments for Node. */
  readonly command: readonly string[];
  readonly kind: 'check' | 'tests';
  /** Path of the Node that runs it; the one at hand, unless said otherwise. */
  readonly node?: string;
}

/** Path below `node_modules`. */
export const bin = (path: string): string => join(root, 'node_modules', path);
export const check = (title: string, ...command: string[]): TestStep => ({ title, command, kind: 'check' });

/** The linter has the compiler at hand and reports its errors as well: both in one go, over all files. */
export const typesAndLint = check('Types and lint', bin('oxlint/bin/oxlint'));

/** Where `bundle-tests.ts` puts the bundle of each file, from the root. */
export const bundled = 'test/artefacts/bundled';
const reporter = 'src/dev/counting-reporter.ts';
const bounded = 'src/dev/bounded.ts';
/** What mocha itself loads. */
export const mochaModules = [reporter, bounded] as const;
const bundleOf = (file: string, ending: 'mjs' | 'cjs'): string => join(bundled, file.replace(/ts$/, ending));

/** `bundles` of test files, or of all. */
export const bundle = (...files: readonly string[]): TestStep =>
  check('Bundles of tests', '--import', 'tsx', 'src/dev/bundle-tests.ts', ...files);

interface HowTested {
  /** Only what begins within some seconds. */
  readonly isBounded?: boolean;
  readonly retries?: number;
  readonly workers?: number;
}

/** Of files that are bundled. */
export function tests(
  title: string,
  files: readonly string[],
  { isBounded = false, retries = 0, workers = availableParallelism() }: HowTested = {},
): TestStep {
  // Geometry creates much short-lived garbage; a larger young generation, from the first, saves copying it (an eighth of the time and more).
  const node = ['enable-source-maps', 'min-semi-space-size=64', 'max-semi-space-size=64'].flatMap((option) => [
    '--node-option',
    option,
  ]);
  // For a single worker mocha would load the files another way, which takes none that wait at their top.
  const side = workers > 1 ? ['--parallel', '--jobs', `${workers}`] : [];
  const how = ['--no-config', ...node, '--timeout', '180000', ...side];
  const hooks = isBounded ? ['--require', `./${bundleOf(bounded, 'cjs')}`] : [];
  const mocha = [bin('mocha/bin/mocha.js'), '--reporter', `./${bundleOf(reporter, 'cjs')}`, ...how, ...hooks];
  const bundles = files.map((file) => bundleOf(file, 'mjs'));
  // Editors and browsers that a process shares end with it; a single worker is mocha's own process.
  return { title, command: [...mocha, '--exit', '--retries', `${retries}`, ...bundles], kind: 'tests' };
}

/** Large test files tend to take long; one that started last would be waited for alone. */
export function largestFirst(folder: string): string[] {
  const names = readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' });
  const files = names.filter((name) => name.endsWith('.test.ts')).map((name) => join(folder, name));
  const size = (file: string): number => statSync(join(root, file)).size;
  return files.sort((one, other) => size(other) - size(one));
}

export class StepRunner {
  private passed = 0;
  private failed = 0;
  private readonly failedSteps: string[] = [];
  private readonly failedTests: FailedTest[] = [];
  private readonly secondAttempts: string[] = [];

  /** Resolves with whether the step passed. A step that fails other than by a test counts as one failure. */
  async step({ title, command, kind, node = process.execPath }: TestStep): Promise<boolean> {
    mkdirSync(artefacts, { recursive: true });
    const countsFile = join(artefacts, `counts of ${title}.json`);
    rmSync(countsFile, { force: true });
    console.log(`.. ${title}`);
    const start = Date.now();
    const { status, output } = await ended(node, command, kind === 'tests' ? { TAGWRIGHT_COUNTS: countsFile } : {});
    const counts = existsSync(countsFile) ? (JSON.parse(readFileSync(countsFile, 'utf8')) as Counts) : undefined;
    // A test run without any tests has checked nothing.
    const good = status === 0 && (kind === 'check' || (counts?.passes ?? 0) > 0);
    this.passed += counts?.passes ?? 0;
    this.failed += counts?.failures || (good ? 0 : 1);
    this.secondAttempts.push(...(counts?.secondAttempts ?? []));
    this.failedTests.push(...(counts?.failed ?? []));
    if (!good) this.failedSteps.push(title);
    const seconds = ((Date.now() - start) / 1000).toFixed(1);
    console.log(`\n== ${title}\n${output.trimEnd()}\n== ${title}: ${good ? 'good' : 'FAILED'}, ${seconds} s\n`);
    return good;
  }

  async inTurn(steps: readonly TestStep[]): Promise<void> {
    for (const step of steps) await this.step(step);
  }

  /** Prints the failures, which the long output above may hide, and the total, and sets the exit code. */
  end(): void {
    for (const { title, message } of this.failedTests)
      console.log(`Failed: ${title}\n    ${message.replaceAll('\n', '\n    ')}`);
    if (this.failedSteps.length > 0) console.log(`Failed: ${this.failedSteps.join(', ')}`);
    const again = this.secondAttempts;
    if (again.length > 0) console.log(`${again.length} passed at the second attempt: ${again.join('; ')}`);
    console.log(`\n${this.passed} passed, ${this.failed} failed`);
    process.exitCode = this.failed > 0 ? 1 : 0;
  }
}

function ended(
  node: string,
  command: readonly string[],
  env: NodeJS.ProcessEnv,
): Promise<{ status: number; output: string }> {
  const colours = process.stdout.isTTY ? { FORCE_COLOR: '1' } : {};
  const child = spawn(node, command, {
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
