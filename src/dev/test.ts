/**
 * `npm test`: every step under a heading, all of them even if one fails, with the total of all tests on the last line.
 * Browser tests wait as often as they work, so the steps without a browser run beside them.
 */

import { bin, bundle, check, largestFirst, StepRunner, tests, typesAndLint, type TestStep } from './steps.ts';

const tsx = ['--import', 'tsx'];

const withoutBrowser: readonly TestStep[] = [
  typesAndLint,
  check('Format', bin('oxfmt/bin/oxfmt'), '--check'),
  tests('Unit tests', largestFirst('test/unit')),
];

const inBrowser: readonly TestStep[] = [
  check('Editor', ...tsx, 'test/editor/install.ts'),
  // A browser or editor held up by another program may be late once; such retries are reported.
  tests('Tests of the page', largestFirst('test/page'), { retries: 1 }),
  { title: 'Tests inside the editor', command: [...tsx, 'test/editor/run-suite.ts'], kind: 'tests' },
  tests('Tests from end to end', largestFirst('test/editor/e2e'), { retries: 1 }),
];

const run = new StepRunner();
// Without a build there is nothing for the editor to load.
const built = await run.step(check('Build', ...tsx, 'src/dev/build.ts'));
await run.step(bundle());
await Promise.all([run.inTurn(withoutBrowser), built ? run.inTurn(inBrowser) : undefined]);
run.end();
