/**
 * `npm test`: every step under a heading, all of them even when one fails, and at the end one line with the sum of the
 * tests of all runs. Tests in a browser wait as often as they work, so what needs none runs beside them.
 */

import { availableParallelism } from 'node:os';
import { bin, check, largestFirst, StepRunner, tests, type TestStep } from './steps.ts';

const tsx = ['--import', 'tsx'];
const jobs = availableParallelism();

const withoutBrowser: readonly TestStep[] = [
  check('Types and lint', ...tsx, 'src/dev/lint.ts'),
  check('Format', bin('prettier/bin/prettier.cjs'), '--check', '--log-level', 'warn', '.'),
  tests('Unit tests', jobs, largestFirst('test/unit')),
];

const inBrowser: readonly TestStep[] = [
  check('Editor', ...tsx, 'test/editor/install.ts'),
  // A browser or an editor that another program holds up may be late once; it is said which were.
  tests('Tests of the page', jobs, largestFirst('test/page'), '--retries', '1'),
  { title: 'Tests inside the editor', command: [...tsx, 'test/editor/run-suite.ts'], kind: 'tests' },
  tests('Tests from end to end', jobs, largestFirst('test/editor/e2e'), '--retries', '1'),
];

const run = new StepRunner();
// Without a build there is nothing that an editor could load.
const built = await run.step(check('Build', ...tsx, 'src/dev/build.ts'));
await Promise.all([run.inTurn(withoutBrowser), built ? run.inTurn(inBrowser) : undefined]);
run.end();
