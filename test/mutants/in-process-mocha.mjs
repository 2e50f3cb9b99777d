/**
 * A test runner for Stryker: mocha within the worker, its files loaded once and run again for each mutant. Stryker's own
 * runner for mocha stops at version 11, and a process for each mutant costs some seconds each.
 */

import { PluginKind, declareClassPlugin, tokens } from '@stryker-mutator/api/plugin';
import Mocha from 'mocha';

export const strykerValidationSchema = {
  properties: { mochaFiles: { type: 'array', items: { type: 'string' }, default: [] } },
};

/** Stryker's name for what its instrumented code reads and writes. */
const shared = (globalThis.__stryker__ ??= {});

class InProcessMocha {
  static inject = tokens('options');
  #files;
  #mocha;

  constructor({ mochaFiles }) {
    this.#files = mochaFiles;
  }

  /** Modules of Node stay loaded: for a mutant that acts while they load, Stryker starts another worker. */
  capabilities() {
    return { reloadEnvironment: false };
  }

  async dryRun({ coverageAnalysis }) {
    if (coverageAnalysis !== 'off') shared.mutantCoverage = { static: {}, perTest: {} };
    await this.#load();
    const { tests } = await this.#run({ bail: false });
    return { status: 'complete', tests, mutantCoverage: shared.mutantCoverage };
  }

  async mutantRun({ activeMutant, mutantActivation, testFilter, hitLimit, disableBail }) {
    shared.mutantCoverage = undefined;
    shared.hitLimit = hitLimit;
    shared.hitCount = hitLimit === undefined ? undefined : 0;
    shared.activeMutant = mutantActivation === 'static' ? activeMutant.id : undefined;
    await this.#load();
    shared.activeMutant = activeMutant.id;
    const { tests, ended } = await this.#run({ bail: !disableBail, only: testFilter });
    if (shared.hitCount > hitLimit) return { status: 'timeout', reason: 'A loop that does not end.' };
    const failed = tests.filter(({ status }) => status === 'failed');
    return failed.length > 0 || ended > 0
      ? {
          status: 'killed',
          killedBy: failed.map(({ id }) => id),
          failureMessage: failed[0]?.failureMessage ?? 'A hook failed.',
          nrOfTests: tests.length,
        }
      : { status: 'survived', nrOfTests: tests.length };
  }

  async #load() {
    if (this.#mocha) return;
    const mocha = new Mocha({ timeout: 180_000, reporter: Mocha.reporters.Base });
    mocha.cleanReferencesAfterRun(false);
    mocha.rootHooks({
      beforeEach() {
        shared.currentTestId = this.currentTest.fullTitle();
      },
    });
    for (const file of this.#files) mocha.addFile(file);
    await mocha.loadFilesAsync();
    this.#mocha = mocha;
  }

  #run({ bail, only }) {
    const mocha = this.#mocha;
    mocha.bail(bail);
    mocha.grep(only ? new RegExp(`^(?:${only.map(literal).join('|')})$`, 'u') : /(?:)/u);
    return new Promise((resolve) => {
      const tests = [];
      const add = (test, status, more) =>
        tests.push({
          id: test.fullTitle(),
          name: test.fullTitle(),
          fileName: test.file,
          timeSpentMs: test.duration ?? 0,
          status,
          ...more,
        });
      const runner = mocha.run((ended) => {
        shared.currentTestId = undefined;
        resolve({ tests, ended });
      });
      runner.on('pass', (test) => add(test, 'success'));
      runner.on('pending', (test) => add(test, 'skipped'));
      runner.on('fail', (test, error) => add(test, 'failed', { failureMessage: String(error?.message ?? error) }));
    });
  }
}

function literal(text) {
  return text.replace(/[/\\^$*+?.()|[\]{}]/g, '\\$&');
}

export const strykerPlugins = [declareClassPlugin(PluginKind.TestRunner, 'in-process-mocha', InProcessMocha)];
