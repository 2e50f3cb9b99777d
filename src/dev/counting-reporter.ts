/**
 * Mocha reporter: the usual list of results, followed by the tests that passed only at the second attempt, with their
 * first failures. Counts and failures are also written to the file named in TAGWRIGHT_COUNTS, to be summed over several
 * runs.
 */

import Mocha from 'mocha';
import { writeFileSync } from 'node:fs';

export interface Counts {
  readonly passes: number;
  readonly failures: number;
  /** Titles of tests that failed and then passed. */
  readonly secondAttempts: readonly string[];
  readonly failed: readonly FailedTest[];
}

export interface FailedTest {
  readonly title: string;
  readonly message: string;
}

export default class CountingReporter extends Mocha.reporters.Spec {
  private readonly failedBefore = new Map<string, string>();
  private readonly secondAttempts: string[] = [];
  private readonly failed: FailedTest[] = [];

  constructor(runner: Mocha.Runner, options: Mocha.MochaOptions) {
    super(runner, options);
    runner.on('retry', (test: Mocha.Test, error: Error) => {
      this.failedBefore.set(test.fullTitle(), error.message);
    });
    runner.on('pass', (test) => {
      if (this.failedBefore.has(test.fullTitle())) this.secondAttempts.push(test.fullTitle());
    });
    runner.on('fail', (test, error: Error) => {
      this.failed.push({ title: test.fullTitle(), message: error.message });
    });
    const file = process.env['TAGWRIGHT_COUNTS'];
    if (file)
      runner.once('end', () => {
        const { passes, failures } = runner.stats!;
        const counts: Counts = { passes, failures, secondAttempts: this.secondAttempts, failed: this.failed };
        writeFileSync(file, JSON.stringify(counts));
      });
  }

  override epilogue(): void {
    super.epilogue();
    const titles = this.secondAttempts;
    if (titles.length === 0) return;
    Mocha.reporters.Base.consoleLog('  %d passed at the second attempt: %s', titles.length, titles.join('; '));
    for (const title of titles)
      Mocha.reporters.Base.consoleLog('    %s\n      failed with: %s', title, this.failedBefore.get(title));
    Mocha.reporters.Base.consoleLog('');
  }
}
