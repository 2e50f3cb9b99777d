/**
 * `npm test`: every step under a heading, all of them even if one fails, with the total of all tests on the last line.
 * Browser tests wait as often as they work, so the steps without a browser run beside them.
 */

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

const inBrowser: readonly TestStep[] = [
  // A browser or editor held up by another program may be late once; such retries are reported.
  tests('Tests of the page', largestFirst('test/page'), { retries: 1 }),
  { title: 'Tests inside the editor', command: [...tsx, 'test/editor/run-suite.ts'], kind: 'tests' },
  tests('Tests from end to end', largestFirst('test/editor/e2e'), { retries: 1 }),
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
  installed.then((isThere) => (built && isThere ? run.inTurn(inBrowser) : undefined)),
]);
run.end();
