/**
 * `npm test`: every step under a heading, all of them even when one fails, and at the end one line with the sum of the
 * tests of all runs. A step that fails otherwise than by a test (a type error, a crash) counts as one failed.
 */

import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';

const root = join(import.meta.dirname, '..', '..');
const countsFile = join(root, 'test', 'artefacts', 'counts.json');
const tsx = ['--import', 'tsx'];
const bin = (path: string): string => join(root, 'node_modules', path);
const mocha = [bin('mocha/bin/mocha.js'), '--reporter', './src/dev/counting-reporter.ts'];

let passed = 0;
let failed = 0;
const failedSteps: string[] = [];

/** `command`: arguments of Node. */
function step(title: string, command: string[], kind: 'check' | 'tests'): boolean {
  console.log(`\n== ${title}`);
  const start = Date.now();
  rmSync(countsFile, { force: true });
  const { status } = spawnSync(process.execPath, command, {
    cwd: root,
    stdio: ['ignore', 'inherit', 'inherit'],
    env: { ...process.env, ...(kind === 'tests' ? { TAGWRIGHT_COUNTS: countsFile } : {}) },
  });
  const counts = existsSync(countsFile) ? (JSON.parse(readFileSync(countsFile, 'utf8')) as Mocha.Stats) : undefined;
  // A run of tests that was none has checked nothing.
  const good = status === 0 && (kind === 'check' || (counts?.passes ?? 0) > 0);
  passed += counts?.passes ?? 0;
  failed += counts?.failures || (good ? 0 : 1);
  if (!good) failedSteps.push(title);
  console.log(`== ${title}: ${good ? 'good' : 'FAILED'}, ${((Date.now() - start) / 1000).toFixed(1)} s`);
  return good;
}

mkdirSync(join(root, 'test', 'artefacts'), { recursive: true });
const built = step('Build', [...tsx, 'src/dev/build.ts'], 'check');
step('Types', [bin('typescript/bin/tsc'), '--noEmit'], 'check');
step('Lint', [bin('eslint/bin/eslint.js'), '.'], 'check');
step('Format', [bin('prettier/bin/prettier.cjs'), '--check', '--log-level', 'warn', '.'], 'check');
// Files of tests side by side: an editor waits as much as it works.
const parallel = ['--parallel', '--jobs', `${availableParallelism()}`];
step('Unit tests', [...mocha, ...parallel], 'tests');
// Without a build there is nothing that an editor could load.
if (built) {
  step('Editor', [...tsx, 'test/editor/install.ts'], 'check');
  const inBrowser = ['--no-config', '--node-option', 'import=tsx', '--timeout', '90000'];
  step('Tests of the page', [...mocha, ...inBrowser, ...parallel, 'test/page/*.test.ts'], 'tests');
  step('Tests inside the editor', [...tsx, 'test/editor/run-suite.ts'], 'tests');
  step('Tests from end to end', [...mocha, ...inBrowser, ...parallel, 'test/editor/e2e/*.test.ts'], 'tests');
}

if (failedSteps.length > 0) console.log(`\nFailed: ${failedSteps.join(', ')}`);
console.log(`\n${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 ? 1 : 0;
