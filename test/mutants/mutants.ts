/**
 * What the tests would notice: each module of the list is changed in many small ways, one at a time, and its own tests run.
 * `npm run mutants` takes them all, `npm run mutants -- units motion` those whose path contains a word. Survivors are printed.
 * Only what changed since the last run is tried again.
 */

import { Stryker } from '@stryker-mutator/core';
import { modules } from './modules.ts';

const words = process.argv.slice(2);
const chosen = Object.entries(modules).filter(([path]) => !words.length || words.some((word) => path.includes(word)));

for (const [path, tests] of chosen) {
  const mutants = await new Stryker({
    configFile: 'test/mutants/stryker.config.json',
    mutate: [path],
    // Stryker would move the paths of a tsconfig.json with an interface that TypeScript 7 no longer has; ours are all within.
    tsconfigFile: 'none',
    mochaFiles: [...tests, 'test/mutants/forget.ts'],
    incrementalFile: `test/artefacts/mutants/${path.replace(/\W/g, '-')}.json`,
  }).runMutationTest();
  const caught = mutants.filter(({ status }) => status === 'Killed' || status === 'Timeout').length;
  const live = mutants.filter(({ status }) => status === 'Survived' || status === 'NoCoverage');
  const share = Math.round((100 * caught) / Math.max(1, caught + live.length));
  console.log(`${path}: ${caught} of ${caught + live.length} noticed, ${share} %`);
  for (const { location, replacement = '', status } of live) {
    const what = status === 'Survived' ? 'survives' : 'is not run';
    console.log(`  ${path}:${location.start.line}:${location.start.column} ${what}: ${replacement}`);
  }
}
