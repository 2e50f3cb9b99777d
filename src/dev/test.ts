/**
 * `npm test`: every step under a heading, all of them even if one fails, with the total of all tests on the last line.
 * Browser tests wait as often as they work, so the steps without a browser run beside them.
 */

import { availableParallelism } from 'node:os';
import { editorNode } from '../../test/editor/install.ts';
import { bin, bundle, check, largestFirst, StepRunner, tests, typesAndLint, type TestStep } from './steps.ts';

const tsx = ['--import', 'tsx'];

/** They start the program as its users do, so they take the Node at hand, and begin while the editor is still being installed. */
const commandLine = largestFirst('test/unit/cli');
const withoutBrowser: readonly TestStep[] = [
  typesAndLint,
  check('Format', bin('oxfmt/bin/oxfmt'), '--check'),
  tests('Tests of the command line', commandLine),
];
const unit = tests(
  'Unit tests',
  largestFirst('test/unit').filter((file) => !commandLine.includes(file)),
);

/**
 * Each worker has a browser or editor of its own, which costs as much as ten tests: two steps at a time have half of the
 * workers each. What is held up by another program may be late once; such retries are reported.
 */
const late = { retries: 1, workers: Math.max(1, Math.floor(availableParallelism() / 2)) };
const fromEndToEnd = tests('Tests from end to end', largestFirst('test/editor/e2e'), late);
const inBrowser: readonly TestStep[] = [
  tests('Tests of the page', largestFirst('test/page'), late),
  { title: 'Tests inside the editor', command: [...tsx, 'test/editor/run-suite.ts'], kind: 'tests' },
];

const run = new StepRunner();
// Without a build there is nothing for the editor to load.
const built = await run.step(check('Build', ...tsx, 'src/dev/build.ts'));
await run.step(bundle());
const installed = run.step(check('Editor', ...tsx, 'test/editor/install.ts'));
await Promise.all([
  run.inTurn(withoutBrowser).then(async () => {
    // The Node that runs extensions in the editor takes a sixth less of the processor than Node 20.
    await run.step((await installed) ? { ...unit, node: editorNode() } : unit);
  }),
  installed.then(async (isThere) => {
    if (built && isThere) await Promise.all([run.step(fromEndToEnd), run.inTurn(inBrowser)]);
  }),
]);
run.end();
