/**
 * Hooks for a bounded run of tests: once this process has had its processor time, whatever has not begun is skipped and
 * counts as pending. Which tests run does not depend on what else the computer does.
 */

/** In seconds, for each process of a parallel run. */
const mostSeconds = 25;

function skipIfSpent(this: Mocha.Context): void {
  const { user, system } = process.cpuUsage();
  if (user + system > mostSeconds * 1e6) this.skip();
}

export const mochaHooks = { beforeAll: skipIfSpent, beforeEach: skipIfSpent };
