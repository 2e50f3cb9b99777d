/** Mocha's list of results, with the counts also written to the file named in TAGWRIGHT_COUNTS, to be summed over runs. */

import Mocha from 'mocha';
import { writeFileSync } from 'node:fs';

export default class CountingReporter extends Mocha.reporters.Spec {
  constructor(runner: Mocha.Runner, options: Mocha.MochaOptions) {
    super(runner, options);
    const file = process.env['TAGWRIGHT_COUNTS'];
    if (file)
      runner.once('end', () => {
        writeFileSync(file, JSON.stringify(runner.stats));
      });
  }
}
